// What the pages are made from: everything of one engine, assessed, and how it is to be told.

import type {
  DecisionAssessment,
  EngineRecord,
  HistoryAssessment,
  PressureUnit,
  TeardownAssessment,
  TestAssessment,
} from "@sealtrend/core";

/** One row of amendments.csv. */
export interface AmendmentTold {
  readonly when: string;
  readonly row: string;
  readonly column: string;
  readonly was: string;
  readonly is: string;
  readonly because: string;
}

export interface PageInput {
  readonly record: EngineRecord;
  /** Of an invented logbook, said on every page. */
  readonly data: "real" | "invented";
  /** `printed 2026-11-25`, or `as of 2020-12-31` where an earlier day was asked for. */
  readonly dated: string;
  /** Of pressures. */
  readonly unit: PressureUnit;
  /** The value of --units, which decides the unit of lengths too. */
  readonly units?: string;
  readonly history: HistoryAssessment;
  /** The newest test that counts; absent where there is none. */
  readonly newest?: TestAssessment;
  readonly amendments: readonly AmendmentTold[];
  readonly decision?: DecisionAssessment;
  readonly teardown?: TeardownAssessment;
  /** engine.json by its paths, as a person types them; for the own file. */
  readonly fields?: readonly { readonly name: string; readonly value: string }[];
  /** Free text that is nobody else's business. */
  readonly notes: "shown" | "left-out";
}
