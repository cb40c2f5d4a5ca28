// The screen of `decide`: the verdict, why, what speaks for and against, what would change it, what to do now.

import type { DecisionAssessment, PressureUnit } from "@sealtrend/core";
import { type Room, blindLines, evidenceLines, notSeenLines } from "./decide-evidence.ts";
import { flipLines } from "./decide-flip-lines.ts";
import { guardTexts, licensedText } from "./decide-guards.ts";
import { headlineLines } from "./decide-headline.ts";
import { measureLines, nextLines } from "./decide-next.ts";
import { reasonText } from "./decide-reason.ts";
import { decideWhy } from "./decide-why.ts";
import { yearsText } from "./decide-words.ts";
import { prose } from "../prose.ts";

export interface DecideOptions {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly detail: "short" | "why";
  /** The decision if the engine were kept for good, where that is another question and can be answered. */
  readonly forGood?: DecisionAssessment;
}

/** Lines of a terminal. */
const tall = 24;

/** The whole screen, lines without line ends; with less said where it would run over 24 lines. */
export const decideScreen = (assessment: DecisionAssessment, options: DecideOptions): readonly string[] => {
  if (options.detail === "why")
    return [
      ...screenIn(assessment, options, "all"),
      "",
      ...decideWhy(assessment, options.unit).flatMap((text) => prose(text, options.width)),
    ];
  const least = screenIn(assessment, options, "least");
  const rooms = ["roomy", "tight"] as const;
  return (
    rooms.map((room) => screenIn(assessment, options, room)).find(({ length }) => length <= tall) ?? least
  );
};

/** Guards that are told. */
const guards: Readonly<Record<Room, number>> = { all: Infinity, roomy: Infinity, tight: 2, least: 1 };

const screenIn = (assessment: DecisionAssessment, options: DecideOptions, room: Room): readonly string[] => {
  const { width } = options;
  const isTight = room === "tight" || room === "least";
  const blank = isTight ? [] : [""];
  return [
    ...headlineLines(assessment, width),
    "",
    ...prose(reasonText(assessment), width),
    ...guardTexts(assessment)
      .slice(0, guards[room])
      .flatMap((text) => prose(text, width)),
    ...horizonLines(assessment, width, room),
    ...(room === "least" ? [] : [""]),
    ...evidenceLines(assessment, width, room),
    ...notSeenLines(assessment, width, room),
    ...blindLines(assessment, width, room),
    ...blank,
    ...flipLines(assessment, options, room),
    ...measureLines(assessment, width),
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
    room === "least"
      ? ""
      : `; kept on record: sealtrend engine set ${history.record.engine.id} ownership 11y`;
  return prose(
    `Nobody said how long you keep it: ${yearsText(horizon.years)} are taken (--own 11y, --own for-good${kept}).`,
    width,
  );
};

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
