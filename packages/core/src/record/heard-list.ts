// A line of places as a person types it, one a cylinder: `none "tail pipe" x "oil filler faint"`.

import { plainHeard } from "./heard.ts";
import { isStrength, namesPlace } from "./heard-places.ts";

/** Splits a line into one cell a cylinder, in the words of the file. Commas or semicolons part the cells; without them
 *  blanks do, and words that name one place together, or say how loud, stay together.
 *  @param labels - of the engine's cylinders */
export const splitHeard = (line: string, labels: readonly string[]): readonly string[] => {
  const cells = /[;,]/.test(line) ? line.split(/[;,]/).map((cell) => cell.trim()) : byWords(line, labels);
  return cells.map((cell) => (/^[xX?-]$/.test(cell) || cell === "" ? "x" : plainHeard(cell, labels)));
};

const longestName = 3;

const byWords = (line: string, labels: readonly string[]): readonly string[] => {
  const words = line
    .replace(/\s*([+:])\s*/g, "$1")
    .split(/\s+/)
    .filter((word) => word !== "");
  const cells: string[] = [];
  for (let at = 0; at < words.length;) {
    const taken = takenFrom(words.slice(at), labels);
    cells.push(words.slice(at, at + taken).join(" "));
    at += taken;
  }
  return cells;
};

/** How many words from here on make one cell. */
const takenFrom = (words: readonly string[], labels: readonly string[]): number => {
  const lengths = Array.from({ length: Math.min(longestName, words.length) }, (_, i) => i + 1).reverse();
  const name = lengths.find((length) => namesPlace(namedBy(words.slice(0, length)))) ?? 1;
  const next = words[name] ?? "";
  const isMark = isStrength(next) || (labels.includes(next) && isNeighbour(words.slice(0, name)));
  const after = words[name + 1] ?? "";
  return name + (isMark ? 1 : 0) + (isMark && !isStrength(next) && isStrength(after) ? 1 : 0);
};

/** The last place of `exhaust+oil` with the words that follow it. */
const namedBy = ([first = "", ...rest]: readonly string[]): readonly string[] => [
  first.split("+").at(-1) ?? first,
  ...rest,
];

const isNeighbour = (words: readonly string[]): boolean =>
  plainHeard(namedBy(words).join(" "), []) === "neighbour";
