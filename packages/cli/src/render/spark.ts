// One cylinder's course in one line. A block is a test; a dot is time in which nothing was measured.

import { columnOf, spread } from "./place.ts";

export interface SparkPoint {
  /** Year with fraction, or meter reading. */
  readonly x: number;
  /** Absent (or not finite) = this test has no reading of this cylinder; -Infinity = it held nothing, drawn as 0. */
  readonly y: number | null | undefined;
}

export interface SparkOptions {
  readonly points: readonly SparkPoint[];
  /** The moments at the first and the last column, the same for all lines of a screen. */
  readonly from: number;
  readonly to: number;
  /** The values of the lowest and the highest block; what lies beyond shows as that block. */
  readonly low: number;
  readonly high: number;
  readonly columns: number;
  readonly unicode: boolean;
}

const blocks = { levels: [..."▁▂▃▄▅▆▇█"], nothingMeasured: "·" };
const digits = { levels: [..."12345678"], nothingMeasured: "." };
const gap = " ";
const nothingHeld = "0";

const level = (y: number, { low, high }: SparkOptions): number => {
  const count = blocks.levels.length;
  if (!(high > low)) return count / 2 - 1;
  return Math.min(count - 1, Math.max(0, Math.floor(((y - low) / (high - low)) * count)));
};

/** A line of exactly `columns` columns. Every test stands at its date; tests closer than a column are moved apart
 *  so that each stays visible. Between tests stands a dot, never a held value: nobody measured there. A test
 *  without a reading, and all before the first and after the last test, is blank. */
export const spark = (options: SparkOptions): string => {
  const { columns, from, to, unicode } = options;
  const signs = unicode ? blocks : digits;
  const points = options.points.filter(({ x }) => Number.isFinite(x)).toSorted((a, b) => a.x - b.x);
  const span = to > from ? { from, to } : { from: from - 1, to: from + 1 };
  const places = spread(
    points.map(({ x }) => columnOf(x, span, columns)),
    columns,
  );
  const first = places[0] ?? columns;
  const last = places.at(-1) ?? -1;
  const line = Array.from({ length: columns }, (_, i) =>
    i > first && i < last ? signs.nothingMeasured : gap,
  );
  for (const place of places) line[place] = gap;
  points.forEach(({ y }, i) => {
    if (y === -Infinity) line[places[i] ?? 0] = nothingHeld;
    if (typeof y !== "number" || !Number.isFinite(y)) return;
    line[places[i] ?? 0] = signs.levels[level(y, options)] ?? gap;
  });
  return line.join("");
};
