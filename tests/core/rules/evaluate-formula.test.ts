import { expect, test } from "vitest";
import { valueOf } from "./rule-readings.ts";

// Expected values: school arithmetic, written out beside each.
const sums: readonly (readonly [string, number])[] = [
  ["1 + 2 * 3", 7],
  ["(1 + 2) * 3", 9],
  ["2 ^ 3 - 8 / 4", 6],
  ["-2 ^ 2", -4],
  ["2 - 3 - 4", -5],
  ["abs(2 - 5)", 3],
  ["round(2.6)", 3],
  ["min(3, 1, 2)", 1],
  ["max(3, 1, 2)", 3],
  ["mean(3, 1, 2)", 2],
];

test.each(sums)("%s is %d", async (text, value) => {
  expect(await valueOf(text)).toBe(value);
});

// 150, 152, 149, 131: the engine of the first example of the manual. (152 - 131) / 152 = 21 / 152
test("a formula speaks of the cylinders by name", async () => {
  const variables = {
    min: 131,
    max: 152,
    mean: 145.5,
    median: 149.5,
    range: 21,
    ratio: 131 / 152,
    n: 4,
    p: 149,
  };
  expect(await valueOf("(max - min) / max", variables)).toBeCloseTo(21 / 152, 14);
  expect(await valueOf("range / median", variables)).toBeCloseTo(21 / 149.5, 14);
  expect(await valueOf("mean - p", variables)).toBe(-3.5);
  expect(await valueOf("ratio * n", variables)).toBeCloseTo((131 / 152) * 4, 14);
});

test("a formula with a comparison says yes or no", async () => {
  const variables = { ratio: 0.8, cv: 0.06, n: 4 };
  expect(await valueOf("ratio >= 0.75 and cv < 0.1", variables)).toBe(true);
  expect(await valueOf("ratio >= 0.85 or cv > 0.1", variables)).toBe(false);
  expect(await valueOf("not (n == 4)", variables)).toBe(false);
  expect(await valueOf("n != 4 or ratio <= 0.8", variables)).toBe(true);
});

test("equal readings are equal whatever the rounding of the machine", async () => {
  expect(await valueOf("0.1 + 0.2 == 0.3")).toBe(true);
  expect(await valueOf("0.1 + 0.2 > 0.3")).toBe(false);
  expect(await valueOf("0.1 + 0.2 <= 0.3")).toBe(true);
  expect(await valueOf("0.1 + 0.2 != 0.3")).toBe(false);
});

test.each([
  "1 / 0",
  "0 / 0",
  "p",
  "max - p",
  "min / 0 < 1",
  "-p",
  "min(p, 1)",
  "p > 1 and n > 1",
  "99999999 ^ 6 * 99999999 ^ 6 * 99999999 ^ 6 * 99999999 ^ 6 * 99999999 ^ 6 * 99999999 ^ 6 * 99999999 ^ 6",
])("%s without the value it needs, or beyond numbers, has no value", async (text) => {
  expect(await valueOf(text, { min: 1, max: 2 })).toBeUndefined();
});

test.each(["not 1", "-(1 < 2)", "(1 < 2) + 1", "1 and 2", "max(1 < 2)", "(1 < 2) < 3"])(
  "%s mixes yes and no with numbers and has no value",
  async (text) => {
    expect(await valueOf(text)).toBeUndefined();
  },
);
