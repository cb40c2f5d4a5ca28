// What the rows of an entry are made of and made for.

import type { Dialect, Engine, Gauge } from "@sealtrend/core/parts";

export type RowValues = Readonly<Record<string, string>>;

/** What has to be known of the engine, its file and the gauge. */
export interface EntryContext {
  readonly engine: Engine;
  readonly gauge: Gauge | undefined;
  readonly dialect: Dialect;
}
