// A row of chances: one for each class, adding up to 1.

import type { RowView } from "../../record/index.ts";
import { neededNumber, partOf } from "./cells.ts";

/** How far a sum may be out: thirds and sevenths written with six digits are meant to add up. */
const slack = 5e-6;

/** The chances of a row, brought to a sum of exactly 1 where digits were cut; undefined after a fault.
 *  @param least - of each */
export const readChances = (
  row: RowView,
  classes: readonly string[],
  least = 0,
): readonly number[] | undefined => {
  const read = classes.map((name) => neededNumber(row, name, partOf(`the chance of ${name}`, least)));
  const chances = read.filter((chance) => chance !== undefined);
  if (chances.length < classes.length) return undefined;
  const sum = chances.reduce((total, chance) => total + chance, 0);
  if (Math.abs(sum - 1) > slack) return row.fault(classes[0] ?? "", "chances-sum", { sum });
  return Math.abs(sum - 1) < 1e-9 ? chances : chances.map((chance) => chance / sum);
};
