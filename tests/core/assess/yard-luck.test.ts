// How often a sound engine shows a suspect cylinder: drawn anew by the same design as the table was (noise from test to test,
// readings, and 3 in 100 bad ones; all of it assumed, no published study).

import { forwardTest, yardRow } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { recordOf } from "../../cli/yard/record-of.ts";
import { evenly } from "../../random.mjs";

const runs = 6_000;

/** Even numbers in 0 ... 1, and normal ones by Box and Muller. */
const chance = (start: number) => {
  const even = evenly(start);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
  return { even, normal };
};

const flaggedShare = (cylinders: number): number => {
  const { even, normal } = chance(40 + cylinders);
  let flagged = 0;
  for (let run = 0; run < runs; run += 1) {
    const readings = Array.from({ length: cylinders }, () => {
      const bad = even() < 0.03 ? Math.abs(0.06 * normal()) : 0;
      const ln = Math.log(165) + 0.025 * normal() + 0.01 * normal() + 0.015 * normal() - bad;
      return { kind: "read", ln: Math.log(Math.round(Math.exp(ln))), repeats: 1 } as const;
    });
    const found = forwardTest(readings, { prior: "cranking" }).cylinders;
    if (found.some((one) => one.kind === "read" && one.flagged)) flagged += 1;
  }
  return flagged / runs;
};

test.each([2, 4, 6, 8])(
  "of %i cylinders the chance that one is suspect by luck is what is drawn",
  (cylinders) => {
    const said = yardRow(recordOf(cylinders), { today: "2026-11-25", decide: "never" }).byLuck;
    const error = Math.sqrt((said * (1 - said)) / runs);
    expect(Math.abs(flaggedShare(cylinders) - said)).toBeLessThan(3.5 * error);
  },
);

test("one cylinder is compared with nothing, five lie between four and six", () => {
  const byLuck = (cylinders: number): number =>
    yardRow(recordOf(cylinders), { today: "2026-11-25", decide: "never" }).byLuck;
  expect(byLuck(1)).toBe(0);
  expect(byLuck(7)).toBeCloseTo((byLuck(6) + byLuck(8)) / 2, 12);
  expect(byLuck(3)).toBeGreaterThan(byLuck(2));
});
