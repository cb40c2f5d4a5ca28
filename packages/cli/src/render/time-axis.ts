// What stands under a chart: the axis line with its ticks, their labels, and a letter for each thing that happened.

import { clean } from "./clean.ts";
import { columnOf, spread, type Span } from "./place.ts";
import type { Tick } from "./ticks.ts";
import { characterWidth, displayWidth } from "./width.ts";

const letters = [..."abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"];

const put = (line: string[], at: number, text: string): void => {
  let column = at;
  for (const character of text) {
    line[column] = character;
    for (let i = 1; i < characterWidth(character); i += 1) line[column + i] = "";
    column += characterWidth(character);
  }
};

/** The axis line: `level` signs with a `tick` sign at each tick. */
export const axisLine = (
  ticks: readonly Tick[],
  span: Span,
  columns: number,
  level: string,
  tick: string,
): string => {
  const line = Array.from({ length: columns }, () => level);
  for (const { x } of ticks) line[columnOf(x, span, columns)] = tick;
  return line.join("");
};

/** Labels centred under their ticks; one that would touch the label before it is left out. */
export const axisLabels = (ticks: readonly Tick[], span: Span, columns: number): string => {
  const line = Array.from({ length: columns }, () => " ");
  let free = 0;
  for (const { x, text } of ticks) {
    const label = clean(text, 16);
    const wide = displayWidth(label);
    const start = Math.min(columns - wide, Math.max(0, columnOf(x, span, columns) - Math.floor(wide / 2)));
    if (start < free) continue;
    put(line, start, label);
    free = start + wide + 1;
  }
  return line.join("").trimEnd();
};

/** A line with a letter at each mark, and the key of the letters. Marks closer than a column are moved apart; more than
 *  52 are counted, not shown. @param marks - in the order of time */
export const axisMarks = (
  marks: readonly Tick[],
  span: Span,
  columns: number,
): { readonly line: string; readonly key: string } => {
  const shown = marks.slice(0, letters.length);
  const line = Array.from({ length: columns }, () => " ");
  const places = spread(
    shown.map(({ x }) => columnOf(x, span, columns)),
    columns,
  );
  for (const [i, place] of places.entries()) line[place] = letters[i] ?? " ";
  const key = shown.map(({ text }, i) => `${letters[i] ?? ""}\u00a0${clean(text, 80)}`);
  if (marks.length > shown.length) key.push(`and ${String(marks.length - shown.length)} more`);
  return { line: line.join("").trimEnd(), key: key.join("; ") };
};
