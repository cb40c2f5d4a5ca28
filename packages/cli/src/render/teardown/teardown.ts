// The screen of `teardown`: what is outside, the figures under the labels, what contradicts, the work, what to do next.

import type { Engine, TeardownAssessment } from "@sealtrend/core";
import { prose } from "../prose.ts";
import { conflictText, conflictsInOrder, settleTexts } from "./teardown-doubts.ts";
import { leftOutText } from "./teardown-left-out.ts";
import { headlineLines } from "./teardown-headline.ts";
import { figureTexts, valueTexts } from "./teardown-figures.ts";
import { markedList } from "./teardown-listed.ts";
import { missingText, nextLines, withoutLimitText } from "./teardown-next.ts";
import { type Block, blocksOf } from "./teardown-rows.ts";
import { findingTexts } from "./teardown-seen.ts";
import { sizesInShort } from "./teardown-sizes.ts";
import { type Shown, blockLines } from "./teardown-table.ts";
import { teardownWhy } from "./teardown-why.ts";
import { partsName } from "./teardown-words.ts";
import { careLines, workLines, workOf } from "./teardown-work.ts";

export interface TeardownOptions {
  readonly engine: Pick<Engine, "id" | "cylinders">;
  readonly width: number;
  /** The value of --units. */
  readonly units: string | undefined;
  readonly detail: "short" | "why";
  /** Lines that are taken already. */
  readonly taken?: number;
}

/** Lines of a terminal; on a narrow one the same text takes more of them. */
const linesAt = (width: number): number => Math.ceil(24 * Math.max(1, 80 / width));

/** How much is told, from all there is to the least. */
interface Room {
  /** `listed`: no tables, a line a figure that is not inside. */
  readonly shown: Shown | "listed";
  /** Lines of one kind. */
  readonly figures: number;
  readonly doubts: number;
  readonly work: number;
  /** The figures that ask for a work; what was seen; what has no limit. */
  readonly beside: "told" | "left";
  readonly gaps: "blank" | "none";
}

const all: Room = {
  ...{ shown: "all", figures: Infinity, doubts: Infinity, work: Infinity },
  ...{ beside: "told", gaps: "blank" },
};
const tight: Room = { ...all, shown: "rows", beside: "left", gaps: "none" };
const listed: Room = { ...tight, shown: "listed" };
const rooms: readonly Room[] = [
  all,
  { ...all, gaps: "none" },
  { ...all, shown: "rows", gaps: "none" },
  tight,
  { ...tight, shown: "needed", doubts: 3, work: 6 },
  { ...listed, figures: 8, doubts: 3, work: 6 },
  { ...listed, figures: 6, doubts: 2, work: 4 },
  { ...listed, figures: 4, doubts: 1, work: 4 },
  { ...listed, figures: 3, doubts: 1, work: 3 },
  { ...listed, figures: 2, doubts: 1, work: 3 },
  { ...listed, figures: 2, doubts: 1, work: 2 },
];
/** Where no figure asks for anything: all of them as long as there is room, before what is said beside them. */
const quietRooms: readonly Room[] = [
  ...rooms.slice(0, 2),
  { ...all, beside: "left", gaps: "none" },
  { ...all, shown: "figures", beside: "left", gaps: "none" },
  ...rooms.slice(2),
];
const least: Room = { ...listed, figures: 1, doubts: 1, work: 1 };

/** The whole screen, lines without line ends; with less told where it would run over the lines there are. */
export const teardownScreen = (
  assessment: TeardownAssessment,
  options: TeardownOptions,
): readonly string[] => {
  if (options.detail === "why")
    return [...screenIn(assessment, options, all), "", ...teardownWhy(assessment, options)];
  const tall = linesAt(options.width) - (options.taken ?? 0);
  const blocks = blocksOf(assessment, options.engine.cylinders);
  const isQuiet = blocks.every(({ standing }) => standing === "inside" || standing === "no-limit");
  for (const room of isQuiet ? quietRooms : rooms) {
    const lines = screenIn(assessment, options, room);
    if (lines.length <= tall) return lines;
  }
  return screenIn(assessment, options, least);
};

const screenIn = (
  assessment: TeardownAssessment,
  options: TeardownOptions,
  room: Room,
): readonly string[] => {
  const { width, units, engine } = options;
  const blocks = blocksOf(assessment, engine.cylinders);
  const gap = room.gaps === "blank" ? [""] : [];
  const parts = [
    doubtLines(assessment, width, room.doubts),
    [
      ...workLines(assessment, { width, most: room.work, why: room.beside === "told" ? "told" : "above" }),
      ...(room.work < workOf(assessment).length ? sizeLines(assessment, options) : []),
    ],
    room.beside === "told" ? markedList("seen", findingTexts(assessment), { width, most: room.doubts }) : [],
    [
      ...prose(missingText(assessment, engine.id), width),
      ...(room.beside === "told" || isBare(blocks)
        ? prose(withoutLimitText(assessment, engine.id), width)
        : []),
      ...careLines(assessment, width),
    ].filter((line) => line !== ""),
  ].filter((lines) => lines.length > 0);
  return [
    ...headlineLines(assessment, blocks, { width, units }),
    ...figureLines(blocks, options, room).flatMap((lines) => ["", ...lines]),
    "",
    ...parts.flatMap((lines) => [...lines, ...gap]),
    ...nextLines(assessment, { id: engine.id, width }),
  ];
};

/** What the shop is asked for stands on the screen even where the line of work that says it does not. */
const sizeLines = (assessment: TeardownAssessment, { width, units }: TeardownOptions): readonly string[] => {
  const sizes = sizesInShort(assessment, units);
  return sizes === "" ? [] : prose(`${sizes} (--why)`, width, "sizes  ");
};

const isBare = (blocks: readonly Block[]): boolean => blocks.every(({ standing }) => standing === "no-limit");

/** A table a kind of part, or a line a figure; and which parts are not among them. */
const figureLines = (
  blocks: readonly Block[],
  { width, units }: TeardownOptions,
  { shown, figures: most }: Room,
): readonly (readonly string[])[] => {
  if (shown === "listed" && isBare(blocks))
    return [markedList("value", valueTexts(blocks, units), { width, most: Math.max(most, 8) })];
  const wanted =
    shown === "all" || shown === "figures"
      ? blocks
      : blocks.filter(({ standing }) => standing !== "inside" && (standing !== "no-limit" || isBare(blocks)));
  const left = blocks.filter((block) => !wanted.includes(block));
  const names = left.map(({ part }) => partsName(part)).join(", ");
  const rest = left.length === 0 ? [] : [prose(`not shown here: ${names} (--why)`, width)];
  if (shown === "listed")
    return [[...markedList("figure", figureTexts(wanted, units), { width, most }), ...rest.flat()]];
  return [...wanted.map((block) => blockLines(block, { width, units, shown })), ...rest];
};

const doubtLines = (assessment: TeardownAssessment, width: number, most: number): readonly string[] => [
  ...markedList("settle", settleTexts(assessment), { width, most }),
  ...markedList("check", conflictsInOrder(assessment).map(conflictText), { width, most }),
  ...prose(leftOutText(assessment), width).filter((line) => line !== ""),
];
