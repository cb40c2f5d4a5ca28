// The questions that a sheet leaves open, each with what can be typed to settle it.

import type { OpenQuestion } from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import { wrapText } from "../table.ts";

/** What settles a question one way, as it is typed: the option where there is one, else the entry of the map. */
const settledBy = ({ option, entry }: OpenQuestion["readings"][number]): string =>
  option ?? (entry.startsWith('"') ? `in the map: ${entry}` : entry);

const placeText = ({ place = {} }: OpenQuestion): string => {
  const parts = [place.file, place.line, place.column].filter((part) => part !== undefined);
  return parts.length === 0 ? "" : `${parts.join(":")} `;
};

/** A number a question, and a line a way to settle it; ways that explain themselves stand on one line. */
export const openLines = (open: readonly OpenQuestion[], width: number): readonly string[] =>
  open.flatMap((question, i) => [
    ...wrapText(`${placeText(question)}${question.text}`, width, `${String(i + 1)}  `),
    ...waysOf(question).flatMap((way) => wrapText(way, width, "     ")),
  ]);

const waysOf = ({ readings }: OpenQuestion): readonly string[] => {
  const typed = readings.map((reading) => settledBy(reading).replaceAll(" ", "\u00a0"));
  const isPlain = readings.every(({ text, option = "" }) => option.endsWith(` ${text}`));
  if (isPlain) return [typed.join(", ")];
  return readings.map(({ text }, i) => `${typed[i] ?? ""}\u00a0\u00a0${text}`);
};

/** The same as faults, for whoever asked to write. */
export const openFaults = (open: readonly OpenQuestion[]): readonly Fault[] =>
  open.map((question) => {
    const ways = [...new Set(question.readings.map(settledBy))];
    return {
      code: "import-open",
      severity: "error",
      ...question.place,
      found: question.text,
      expected: question.readings.map(({ text }) => text).join(", or "),
      mend: `add ${ways.join(" or ")}`,
    };
  });
