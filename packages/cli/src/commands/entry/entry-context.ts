// What the rows of an entry are made of and made for.

import type { Dialect, Engine, Gauge, Test } from "@sealtrend/core/parts";

export type RowValues = Readonly<Record<string, string>>;

/** What has to be known of the engine, its file and the gauge. */
export interface EntryContext {
  readonly engine: Engine;
  /** The one that was named. */
  readonly gauge: Gauge | undefined;
  /** Those of gauges.csv. */
  readonly gauges: readonly Gauge[];
  readonly dialect: Dialect;
  /** The test that is added to. */
  readonly test?: Test;
}
