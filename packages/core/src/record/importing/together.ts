// A cell with the readings of several cylinders.

import { dateWays } from "./cell-date.ts";

const together = /^\d{1,4}(?:[.,]\d{1,3})?(?:(?:\s*[/;|]\s*|,\s+|\s+-\s+|-|\s+)\d{1,4}(?:[.,]\d{1,3})?){2,}$/;

/** Whether a cell looks like the readings of several cylinders, as 120/121/119/122; a day is none, nor is a firing order. */
export const looksTogether = (text: string): boolean =>
  text.length <= 200 && together.test(text) && dateWays(text).size === 0 && !isFiringOrder(text);

const isFiringOrder = (text: string): boolean => {
  const numbers = text.split(/\D+/).map(Number);
  return numbers.toSorted((a, b) => a - b).every((number, i) => number === i + 1);
};
