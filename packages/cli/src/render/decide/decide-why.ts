// The detail behind `decide`: every row with its points and source, the chance, the money, and what was judged.

import {
  type DecisionAssessment,
  type FoundRow,
  type PressureUnit,
  type WearChannel,
  type WornPlace,
  ladder,
  judgedOf,
} from "@sealtrend/core/parts";
import { isPast } from "./decide-chance.ts";
import { guardText } from "./decide-guards.ts";
import { measureTexts } from "./decide-measure.ts";
import { limitWords, worstChannel } from "./decide-limit.ts";
import { aboutChance, placeNames, yearsText } from "./decide-words.ts";
import { judgedTexts } from "./decide-why-judged.ts";
import { moneyTexts } from "./decide-why-money.ts";
import { counted, cylinders, fixed, sentence } from "../words.ts";

/** Paragraphs, not wrapped. */
export const decideWhy = (assessment: DecisionAssessment, unit: PressureUnit): readonly string[] => [
  ...evidenceTexts(assessment),
  ...guardsTexts(assessment),
  ...notSeenTexts(assessment),
  ...measureTexts(assessment),
  ...chanceTexts(assessment, unit),
  ...moneyTexts(assessment, unit),
  ...judgedTexts(assessment),
];

const places = ["top", "rings", "bore", "bottom"] as const;

const states = {
  established: "established",
  developing: "developing",
  "not-shown": "not shown",
} as const;

const evidenceTexts = ({ decision, evidence }: DecisionAssessment): readonly string[] => [
  `Points for wear, all judgement: ${places.map((place) => placeText(place, decision.scores[place])).join("; ")}. Of each kind of evidence the heaviest for and the heaviest against count; 4 from two kinds, not cranking alone, establish, 2 are developing; so does one measurement beyond its limit (4).`,
  ...evidence.map(rowText),
];

const placeText = (
  place: WornPlace,
  { score, state }: DecisionAssessment["decision"]["scores"][WornPlace],
): string => `${placeNames[place]} ${signed(score)} (${states[state]})`;

/** `Leak-down, rings +2, valves -1: 3 loses 31 %, air at the crankcase (test 2026-05-03a). Above the limit, ...: published, ...` */
const rowText = ({ row, line, text, from, points, status, source, use }: FoundRow): string => {
  const given = places.flatMap((place) =>
    points[place] === 0 ? [] : [`${placeNames[place]} ${signed(points[place])}`],
  );
  const { when } = ladder[row];
  const said = given.length === 0 ? "no points" : given.join(", ");
  const aside =
    use === "set-aside"
      ? " Set aside until it was run warm, or gauge, throttle and battery were proved."
      : "";
  const named = status === "published" ? ` (${source})` : "";
  return `${sentence(line)}, ${said}: ${text} (${from}). Condition, ${status}: ${when}${named}.${aside}`;
};

const signed = (points: number): string => (points > 0 ? `+${String(points)}` : String(points));

const guardsTexts = (assessment: DecisionAssessment): readonly string[] =>
  assessment.decision.guards.length === 0
    ? []
    : [
        `Rules that stand above points and money: ${assessment.decision.guards.map((guard) => guardText(guard, assessment)).join(" ")}`,
      ];

const notSeenTexts = ({ notSeen }: DecisionAssessment): readonly string[] =>
  notSeen.map(
    ({ text, why, command, settles }) =>
      `Not seen: ${text}${why === undefined ? "" : `, ${why}`}${settles === undefined ? "" : `; ${settles}`}${command === undefined ? "" : `: ${command}`}`,
  );

const shareSources = {
  diagnosis: "by the likely causes of that test",
  "usual-one-low": "as usual where one cylinder is low (judgement)",
  "usual-evenly-low": "as usual where all are low alike (judgement)",
  "usual-healthy": "as usual for an engine that is not low (judgement)",
} as const;

/** What the chance is reckoned from; a chance below a hundredth is not told finer. */
const chanceTexts = (assessment: DecisionAssessment, unit: PressureUnit): readonly string[] => {
  const { decision, wear, horizon, sharesFrom, chanceUnknown } = assessment;
  const { chance } = decision;
  if (chance === undefined)
    return chanceUnknown === undefined
      ? []
      : isPast(assessment)
        ? [
            `A limit is passed already, so no chance of passing one is told; nor could it be: ${chanceUnknown}`,
          ]
        : [`The chance of need is not known: ${chanceUnknown}`];
  const texts = wear.map((channel) => channelText(channel, unit));
  const channels = [...new Set(texts)].map((text) => {
    const labels = wear.flatMap(({ label }, i) => (texts[i] === text ? [label] : []));
    return `${cylinders(labels).toLowerCase()} ${text}`;
  });
  const union =
    wear.length > 1 && chance.atMost > chance.probability
      ? ` That any of them does: between that of the worst and ${aboutChance(chance.atMost)}.`
      : "";
  const usual =
    worstChannel(assessment)?.limitFrom === "usual"
      ? " A usual rule is no point of need: many engines run on below it, so this errs towards acting."
      : "";
  return [
    `Chance of passing the limit within ${yearsText(horizon.years)}, computed from the history and a yearly loss believed beforehand: ${channels.join("; ")}.${union}${usual}`,
    `If work is needed, where: ${shareText(assessment)}, ${shareSources[sharesFrom]}.`,
  ];
};

/** `about 1 in 10 (limit 1000 kPa, the maker's; nine tests 2014-11-20 to 2026-11-20)` */
const channelText = (channel: WearChannel, unit: PressureUnit): string =>
  `${aboutChance(channel.probability)} (limit ${limitWords(channel, channel.limit, { unit })}, ${channel.limitFrom === "maker" ? "the maker's" : "a usual rule"}; ${counted(channel.tests, "test")} ${channel.from} to ${channel.to})`;

const shareText = ({ input }: DecisionAssessment): string => {
  const { shares } = judgedOf(input);
  return `${placeNames.top} ${fixed(shares.top, 2)}, ${placeNames.rings} ${fixed(shares.rings, 2)}, ${placeNames.bottom} ${fixed(shares.bottom, 2)}`;
};
