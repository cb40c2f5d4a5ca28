// Readings that a slip of the hand made. The bounds are this project's own: a factor of 7 to 15 either way, and for swapped
// digits 1.4 times the highest of the others; what was meant is worked out by hand.

import { readingSlip } from "@sealtrend/core/parts";
import { expect, test } from "vitest";

test.each([
  ["1310", [131, 133], undefined, "tenfold", "131"],
  ["98", [9.7, 9.9], undefined, "tenfold", "9.8"],
  ["1317", [131, 133], undefined, "tenfold", "131.7"],
  ["13.1", [131, 133], undefined, "tenth", "131"],
  ["1,31", [13.1, 13.3], undefined, "tenth", "13.1"],
  ["13", [131, 133], undefined, "tenth", undefined],
  ["1310", [], 131, "tenfold", "131"],
])("%s among %j, last %j: %s, %s was meant", (text, fellows, last, kind, meant) => {
  expect(readingSlip(text, fellows, last)).toEqual({ kind, ...(meant === undefined ? {} : { meant }) });
});

test.each([
  ["311", [131, 129, 133], "131"],
  ["301", [131, 129, 133], "130"],
  ["901", [131, 109, 111], "109"],
  ["31.1", [13.1, 12.9], "13.1"],
  ["31,1", [13.1, 12.9], "13.1"],
])("%s among %j is %s with its digits swapped", (text, fellows, meant) => {
  expect(readingSlip(text, fellows, undefined)).toEqual({ kind: "swapped", meant });
});

test.each([
  ["131", [131, 133], undefined],
  ["0", [131, 133], 131],
  ["5", [131, 133], 131],
  ["60", [131, 133], undefined],
  // low, and 131 with its digits swapped: it may be true
  ["113", [131, 133], undefined],
  ["131", [0, 0], undefined],
  ["131", [1310], 130],
  ["131", [], undefined],
  // high, and no order of its digits fits
  ["255", [131, 133], undefined],
  // one fellow alone does not tell which of the two is wrong
  ["311", [131], undefined],
  ["311", [131, 133], 305],
  [">300", [131, 133], undefined],
])("%s among %j, last %j, is not questioned", (text, fellows, last) => {
  expect(readingSlip(text, fellows, last)).toBeUndefined();
});
