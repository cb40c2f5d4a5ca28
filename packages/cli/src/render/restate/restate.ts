// The screen of `restate`: what the other tester would read, the leak behind it, what was taken for granted.

import { type PressureUnit, lostUncertainty } from "@sealtrend/core/parts";
import { bandLines, cells, placesFor, supplyThere, table } from "./restate-band.ts";
import { bore, holesSentence, sizeSentence } from "./restate-hole.ts";
import type { RestateOptions, RestateShown } from "./restate-shown.ts";
import { restateWhy, supplySpan } from "./restate-why.ts";
import { calibrate, held, plain, refusalWords } from "./restate-words.ts";
import { fixed, percent } from "../words.ts";

/** The answer first; a refusal says why, and what to do instead. */
export const restateScreen = (shown: RestateShown, options: RestateOptions): readonly string[] => {
  const { assumed, logbook } = shown;
  const { width, detail, unit } = options;
  const next = nextStep(shown, unit);
  const said = [
    held(headline(shown, unit), width),
    table(shown, options),
    [...bandLines(shown, width), ...leakLines(shown, options)],
    detail === "why" ? restateWhy(shown, options) : [],
  ];
  const hasDoubt = said.flat().some((line) => line.includes("±"));
  const parts = [
    ...said,
    [
      ...(next === undefined ? [] : held(next, width, "next     ")),
      ...(hasDoubt ? held(whatDoubtIs, width, "±        ") : []),
      ...(logbook.length === 0 ? [] : held(logbook.join("; "), width, "logbook  ")),
      ...(assumed.length === 0 ? [] : held(assumed.join(", "), width, "assumed  ")),
    ],
  ].filter((lines) => lines.length > 0);
  return parts.flatMap((lines, i) => (i === 0 ? lines : ["", ...lines]));
};

const whatDoubtIs = "one standard uncertainty: 2 chances in 3; twice as wide 19 in 20";

const headline = (shown: RestateShown, unit: PressureUnit): string => {
  const { answer, question, otherSupply, read } = shown;
  const { restated, refused, unchanged, reading } = answer;
  if (unchanged !== undefined && reading !== undefined && (refused ?? "too-tight") === "too-tight")
    return `Nothing changes: the same tester at the same supply reads ${plain(read ?? reading.cylinder, unit)} of ${plain(reading.supply, unit)} ${unit} again.`;
  if (question.other === undefined) return alone(shown, unit);
  if (refused !== undefined || restated === undefined)
    return `Not restated: ${refusalWords(refused ?? "restrictor-unknown", shown, unit).reason}.`;
  const { reads, lost } = cells(shown, unit);
  const isSame = question.other.restrictor === undefined && question.other.compared === undefined;
  const where = isSame ? "This tester would read" : "The other tester would read";
  const typed = otherSupply === undefined ? "" : ` (${otherSupply})`;
  return `${where} ${reads.replace("-", " to ")} of ${plain(supplyThere(shown), unit)} ${unit}${typed}: ${lost.replace("-", " to ")} % lost.`;
};

/** Where nothing is to be restated. */
const alone = (shown: RestateShown, unit: PressureUnit): string => {
  const { answer, question } = shown;
  const { judgement, byHoles, refused, reading } = answer;
  if (refused === "gauges-disagree")
    return `The dials disagree: ${refusalWords(refused, shown, unit).reason}.`;
  if (refused !== undefined)
    return `How large the leak is cannot be told: ${refusalWords(refused, shown, unit).reason}.`;
  if (byHoles?.kind === "measured") return holesSentence(byHoles, unit);
  const isBoreUnknown = question.restrictor.bore === undefined;
  switch (judgement?.kind) {
    case undefined:
    case "disagree":
      return `${lostText(shown)} on this tester; how large the leak is cannot be told without its supply pressure${isBoreUnknown ? " and the bore of its restrictor" : ""}.`;
    case "no-seal":
      return "No seal is measurable: the leak takes all the air there is.";
    case "tight": {
      const { equalHole } = judgement.limit;
      const most = equalHole === undefined ? "" : `, at most that of a hole of ${bore(equalHole, unit)}`;
      return reading?.cylinder === reading?.supply
        ? `Both dials read the same: the leak is smaller than they can show${most}.`
        : `Tighter than these dials can show: the leak is lost in their doubt${most}.`;
    }
    case "measured":
      return isBoreUnknown
        ? `${lostText(shown)} on this tester; how large the leak is cannot be told without the bore of its restrictor.`
        : `${lostText(shown)} on this tester.`;
  }
};

/** `25 % lost (± 2)`. */
const lostText = ({ answer: { lost = 0, reading } }: RestateShown): string => {
  if (reading === undefined) return `${String(Number((100 * lost).toPrecision(3)))} % lost`;
  const uLost = lostUncertainty(reading);
  const places = placesFor(100 * uLost);
  return `${percent(lost, places)} lost (± ${fixed(100 * uLost, places)})`;
};

const nextStep = (shown: RestateShown, unit: PressureUnit): string | undefined => {
  const { answer, question, tester } = shown;
  const { refused, judgement, byHoles, unchanged } = answer;
  if (unchanged !== undefined && refused !== "no-seal" && refused !== "gauges-disagree") return undefined;
  if (refused !== undefined) return refusalWords(refused, shown, unit).next;
  if (byHoles !== undefined) return undefined;
  const isBoreUnknown = question.restrictor.bore === undefined;
  if (judgement === undefined)
    return isBoreUnknown
      ? `rank cylinders by it on this tester only; drilled holes of known size measure them: ${calibrate(tester)}`
      : "add --regulated: the pressure on the first dial";
  if (judgement.kind === "tight") return refusalWords("too-tight", shown, unit).next;
  if (judgement.kind === "no-seal") return refusalWords("no-seal", shown, unit).next;
  if (isBoreUnknown && answer.restated === undefined)
    return `read drilled holes of known size on it, they measure every leak: ${calibrate(tester)}`;
  return undefined;
};

const leakLines = (shown: RestateShown, { unit, width }: RestateOptions): readonly string[] => {
  const { answer, question } = shown;
  const { figures, judgement, holeSpan, byHoles, lost } = answer;
  if (byHoles?.kind === "measured" && question.other !== undefined)
    return held(holesSentence(byHoles, unit), width);
  if (byHoles?.kind === "measured") return lost === undefined ? [] : held(`${lostText(shown)}.`, width);
  if (judgement?.kind === "measured" && figures?.size !== undefined)
    return held(sizeSentence(figures.size, unit), width);
  const told = answer.refused !== undefined || answer.unchanged !== undefined;
  if (judgement?.kind === "tight" && told && judgement.limit.equalHole !== undefined)
    return held(`The leak is at most that of a hole of ${bore(judgement.limit.equalHole, unit)}.`, width);
  if (holeSpan === undefined) return [];
  const [low, high] = [holeSpan.low, holeSpan.high].map((hole) => bore(hole, unit));
  return held(
    `Over supplies of ${supplySpan(unit)} that is a hole of ${String(low)} to ${String(high)}.`,
    width,
  );
};
