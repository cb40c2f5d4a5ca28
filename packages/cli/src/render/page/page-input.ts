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

/** One time the engine was apart. */
export interface PageTeardown {
  /** Of parts as they are now. */
  readonly now: TeardownAssessment;
  /** By what was measured as found and cleaned, as if nothing had been machined or renewed since; absent: nothing was. */
  readonly found?: TeardownAssessment;
  /** The other times, each with its first day. */
  readonly others: readonly { readonly teardown: number; readonly date: string }[];
}

export interface PageInput {
  readonly record: EngineRecord;
  /** Of an invented logbook, said on every page. */
  readonly data: "real" | "invented";
  /** `printed 2026-11-25`, or `as of 2020-12-31` where an earlier day was asked for. */
  readonly dated: string;
  /** ISO. */
  readonly today: string;
  /** Who reads it: for others its owner is called so, and so is a seller that came before. */
  readonly reader: "owner" | "others";
  readonly form: "html" | "text";
  /** Of pressures. */
  readonly unit: PressureUnit;
  /** The value of --units, which decides the unit of lengths too. */
  readonly units?: string;
  readonly history: HistoryAssessment;
  /** The newest test that counts; absent where there is none. */
  readonly newest?: TestAssessment;
  readonly amendments: readonly AmendmentTold[];
  readonly decision?: DecisionAssessment;
  readonly teardown?: PageTeardown;
  /** engine.json by its paths, as a person types them; for the own file. */
  readonly fields?: readonly { readonly name: string; readonly value: string }[];
  /** Free text that is nobody else's business. */
  readonly notes: "shown" | "left-out";
}
