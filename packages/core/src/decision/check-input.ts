// The guard at the door: input that no caller should make is thrown back.

import type { DecisionInput, Ownership, Prices, Wear, WearLine } from "./input.ts";

/** @throws RangeError on a number that is not finite or outside its range, on shares above 1, on a line without points */
export const checkInput = (input: DecisionInput): void => {
  const { chances = {}, shares, test, prices } = input;
  checkAll("chance", [...Object.values(chances.redo ?? {}), chances.spoil, chances.caught], [0, 1]);
  if (typeof shares !== "string") {
    checkAll("share", Object.values(shares), [0, 1]);
    check("sum of shares", shares.top + shares.rings + shares.bottom, [0, 1 + 1e-9]);
  }
  if (prices !== undefined) checkPrices(prices);
  checkWear(input.wear);
  checkOwnership(input.ownership);
  checkAll(
    "interest, access ratio, tests a year",
    [input.interest, input.accessRatio, input.testsPerYear],
    [0, 1e6],
  );
  checkAll("interval, hours a year", [input.interval, input.hoursPerYear], [1e-6, 1e6]);
  checkAll("cost of the test", [test?.cost], [0, Number.MAX_VALUE]);
  if (test?.tells.kind === "share") check("share told", test.tells.share, [0, 1]);
  if (test?.tells.kind === "readings") {
    check("repeats", test.tells.repeats, [1, 1e6]);
    check("time of the test", test.tells.after, [0, 1e3]);
  }
};

type Range = readonly [low: number, high: number];

const check = (name: string, value: number, [low, high]: Range): void => {
  if (!(value >= low && value <= high))
    throw new RangeError(
      `decide: ${name} must lie within ${String(low)} ... ${String(high)}, got ${String(value)}`,
    );
};

const checkAll = (name: string, values: readonly (number | undefined)[], range: Range): void => {
  for (const value of values) if (value !== undefined) check(name, value, range);
};

const checkPrices = (prices: Prices): void => {
  const { jobs, work, daysNow = {}, daysLater = {}, resale = {} } = prices;
  const { day, test, runningPerYear, replacement } = prices;
  const all = [jobs, work, daysNow, daysLater, resale].flatMap((part): readonly number[] =>
    Object.values(part),
  );
  checkAll("price", [...all, day, test, runningPerYear, replacement], [0, Number.MAX_VALUE]);
};

const checkWear = (wear: Wear): void => {
  if (wear.kind === "typed") check("chance", wear.probability, [0, 1]);
  if (wear.kind === "lines") wear.lines.forEach(checkLine);
};

const checkLine = ({ label, x, y, variance, df, limit, believed, now }: WearLine): void => {
  if (x.length === 0 || x.length !== y.length)
    throw new RangeError(
      `decide: line ${label} has ${String(x.length)} values of x and ${String(y.length)} of y; equal and one or more`,
    );
  checkAll(`line ${label}`, [...x, ...y, limit, now], [-1e6, 1e6]);
  checkAll(
    `variance, degrees of freedom or believed slope of line ${label}`,
    [variance, df, believed],
    [1e-12, Infinity],
  );
};

const checkOwnership = (ownership: Ownership): void => {
  checkAll("years of ownership", [ownership.years], [1e-3, 1e3]);
  if (ownership.kind === "for-good") {
    checkAll("age or years left", [ownership.age, ownership.left], [0, 1e3]);
    checkAll("life factor", [ownership.lifeFactor], [1e-3, 1e3]);
  }
};
