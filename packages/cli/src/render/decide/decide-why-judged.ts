// What `decide` judged where nobody published a figure, and where each is changed.

import { type DecisionAssessment, judgedOf } from "@sealtrend/core/parts";
import { yearsText } from "./decide-words.ts";
import { fixed } from "../words.ts";

/** Paragraphs, not wrapped. */
export const judgedTexts = ({ input, horizon, history, decision }: DecisionAssessment): readonly string[] => {
  const { redo, spoil, caught, testsPerYear, risk, lifeFactor } = judgedOf(input);
  const { id } = history.record.engine;
  const owned = {
    typed: "as typed",
    "engine.json": "as engine.json says",
    usual: "taken, for nobody said",
  }[horizon.from];
  return [
    `Judged, for no published figure was found; change each by --price or in engine.json below prices: chance that work does not hold, redo.topEnd ${fixed(redo.topEnd, 2)}, redo.reRing ${fixed(redo.reRing, 2)}, redo.rebuild ${fixed(redo.rebuild, 2)}; that waiting turns a re-ring into a rebuild, spoil ${fixed(spoil, 2)}; that watching catches it, caught ${fixed(caught, 2)}.`,
    `Judged too, and fixed: ${fixed(testsPerYear, 0)} test a year, chance ${fixed(risk, 2)} of passing the limit before the next one${decision.keep === undefined ? "" : `, a re-ring lasts ${fixed(lifeFactor, 1)} of the life before it`}. Years: ${horizon.kind === "for-good" ? `for good; the figures with an end are for ${yearsText(horizon.years)}` : yearsText(horizon.years)}, ${owned}; --own 11y, or sealtrend engine set ${id} ownership 11y`,
  ];
};
