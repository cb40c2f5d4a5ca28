// A test as the history counts it.

import type { PressureCorrection } from "../../cranking/index.ts";
import type { TestUse } from "../../history/index.ts";
import type { Test } from "../../record/index.ts";
import type { KindValues } from "../values/values.ts";

/** A test as the history counts it: what of its readings, and whether it speaks. */
export interface CountedTest {
  readonly test: Test;
  readonly values: KindValues;
  readonly use: TestUse;
  /** To reference air. */
  readonly correction: PressureCorrection;
}
