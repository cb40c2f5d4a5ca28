// What the screen and the document of `restate` are made of.

import type { GaugePressure, LeakAnswer, LeakQuestion, PressureUnit } from "@sealtrend/core";

/** What was typed, as far as the answer tells it again. */
export interface RestateTold {
  readonly question: LeakQuestion;
  /** What was not told, and what was taken for it. */
  readonly assumed: readonly string[];
  /** What the logbook says of the testers, and what became of it. */
  readonly logbook: readonly string[];
  /** The pressure as it stood on the dial; absent for a percent. */
  readonly read?: GaugePressure;
  /** Bores in the table: as they were typed. */
  readonly boreUnit: "mm" | "in";
  /** The tester of the reading, as the logbook names it. */
  readonly tester?: string;
  /** The other supply as typed, where that is in another unit than the answer. */
  readonly otherSupply?: string;
}

export interface RestateShown extends RestateTold {
  readonly answer: LeakAnswer;
}

export interface RestateOptions {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly detail: "short" | "why";
}
