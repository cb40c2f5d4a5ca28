// The line of `decide` that says what would change the verdict.

import type { DecisionAssessment, MeasureNow, PressureUnit } from "@sealtrend/core/parts";
import { type Flip, flipsOf, inputName, placeText, turnsTo } from "./decide-flips.ts";
import type { Room } from "./decide-room.ts";
import { verdictWords } from "./decide-words.ts";
import { prose } from "../prose.ts";
import { joined } from "../words.ts";

interface Given {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly forGood?: DecisionAssessment;
}

/** At most three inputs, the years of ownership always among them, and keeping it for good where that changes the word. The
 *  ratio stands in the reason. */
export const flipLines = (assessment: DecisionAssessment, given: Given, room: Room): readonly string[] => {
  const { unit, width, forGood } = given;
  const { decision } = assessment;
  if (decision.reasons[0] === "outside-the-chance")
    return prose("a bore or bearing over its limit", width, "flips      ");
  // what it turns on is asked for in the reason
  if (assessment.horizon.kind === "for-good" && decision.keep === undefined && decision.basis !== "needed")
    return [];
  if (decision.verdict === "test-again" && decision.testWorth?.asked !== "yes") return [];
  const isNeeded = decision.basis === "needed";
  const kept = forGood === undefined || isNeeded ? [] : keptText(assessment, forGood);
  const lead = isNeeded ? "level at   " : "flips      ";
  const flips = flipsOf(assessment).filter(({ input }) => input !== "accessRatio");
  const onEdge = edgeInputs(assessment);
  if (onEdge.length > 1)
    return prose(`it stands on the edge, any of them tips it: ${joined(onEdge)}`, width, lead);
  const texts = [
    ...kept,
    ...(isNeeded ? [] : measuredText(assessment)),
    ...grouped(told(flips, Math.max(Math.min(2, room.flips), room.flips - kept.length)), assessment, unit),
  ];
  if (texts.length > 0) return prose(texts.join(" · "), width, lead);
  const isSearched = !isNeeded && room.flips === 3 && decision.comparison !== undefined;
  return isSearched ? prose(searched, width, lead) : [];
};

/** As far as the core looks. */
const searched =
  "nothing alone: no price a thousandfold up or down, no limit up to today's level, no years up to 100";

/** Level to a hundredth of the price: figures would read as no change. */
const edgeInputs = ({ decision: { comparison } }: DecisionAssessment): readonly string[] => {
  if (comparison?.edge !== "on") return [];
  const near = comparison.swings.filter(({ flip }) => flip?.where === "half-range");
  return near.slice(0, 3).map(({ input }) => inputName(input));
};

/** What is found over its limit goes before all money; said while it can be measured. */
const measuredText = ({ decision, measureNow }: DecisionAssessment): readonly string[] => {
  const isIdle = decision.verdict === "leave-it" || decision.verdict === "watch-it";
  const parts = measureNow.flatMap(({ code }) => measured[code] ?? []);
  return isIdle && parts.length > 0 ? [`${alternatives([...new Set(parts)])} over its limit`] : [];
};

const alternatives = (parts: readonly string[]): string =>
  parts.length === 1 ? parts.join("") : `${parts.slice(0, -1).join(", ")} or ${parts.at(-1) ?? ""}`;

const measured: Readonly<Partial<Record<MeasureNow["code"], string>>> = {
  bores: "a taper",
  "ring-gaps": "a ring gap",
  "bearing-clearance": "a bearing",
  journals: "a journal",
};

/** `re-ring: from 11 years of ownership on · …`; what lies beyond the range that is tried for it is marked once, before the first
 *  of them. */
const grouped = (
  flips: readonly Flip[],
  assessment: DecisionAssessment,
  unit: PressureUnit,
): readonly string[] => {
  const far = flips.findIndex(({ where }) => where === "outside");
  const heads = flips.map((flip) => turnsTo(flip, assessment));
  return flips.map((flip, i) => {
    const head = heads[i] ?? "";
    const isNamed = head === "" || (i > 0 && heads[i - 1] === head);
    return `${i === far ? "far off: " : ""}${isNamed ? "" : `${head}: `}${placeText(flip, assessment, unit)}`;
  });
};

/** The first ones; the last of them gives way to the years of ownership where those are not among them. */
const told = (flips: readonly Flip[], most: number): readonly Flip[] => {
  const years = flips.findIndex(({ input }) => input === "horizon");
  return flips.filter((_, i) => (years < most ? i < most : i < most - 1 || i === years));
};

/** Kept for good: another word, or nothing to say. */
const keptText = ({ decision }: DecisionAssessment, forGood: DecisionAssessment): readonly string[] =>
  forGood.decision.verdict === decision.verdict
    ? []
    : [`kept for good (${verdictWords[forGood.decision.verdict]})`];
