// Readings a decimal place away. The bounds are this project's own: a factor of 7 to 15 either way.

import { slipOf, slippedTo } from "@sealtrend/core";
import { expect, test } from "vitest";

test.each([
  [1310, [131, 133], undefined, "tenfold"],
  [13, [131, 133], undefined, "tenth"],
  [1310, [], 131, "tenfold"],
  [131, [131, 133], undefined, undefined],
  [60, [131, 133], undefined, undefined],
  [0, [131, 133], 131, undefined],
  [131, [0, 0], undefined, undefined],
  [131, [1310], 130, undefined],
  [131, [], undefined, undefined],
])("%j among %j, last %j: %j", (value, fellows, last, slip) => {
  expect(slipOf(value, fellows, last)).toBe(slip);
});

test.each([
  ["1310", "tenfold", "131"],
  ["98", "tenfold", "9.8"],
  ["1317", "tenfold", "131.7"],
  ["13.1", "tenth", "131"],
  ["1,31", "tenth", "13.1"],
  ["13", "tenth", undefined],
] as const)("%s, %s, was meant as %j", (text, slip, meant) => {
  expect(slippedTo(text, slip)).toBe(meant);
});
