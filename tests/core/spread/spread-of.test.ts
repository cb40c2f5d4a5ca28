import { expect, test } from "vitest";
import { repeatsDrift, spreadOf } from "../../../packages/core/src/spread/index.ts";

test("four readings: highest, lowest, median, range, ratio, scatter, and how far each lies below the median", () => {
  // invented readings; cv computed with R 4.2.2
  const spread = spreadOf([150, 148, 152, 120]);
  expect(spread).toMatchObject({ highest: 152, lowest: 120, median: 149, range: 32, noCompression: 0 });
  expect(spread?.ratio).toBeCloseTo(0.789473684210526, 14);
  expect(spread?.cv).toBeCloseTo(0.105885102201228, 14);
  // 1 - 120/149
  expect(spread?.belowMedian[3]).toBeCloseTo(29 / 149, 14);
  expect(spread?.belowMedian[2]).toBeCloseTo(-3 / 149, 14);
});

test("a cylinder without compression is counted and lies 100 % below the median of the others", () => {
  const spread = spreadOf([150, 0, undefined, 148]);
  expect(spread).toMatchObject({ lowest: 148, median: 149, noCompression: 1 });
  expect(spread?.belowMedian.slice(1, 3)).toEqual([1, undefined]);
});

test("one reading has no scatter; no reading, no spread", () => {
  expect(spreadOf([150])).toEqual({
    highest: 150,
    lowest: 150,
    median: 150,
    range: 0,
    ratio: 1,
    belowMedian: [0],
    noCompression: 0,
  });
  expect(spreadOf([undefined, 0])).toBeUndefined();
  expect(() => spreadOf([NaN, 150])).toThrow(RangeError);
});

test("repeats that all move one way are no independent repeats", () => {
  const up = [
    [150, 152],
    [148, 149],
    [151, 152],
    [120, 124],
  ];
  expect(repeatsDrift(up)).toBe("rising");
  expect(repeatsDrift(up.map((cell) => cell.toReversed()))).toBe("falling");
  expect(repeatsDrift([...up, [150, 150]])).toBe("none");
  expect(repeatsDrift([...up, [150]])).toBe("rising");
  // three may agree by chance, once in four
  expect(repeatsDrift(up.slice(1))).toBe("none");
});
