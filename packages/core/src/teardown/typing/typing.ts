// What a typed line is read in, and what it gives.

import type { Problem } from "../../problem/index.ts";
import type { Length } from "../../quantity/index.ts";
import type { IsoDate, MeasuredUnit, Measurement, PartState } from "../../record/index.ts";

/** The units a length is typed in; `tenths` are tenths of a thou, stored as inches. */
export type TypedLengthUnit = "mm" | "um" | "in" | "thou" | "tenths";
export type TypedUnit = MeasuredUnit | "tenths";

/** A length as it was typed, with a decimal point. */
export interface TypedLength {
  readonly text: string;
  readonly unit: TypedLengthUnit;
}

/** What holds for the lines that follow, as the lines before have set it. */
export interface TypingContext {
  readonly teardown: number;
  readonly date: IsoDate;
  readonly state: PartState;
  /** Of figures without a unit; absent: none was chosen yet, and a figure without one is refused. */
  readonly length?: TypedLengthUnit;
  readonly volume?: MeasuredUnit;
  readonly force?: MeasuredUnit;
  /** What signed deviations count from. */
  readonly set?: TypedLength;
  /** From one place to the next along the straightedge. [m] */
  readonly step?: Length;
  /** As measurements.csv holds it: `bore-gauge`. */
  readonly instrument?: string;
  readonly resolution?: TypedLength;
  readonly by?: string;
}

/** The context of the first line. @param date - of the measuring */
export const startTyping = (date: IsoDate, teardown = 1): TypingContext => ({
  teardown,
  date,
  state: "as found",
});

/** A measurement that has no line in a file yet. */
export interface TypedMeasurement extends Omit<Measurement, "line"> {
  /** The figure or the words as they were typed. */
  readonly typed: string;
  /** Where they begin in the typed line; the first sign is 1. */
  readonly column: number;
  /** Its cells in measurements.csv that hold figures. */
  readonly written: { readonly value: string; readonly unit: string; readonly resolution: string };
}

/** What a typed line of measurements gave. */
export type TypedLine =
  | {
      readonly kind: "measurements";
      /** None where all were `-` or `x`. */
      readonly measurements: readonly TypedMeasurement[];
      readonly context: TypingContext;
    }
  /** `text` says what holds from here on. */
  | { readonly kind: "context"; readonly text: string; readonly context: TypingContext }
  /** Nothing, or a comment. */
  | { readonly kind: "blank" }
  /** One problem or more, each with its column and the typed line; the caller knows file and line. */
  | { readonly kind: "fault"; readonly problems: readonly Problem[] };
