// What a rule of trust looks at, and what it answers.

import type { EngineRecord, Test } from "../../record/index.ts";
import type { EngineFigures } from "../figures.ts";
import type { TrustReason } from "./trust-reason.ts";
import type { KindValues } from "../values/values.ts";

export interface TrustView {
  readonly record: EngineRecord;
  readonly test: Test;
  readonly dry: KindValues | undefined;
  /** All tests of the engine but this one that are not set aside. */
  readonly others: () => readonly Test[];
  readonly figures: EngineFigures;
}

export type TrustRule = (view: TrustView) => TrustReason | undefined;
