// A reading that stands a decimal place away from its fellows: 1310 among 131s. It may be true; it is worth a question.

import { median } from "../statistics/index.ts";

/** How far a reading stands from what was to be expected. */
export type Slip = "tenfold" | "tenth";

/** A factor of ten, give or take what cylinders differ among themselves; judgement of this project. */
const factor = { least: 7, most: 15 };

/** Whether a reading is about ten times its fellows of the row, or a tenth of them; without fellows, its own last one.
 *  A zero is never a slip: a cylinder can hold nothing. Nor is a reading like its own last one.
 *  @param fellows - the other readings of the row  @param last - the same cylinder's earlier one; all in one unit */
export const slipOf = (
  value: number,
  fellows: readonly number[],
  last: number | undefined,
): Slip | undefined => {
  const sound = fellows.filter((other) => other > 0);
  const expected = sound.length > 0 ? median(sound) : last;
  if (expected === undefined || expected <= 0 || value <= 0) return undefined;
  if (last !== undefined && value > last / 2 && value < last * 2) return undefined;
  const is = (ratio: number): boolean => ratio >= factor.least && ratio <= factor.most;
  return is(value / expected) ? "tenfold" : is(expected / value) ? "tenth" : undefined;
};

/** The reading that was meant, where the digits themselves tell: 1310 is 131, 98 is 9.8, 13.1 is 131; undefined where a
 *  digit would have to be made up, as for 13. @param text - a plain number as typed */
export const slippedTo = (text: string, slip: Slip): string | undefined => {
  const [, whole = "", decimals = ""] = /^(\d+)(?:[.,](\d+))?$/.exec(text) ?? [];
  if (whole === "" || (slip === "tenth" && decimals === "")) return undefined;
  const shifted = Number(`${whole}.${decimals}e${slip === "tenfold" ? "-1" : "1"}`);
  return String(Number(shifted.toPrecision(9)));
};
