// What is said of a figure that cannot be read.

import { type Place, type Problem, problem } from "../../problem/index.ts";
import type { MeasuredDimension } from "../../record/index.ts";
import type { FigureFault } from "./typed-figure.ts";
import { unitNames } from "./units.ts";

interface Found {
  /** The part of the typed text that is wrong. */
  readonly text: string;
  readonly kind: MeasuredDimension;
  /** `bore diameter`. */
  readonly what: string;
  /** The line before its colon. */
  readonly line: string;
  readonly place: Place;
}

export const figureProblem = (fault: FigureFault, { text, kind, what, line, place }: Found): Problem => {
  const units = unitNames[kind];
  const bare = text.replace(/[^\d.,]+$/, "");
  switch (fault.code) {
    case "measure-bad":
      return problem("measure-bad", { what, text, fault: fault.fault, unit: fault.unit }, place);
    case "number-two-ways":
      return problem("number-two-ways", { text: bare, small: fault.small, large: fault.large }, place);
    case "typed-unit":
      return problem("typed-unit", { text, units }, place);
    case "unit-unknown":
      return problem("unit-unknown", { text: fault.unit, units }, place);
    case "typed-figure":
      return problem("typed-figure", { text, fault: fault.fault, line }, place);
    case "typed-deviation":
      return problem("typed-deviation", { text, fault: fault.fault }, place);
  }
};
