// A reading that a slipped digit made: 1310 or 13.1 among 131s. All thresholds here are judgement, no source.

import { median } from "../../statistics/index.ts";
import { mostOfEngine } from "./most-of-engine.ts";

/** `high`: so far above the others that it stands in no comparison. `low`: about a tenth of the others; as a weak cylinder
 *  may really read so, it goes on being compared, and read so twice it is no slip. */
export interface DigitSlip {
  readonly kind: "high" | "low";
  /** Reading / middle of the others. */
  readonly times: number;
  /** The reading [Pa gauge]. */
  readonly reading: number;
}

interface Read {
  readonly readings: readonly number[];
  readonly value: number;
  readonly pegged: boolean;
}

/** From so many times the others on, no healthy or sick engine reads: a strong cylinder beside weak ones reads two to
 *  three times as much. */
const farAbove = 4;
/** Where it is more than a spark engine makes, as much as no strong cylinder reads beside weak ones will do. */
const farAboveSpark = 3;
/** Others below this [Pa gauge, some 45 psi] may be dead themselves, and the high one is then the sound one. */
const soundAtLeast = 300_000;
/** A tenth, within 15 %; anything else that is low may be a dead cylinder, and 0 always is. */
const tenth = { from: 0.085, to: 0.115 };

/** In the order given; undefined where nothing points to a slip. Where some are far above, only they are named: the
 *  others then look like a tenth. */
export const slipsOf = (cells: readonly (Read | undefined)[]): readonly (DigitSlip | undefined)[] => {
  if (!mayHoldSlip(cells)) return cells.map(() => undefined);
  const slips = cells.map((cell, i) => slipOf(cell, othersOf(cells, i)));
  const anyHigh = slips.some((slip) => slip?.kind === "high");
  return anyHigh ? slips.map((slip) => (slip?.kind === "high" ? slip : undefined)) : slips;
};

/** Whether any reading lies far enough from any other. Few tests hold one, and this costs less than the middle of the others
 *  of each cylinder, which lies between the lowest and the highest. */
export const mayHoldSlip = (cells: readonly (Read | undefined)[]): boolean => {
  const readings = { low: Infinity, high: 0 };
  const others = { low: Infinity, high: 0 };
  for (const cell of cells) {
    if (cell === undefined) continue;
    for (const reading of cell.readings) {
      readings.low = Math.min(readings.low, reading);
      readings.high = Math.max(readings.high, reading);
    }
    if (cell.pegged || !(cell.value > 0)) continue;
    others.low = Math.min(others.low, cell.value);
    others.high = Math.max(others.high, cell.value);
  }
  return readings.high >= farAboveSpark * others.low || readings.low <= tenth.to * others.high;
};

const othersOf = (cells: readonly (Read | undefined)[], own: number): readonly number[] =>
  cells.flatMap((cell, i) =>
    i !== own && cell !== undefined && !cell.pegged && cell.value > 0 ? [cell.value] : [],
  );

const slipOf = (cell: Read | undefined, others: readonly number[]): DigitSlip | undefined => {
  if (cell === undefined || others.length === 0) return undefined;
  const middle = median(others);
  const [lowest, highest] = [Math.min(...cell.readings), Math.max(...cell.readings)];
  const far = highest > mostOfEngine.spark ? farAboveSpark : farAbove;
  if (highest >= far * middle && middle >= soundAtLeast)
    return { kind: "high", times: highest / middle, reading: highest };
  const share = lowest / middle;
  const isRepeated = cell.readings.length > 1 && highest / middle <= tenth.to;
  return share >= tenth.from && share <= tenth.to && !cell.pegged && !isRepeated
    ? { kind: "low", times: share, reading: lowest }
    : undefined;
};
