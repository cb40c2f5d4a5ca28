// Published: the example of R's help page medpolish(), table `deaths` ("ABC of EDA", p. 224 as that page says; the page
// number is second hand). R centres rows and columns on an overall value; ours is left as it falls, so sums compare.

import { expect, test } from "vitest";
import { medianPolish } from "../../../packages/core/src/history/median-polish.ts";

const deaths = [
  [14, 15, 14],
  [7, 4, 7],
  [8, 2, 10],
  [15, 9, 10],
  [0, 2, 0],
];
const overall = 8;
const rows = [6, -1, 0, 2, -8];
const columns = [0, -1, 0];
const residuals = [
  [0, 2, 0],
  [0, -2, 0],
  [0, -5, 2],
  [5, 0, 0],
  [0, 3, 0],
];

test("median polish gives the residuals of R's example", () => {
  const { effects, levels } = medianPolish({ rows: 5, columns: 3, ln: Float64Array.from(deaths.flat()) });
  deaths.forEach((row, t) =>
    row.forEach((value, i) => {
      const fit = (effects[t] ?? NaN) + (levels[i] ?? NaN);
      expect(fit).toBeCloseTo(overall + (rows[t] ?? NaN) + (columns[i] ?? NaN), 12);
      expect(value - fit).toBeCloseTo(residuals[t]?.[i] ?? NaN, 12);
    }),
  );
});
