// Refuses input that no caller may make of a logbook: such a fault is in the program, not in the readings.

import type { HistoryInput } from "./input.ts";

/** @throws RangeError when a list does not fit the labels, a number is not finite, tests are out of order or a service
 *  names a cylinder or a place that does not exist */
export const checkInput = ({ labels, tests, services, limitRatio, minimum = 0 }: HistoryInput): void => {
  const refuse = (what: string): never => {
    throw new RangeError(`analyseHistory: ${what}`);
  };
  if (labels.length === 0) refuse("needs at least one cylinder");
  tests.forEach(({ id, x, years, correctionUncertainty, sharedUncertainty, cells }, k) => {
    const numbers = [x, years, correctionUncertainty, ...Object.values(sharedUncertainty ?? {})];
    if (!numbers.every(Number.isFinite) || correctionUncertainty < 0)
      refuse(`test ${id} holds a number out of range`);
    if (cells.length !== labels.length)
      refuse(`test ${id} has ${String(cells.length)} cells for ${String(labels.length)} cylinders`);
    if (cells.some((cell) => cell.kind === "read" && !(Number.isFinite(cell.ln) && cell.repeats >= 1)))
      refuse(`test ${id} has a cell without a finite ln or below one repeat`);
    const before = tests[k - 1];
    if (before !== undefined && before.x > x) refuse(`test ${id} lies before the one in front of it`);
  });
  for (const { afterTests, touched, newBaseline, why } of services) {
    if (!Number.isInteger(afterTests) || afterTests < 0 || afterTests > tests.length)
      refuse(`"${why}" comes after ${String(afterTests)} of ${String(tests.length)} tests`);
    if ([...touched, ...newBaseline].some((cylinder) => labels[cylinder] === undefined))
      refuse(`"${why}" names a cylinder that does not exist`);
  }
  if (limitRatio !== undefined && !(limitRatio > 0 && limitRatio < 1))
    refuse(`the limit ratio must lie between 0 and 1, got ${String(limitRatio)}`);
  if (!Number.isFinite(minimum)) refuse("the minimum must be a finite ln");
};
