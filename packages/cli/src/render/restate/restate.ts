// The screen of `restate`: what the other tester would read, the leak behind it, what was taken for granted.

import { type LeakSize, type PressureUnit, writeNumber } from "@sealtrend/core";
import {
  type RestateOptions,
  type RestateShown,
  bandLines,
  cells,
  placesFor,
  plain,
  table,
} from "./restate-band.ts";
import { held, refusalWords } from "./restate-words.ts";
import { restateWhy } from "./restate-why.ts";
import { fixed, percent } from "../words.ts";

/** The answer first; a refusal says why, and what to do instead. */
export const restateScreen = (shown: RestateShown, options: RestateOptions): readonly string[] => {
  const { assumed } = shown;
  const { width, detail } = options;
  const next = nextStep(shown);
  const parts = [
    held(headline(shown, options), width),
    table(shown, options),
    [...bandLines(shown, width), ...leakLines(shown, options)],
    detail === "why" ? restateWhy(shown, width) : [],
    [
      ...(next === undefined ? [] : held(next, width, "next     ")),
      ...(assumed.length === 0 ? [] : held(assumed.join(", "), width, "assumed  ")),
    ],
  ].filter((lines) => lines.length > 0);
  return parts.flatMap((lines, i) => (i === 0 ? lines : ["", ...lines]));
};

const headline = (shown: RestateShown, { unit }: RestateOptions): string => {
  const { answer, question } = shown;
  const { restated, refused } = answer;
  if (refused !== undefined) return `Not restated: ${refusalWords(refused, answer).reason}.`;
  if (restated === undefined) return alone(shown, unit);
  const { reads, lost } = cells(shown, unit);
  const supply = plain(question.other?.supply ?? answer.reading?.supply ?? 0, unit);
  const where =
    question.other?.restrictor === undefined ? "This tester would read" : "The other tester would read";
  return `${where} ${reads.replace("-", " to ")} of ${supply} ${unit}: ${lost.replace("-", " to ")} % lost.`;
};

/** Where nothing is to be restated. */
const alone = ({ answer, question }: RestateShown, unit: PressureUnit): string => {
  const { judgement, lost } = answer;
  switch (judgement?.kind) {
    case undefined:
      return `${percent(lost)} lost on this tester; how large the leak is cannot be told without its supply pressure${question.restrictor.bore === undefined ? " and the bore of its restrictor" : ""}.`;
    case "no-seal":
      return "No seal is measurable: the leak takes all the air there is.";
    case "tight": {
      const hole = judgement.limit.equalHole;
      const most = hole === undefined ? "" : `: the leak is at most that of a hole of ${bore(hole, unit)}`;
      return `Tighter than these dials can show${most}.`;
    }
    case "disagree":
      return "The dials disagree.";
    case "measured": {
      const { uLost } = judgement.figures;
      const places = placesFor(100 * uLost);
      const told = `${percent(lost, places)} lost (± ${fixed(100 * uLost, places)}) on this tester`;
      return question.restrictor.bore === undefined
        ? `${told}; how large the leak is cannot be told without the bore of its restrictor.`
        : `${told}.`;
    }
  }
};

const nextStep = ({ answer, question }: RestateShown): string | undefined => {
  const { refused, judgement } = answer;
  if (refused !== undefined) return refusalWords(refused, answer).next;
  if (judgement === undefined)
    return question.restrictor.bore === undefined
      ? "rank cylinders by it on this tester only; a drilled hole of known size, read on it, measures them"
      : "add --regulated: the pressure on the first dial";
  if (judgement.kind === "tight") return refusalWords("too-tight", answer).next;
  if (judgement.kind === "no-seal") return refusalWords("no-seal", answer).next;
  if (question.restrictor.bore === undefined && answer.restated === undefined)
    return "read a drilled hole of known size on it: it serves as the measure of every leak";
  return undefined;
};

const leakLines = ({ answer }: RestateShown, { unit, width }: RestateOptions): readonly string[] => {
  const { figures, judgement, holeSpan } = answer;
  if (judgement?.kind === "measured" && figures?.size !== undefined)
    return held(sizeSentence(figures.size, unit), width);
  if (judgement?.kind === "tight" && answer.refused !== undefined && judgement.limit.equalHole !== undefined)
    return held(`The leak is at most that of a hole of ${bore(judgement.limit.equalHole, unit)}.`, width);
  if (holeSpan === undefined) return [];
  return held(
    `Over supplies of 30 to 100 psi that is a hole of ${writeNumber(holeSpan.low, "mm")} to ${writeNumber(holeSpan.high, "mm")} mm.`,
    width,
  );
};

const sizeSentence = ({ equalHole, uEqualHole, flow }: LeakSize, unit: PressureUnit): string =>
  `It leaks like a hole of ${bore(equalHole, unit, uEqualHole)} made like the restrictor: ${fixed(6e4 * flow, 0)} L of air a minute.`;

/** In inches too for those who read psi. */
const bore = (metres: number, unit: PressureUnit, uncertainty?: number): string => {
  const doubt = uncertainty === undefined ? "" : ` ± ${writeNumber(uncertainty, "mm", 2)}`;
  const inches = unit === "psi" ? ` (${writeNumber(metres, "in", 3)} in)` : "";
  return `${writeNumber(metres, "mm", 2)}${doubt} mm${inches}`;
};
