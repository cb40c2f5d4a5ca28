// The screen of `import`: what it would do or did, what is open, what stays out, how the sheet was read, and what next.

import { isOfMapOnly, isOfSheet, mapName, needsMap } from "../../commands/import-steps/next-line.ts";
import type { ImportResult } from "../../commands/import-steps/import-result.ts";
import { readingsIn } from "../../commands/import-steps/readings-in.ts";
import { quoted } from "../../options/quote.ts";
import { savedLine } from "../saved-line.ts";
import { wrapText } from "../table.ts";
import { addedText, headline } from "./import-headline.ts";
import { engineLines, engineTable } from "./import-engines.ts";
import { leftLines, mendLines, noReadingsText, remarksText, slipLines, unreadText } from "./import-left.ts";
import { mapLines } from "./import-map-lines.ts";
import { openLines } from "./import-open.ts";
import { several } from "./import-words.ts";

export interface ImportScreenOptions {
  readonly width: number;
  readonly detail: "short" | "why";
}

/** Lines without line ends. */
export const importScreen = (
  result: ImportResult,
  { width, detail }: ImportScreenOptions,
): readonly string[] => {
  const { state, plans, open, undo = "possible" } = result;
  const first =
    state === "added"
      ? [savedLine(`saved  ${addedText(result)}`, undo, width)]
      : wrapText(headline(result), width);
  const isDone = state === "added";
  const list = { width, detail: detail === "why" ? "all" : "few" } as const;
  const blocks = [
    openLines(open, width),
    detail === "why"
      ? engineTable(plans, width)
      : engineLines(plans, { width, done: isDone ? "done" : "to do" }),
    result.purpose === "write" ? [] : leftLines(result, list),
    result.purpose === "write" ? [] : mendLines(result, list),
    result.purpose === "write" ? [] : slipLines(result, list),
    [
      ...recordedLines(result, width),
      ...[noReadingsText(result), remarksText(result, list), unreadText(result)].flatMap((text) =>
        wrapped(text, width),
      ),
    ],
    isDone ? [] : mapLines(result.map, result.why, { width, detail, counts: result.counts }),
    nextLines(result, width),
  ];
  return [first, ...blocks.filter((lines) => lines.length > 0).map((lines) => ["", ...lines])].flat();
};

const wrapped = (text: string, width: number): readonly string[] =>
  text === "" ? [] : wrapText(text, width);

const recordedLines = ({ state, plans }: ImportResult, width: number): readonly string[] => {
  const readings = readingsIn(plans.flatMap(({ placed }) => placed.recorded));
  const filling = plans.reduce((sum, { placed }) => sum + placed.filling, 0);
  const filled =
    filling === 0
      ? []
      : wrapText(
          `${several(filling, "reading")} of cylinders that stand there as not taken: a further take of that day`,
          width,
        );
  if (readings === 0 || state === "nothing new") return filled;
  const known = `recorded already, and not added again: ${several(readings, "reading")}`;
  return [...wrapText(known, width), ...filled];
};

const unbroken = (line: string): string => line.replaceAll(" ", "\u00a0");

const nextLines = ({ next, state, mapFile, file, open }: ImportResult, width: number): readonly string[] => {
  const isByMap = open.some(({ code }) => code === "engine") || needsMap(open);
  const edit = isByMap && mapFile !== undefined ? `edit ${mapFile.file}, then ` : "";
  const mend = open.some(isOfSheet) ? "mend the sheet, then: " : "";
  const lead = open.length === 0 ? "" : mend === "" ? `settle what is open: ${edit}` : mend;
  const command = next === "" ? [] : wrapText(`${lead}${unbroken(next)}`, width, "next   ");
  if (state === "added" || state === "nothing new") return command;
  return [...command, ...wrapText(mapText({ mapFile, file, open }), width, "map    ")];
};

const mapText = ({
  mapFile,
  file,
  open,
}: Pick<ImportResult, "file" | "open"> & { readonly mapFile: ImportResult["mapFile"] }): string => {
  if (mapFile?.state === "used") return `read by the map ${mapFile.file}`;
  if (mapFile !== undefined) return `the map is laid down in ${mapFile.file}: edit it, and run this again`;
  const name = quoted(mapName(file));
  const isByMapToo = open.some(({ readings }) => readings.some(isOfMapOnly));
  return needsMap(open)
    ? `that lays the map down in ${name}: edit it, and run the same again`
    : `${isByMapToo ? "what the map answers" : "read otherwise"}: add ${unbroken(`--map ${name}`)}, and edit that file`;
};
