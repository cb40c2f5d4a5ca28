import { expect, test } from "vitest";
import {
  differenceShown,
  ratioUncertainty,
  readingUncertainty,
  type Instrument,
} from "../../../packages/core/src/spread/index.ts";

// Pressures here in psi: only ratios of pressures enter, so any unit serves.
const gauge: Instrument = {
  repeatability: 0.015,
  division: 2.5,
  accuracy: { classPercent: 2.5, fullScale: 300 },
};
const at = (pressure: number): { readonly pressure: number; readonly repeats: number } => ({
  pressure,
  repeats: 2,
});

test("150 on a 300 gauge of class 2.5, read twice and corrected: 3.25 %, mostly the gauge", () => {
  // worked by hand: class 7.5/(sqrt3 150) = 2.887 %, reading 1.5 % / sqrt2 = 1.061 % and 2.5/(sqrt12 150)/sqrt2
  const u = readingUncertainty(at(150), gauge, 0.01);
  expect(u.gauge).toBeCloseTo(0.02887, 5);
  expect(u.relative).toBeCloseTo(0.03252, 5);
  expect(u.absolute).toBeCloseTo(4.88, 2);
  expect(u.reading).toBeCloseTo(Math.hypot(0.015, 2.5 / Math.sqrt(12) / 150) / Math.SQRT2, 15);
});

test("the ratio of two cylinders on the same gauge is known three times better than either", () => {
  // computed with R 4.2.2
  const ratio = ratioUncertainty({ lower: at(138), higher: at(150) }, gauge, "same-gauge");
  expect(ratio.ratio).toBe(0.92);
  expect(ratio.relative).toBeCloseTo(0.0158192461016312, 14);
  expect(ratio.z).toBeCloseTo(5.27089650185374, 11);
  expect(ratio.low).toBeCloseTo(0.891912931528114, 12);
  expect(ratio.high).toBeCloseTo(0.948971553254491, 12);
});

test("two gauges: the class of both counts", () => {
  const same = ratioUncertainty({ lower: at(138), higher: at(150) }, gauge, "same-gauge");
  const two = ratioUncertainty({ lower: at(138), higher: at(150) }, gauge, "two-gauges");
  const classes = (7.5 ** 2 / 3) * (1 / 138 ** 2 + 1 / 150 ** 2);
  expect(two.relative).toBeCloseTo(Math.sqrt(same.relative ** 2 + classes), 14);
});

test("a gauge of which nothing is known adds nothing", () => {
  expect(readingUncertainty({ pressure: 150, repeats: 1 }, { repeatability: 0.015 }, 0).relative).toBeCloseTo(
    0.015,
    15,
  );
});

test.each([
  [1.65, "lower"],
  [1.64, "probably-lower"],
  [0.85, "probably-lower"],
  [0.84, "no-difference-shown"],
  [-3, "no-difference-shown"],
] as const)("a pair named beforehand, %d standard uncertainties apart: %s", (z, difference) => {
  // normal points: Phi(1.645) = .95, Phi(.8416) = .80
  expect(differenceShown(z, "named").difference).toBe(difference);
});

test("lowest against highest needs more: four cylinders 3.633 / sqrt2 apart", () => {
  // 3.633160: 95 % point of the range of four, computed with R 4.2.2 (qtukey)
  const needed = 3.63316 / Math.SQRT2;
  expect(differenceShown(needed, { extremesOf: 4 }).probability).toBeCloseTo(0.95, 6);
  expect(differenceShown(needed + 0.01, { extremesOf: 4 }).difference).toBe("lower");
  expect(differenceShown(needed - 0.01, { extremesOf: 4 }).difference).toBe("probably-lower");
});

test.each([
  [1, 4, 0.054],
  [2, 4, 0.039],
  [3, 4, 0.031],
  [1, 6, 0.06],
  [2, 6, 0.043],
  [3, 6, 0.035],
  [1, 8, 0.064],
  [2, 8, 0.045],
  [3, 8, 0.037],
])(
  "%d readings of each of %d cylinders: a difference of %d between lowest and highest is real",
  (m, n, least) => {
    // q s/sqrt m with the 95 % point q of the range, s = 1.5 %, in tenths of a per cent
    const { relative } = ratioUncertainty(
      { lower: { pressure: 1, repeats: m }, higher: { pressure: 1, repeats: m } },
      { repeatability: 0.015 },
      "same-gauge",
    );
    expect(differenceShown((least + 0.0006) / relative, { extremesOf: n }).difference).toBe("lower");
    expect(differenceShown((least - 0.0006) / relative, { extremesOf: n }).difference).not.toBe("lower");
  },
);

test("no pressure, no repeats, no uncertainty: refused", () => {
  expect(() => readingUncertainty({ pressure: 0, repeats: 1 }, gauge, 0)).toThrow(RangeError);
  expect(() => readingUncertainty({ pressure: 150, repeats: 0 }, gauge, 0)).toThrow(RangeError);
  expect(() => ratioUncertainty({ lower: at(1), higher: at(2) }, { repeatability: 0 }, "same-gauge")).toThrow(
    RangeError,
  );
});
