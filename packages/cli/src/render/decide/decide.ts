// The screen of `decide`: the verdict, why, what speaks for and against, what would change it, what to do now.

import type { DecisionAssessment, PressureUnit } from "@sealtrend/core";
import { askLines, blindLines, evidenceLines, notSeenLines, unsettledLines } from "./decide-evidence.ts";
import { flipLines } from "./decide-flip-lines.ts";
import { guardTexts, licensedText } from "./decide-guards.ts";
import { headlineLines } from "./decide-headline.ts";
import { measureLines } from "./decide-measure.ts";
import { nextLines } from "./decide-next.ts";
import { reasonText } from "./decide-reason.ts";
import { type Room, everything, rooms } from "./decide-room.ts";
import { decideWhy } from "./decide-why.ts";
import { yearsText } from "./decide-words.ts";
import { prose } from "../prose.ts";
import { sentence } from "../words.ts";

export interface DecideOptions {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly detail: "short" | "why";
  /** The decision if the engine were kept for good, where that is another question and can be answered. */
  readonly forGood?: DecisionAssessment;
}

/** Lines of a terminal, less one for what is typed next and one for what was. */
const tall = 22;

/** The whole screen, lines without line ends; with less said where it would run over the height of a terminal. */
export const decideScreen = (assessment: DecisionAssessment, options: DecideOptions): readonly string[] => {
  if (options.detail === "why")
    return [
      ...screenIn(assessment, options, everything),
      "",
      ...decideWhy(assessment, options.unit).flatMap((text) => prose(text, options.width)),
    ];
  const screens = rooms.map((room) => screenIn(assessment, options, room));
  return screens.find(({ length }) => length <= tall) ?? screens.at(-1) ?? [];
};

const screenIn = (assessment: DecisionAssessment, options: DecideOptions, room: Room): readonly string[] => {
  const { width } = options;
  const blank = room.blank === "between" ? [""] : [];
  return [
    ...headlineLines(assessment, width),
    "",
    ...prose(reasonText(assessment, options.unit), width),
    ...guardTexts(assessment)
      .slice(0, room.guards)
      .flatMap((text) => prose(text, width)),
    ...horizonLines(assessment, width, room),
    ...reachLines(assessment, width),
    ...(room.blank === "none" ? [] : [""]),
    ...evidenceLines(assessment, width, room),
    ...notSeenLines(assessment, width, room),
    ...blindLines(assessment, width, room),
    ...askLines(assessment, width, room),
    ...unsettledLines(assessment, width, room),
    ...blank,
    ...flipLines(assessment, options, room),
    ...measureLines(assessment, width, room),
    ...nextLines(assessment, width),
    ...blank,
    ...lastLines(assessment, width),
  ].filter((line, i, all) => line !== "" || (all[i - 1] ?? "") !== "");
};

/** A horizon that nobody named is said aloud. */
const horizonLines = (
  { horizon, history }: DecisionAssessment,
  width: number,
  room: Room,
): readonly string[] => {
  if (horizon.from !== "usual") return [];
  const kept =
    room.kept === "left-out"
      ? ""
      : `; kept on record: sealtrend engine set ${history.record.engine.id} ownership 11y`;
  return prose(
    `Nobody said how long you keep it: ${yearsText(horizon.years)} are taken (--own 11y, --own for-good)${kept === "" ? "." : kept}`,
    width,
  );
};

/** A line drawn far beyond the record is said aloud. */
const reachLines = ({ reach }: DecisionAssessment, width: number): readonly string[] =>
  reach?.far === "yes" ? prose(`${sentence(reach.text)}: drawn on far beyond what was tested.`, width) : [];

const lastLines = ({ decision, history }: DecisionAssessment, width: number): readonly string[] => [
  ...prose("Wear only: a valve, gasket or ring can fail without notice.", width),
  ...(decision.licensed
    ? prose(
        history.record.engine.use === "aircraft"
          ? licensedText
          : "This is a record for the person who decides. The maker's limits and a licensed mechanic decide.",
        width,
      )
    : []),
];
