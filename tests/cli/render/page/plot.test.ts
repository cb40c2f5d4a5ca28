// Where the marks of a drawing stand.

import { expect, test } from "vitest";
import {
  axisOf,
  cornersPath,
  linePath,
  markPath,
  mostMarks,
  px,
} from "../../../../packages/cli/src/render/page/plot.ts";

test("a value stands in proportion between the ends", () => {
  // 2015 lies halfway between 2010 and 2020, so halfway between 0 and 400
  expect(axisOf([2010, 2020], [0, 400]).place(2015)).toBe(200);
});

test("round ends hold the values and carry round ticks", () => {
  const axis = axisOf([97, 143], [0, 100], "round");
  expect(axis.low).toBeLessThanOrEqual(97);
  expect(axis.high).toBeGreaterThanOrEqual(143);
  for (const tick of axis.ticks(4)) expect(tick % 10).toBe(0);
});

test("a gap is a gap: the line lifts and is set down again", () => {
  const path = linePath([{ x: 0, y: 1 }, { x: 1, y: 2 }, { x: 2 }, { x: 3, y: 4 }, { x: 4, y: 5 }]);
  expect(path.match(/M/g)).toHaveLength(2);
  expect(path).toBe("M0,1L1,2M3,4L4,5");
});

test("the corners of a path are the readings, and a single one is a corner too", () => {
  expect(cornersPath([{ x: 0 }, { x: 1, y: 2 }, { x: 3, y: 4 }])).toBe("M1,2L3,4");
  expect(cornersPath([{ x: 1, y: 2 }])).toBe("M1,2h0");
  expect(cornersPath([])).toBe("");
});

test("places are written to one decimal, without a tail", () => {
  expect([px(1.25), px(3), px(0.04), px(-0.02)]).toEqual(["1.3", "3", "0", "0"]);
});

test("each gauge has a mark of its own shape; beyond them the last is shared", () => {
  const paths = Array.from({ length: mostMarks }, (_, i) => markPath(i));
  expect(new Set(paths).size).toBe(mostMarks);
  expect(markPath(mostMarks + 3)).toBe(paths.at(-1));
});
