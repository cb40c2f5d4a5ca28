// The tables of handbook/decision.md 3 and the checked values of its 5: computed in the handbook, no published value.

import { expect, test } from "vitest";
import { breakEvenChance, flipRatio } from "../../../packages/core/src/decision/money/ratio.ts";
import { passedWithin } from "../../../packages/core/src/decision/wear/known.ts";
import { bivariateNormal } from "../../../packages/core/src/decision/worth/bivariate-normal.ts";
import { informationOf } from "../../../packages/core/src/decision/worth/information.ts";

// handbook/decision.md 3, first table: q = .05, three digits
test.each([
  ["open", 0, [0.683, 0.524, 0.365, 0.238, 0.153]],
  ["half way", 0.5, [0.841, 0.762, 0.683, 0.619, 0.577]],
  ["in place", 1, [1, 1, 1, 1, 1]],
] as const)("%s: the break-even chance by the price of getting in", (_, phi, printed) => {
  [0.5, 1, 2, 4, 8].forEach((alpha, k) =>
    expect(breakEvenChance(alpha, { phi, q: 0.05 })).toBeCloseTo(printed[k] ?? NaN, 3),
  );
});

// handbook/decision.md 3, second table
test.each([
  [0.05, 19, 399],
  [0.1, 9, 17.2],
  [0.2, 4, 5.25],
  [0.3, 2.33, 2.77],
  [0.5, 1, 1.11],
])("at a chance of %f, getting in again must cost this many times the work", (p, sure, usual) => {
  expect(flipRatio(p, { phi: 0, q: 0 })).toBeCloseTo(sure, sure === 2.33 ? 2 : 9);
  const found = flipRatio(p, { phi: 0, q: 0.05 }) ?? NaN;
  // 399 and 5.25 are exact: 1/(.05 x 1.05 - .05) - 1 and 1/(.2 x 1.05 - .05) - 1
  expect(Math.abs(found - usual)).toBeLessThanOrEqual(usual === 17.2 ? 0.05 : 0.005);
});

test("no ratio pays where spoiling a good engine is likelier than needing it, nor in place", () => {
  // .04 x 1.05 < .05
  expect(flipRatio(0.04, { phi: 0, q: 0.05 })).toBeUndefined();
  expect(flipRatio(0.9, { phi: 1, q: 0.05 })).toBeUndefined();
});

test("half way in, the ratio found is the one at which the chance breaks even", () => {
  const left = { phi: 0.5, q: 0.05 };
  const ratio = flipRatio(0.7, left) ?? NaN;
  expect(breakEvenChance(ratio, left)).toBeCloseTo(0.7, 12);
});

test("the bivariate normal chance is the handbook's", () => {
  expect(bivariateNormal(0.3, -0.7, 0.6)).toBeCloseTo(0.2171672255, 10);
});

test("for values that go together by half, both below their middle, it is a third", () => {
  // published: P(X < 0, Y < 0) = 1/4 + asin(rho)/(2 pi) (Sheppard 1899, from memory); rho = 1/2
  expect(bivariateNormal(0, 0, 0.5)).toBeCloseTo(1 / 3, 12);
});

// handbook/decision.md 5; there equal to quadrature to 1e-10, the chance of change to 3e-6
test.each([
  [0.1, 0.35, 0.4, 0.0080885098, 0.060045],
  [0.3, 0.35, 0.4, 0.0748158982, 0.36046],
  [0.5, 0.35, 0.7, 0.0901632957, 0.400424],
  [0.05, 0.6, 0.9, 0.0085860768, 0.034511],
])(
  "a test at chance %f, break-even %f and share %f is worth what quadrature says",
  (p, turn, share, evsi, change) => {
    const found = informationOf(p, turn, share);
    expect(found.evsi).toBeCloseTo(evsi, 10);
    expect(Math.abs(found.change - change)).toBeLessThan(3.5e-6);
  },
);

test("a test that tells all is worth what knowing is worth", () => {
  // p (1 - p*) = .1 x .65
  expect(informationOf(0.1, 0.35, 1)).toEqual({ change: 0.1, evsi: 0.065, evpi: 0.065 });
  expect(informationOf(0.1, 0.35, 0.999999).evsi).toBeCloseTo(0.065, 3);
});

test("nothing is left to find out where the answer is known or nothing breaks even", () => {
  const nothing = { change: 0, evsi: 0, evpi: 0 };
  expect(informationOf(0, 0.4, 0.5)).toEqual(nothing);
  expect(informationOf(0.3, 1.2, 0.5)).toEqual(nothing);
  expect(informationOf(0.3, -0.1, 0.5)).toEqual(nothing);
});

// handbook/statistics.md C.10: invented readings, psi; R there, SciPy the same. decision.md 9 prints .999136842,
// .518538510 and .00221421, which differ from the seventh decimal on: SciPy from the readings gives the digits below.
test("the reference history stays above three quarters and a bit with the chances of R", () => {
  const psi = [
    [172, 169, 171, 174],
    [168, 166, 166, 171],
    [176, 172, 171, 178],
    [165, 163, 157, 167],
    [174, 170, 160, 175],
    [167, 164, 150, 169],
    [161, 158, 141, 163],
    [172, 168, 147, 173],
  ];
  const y = psi.map(([first, second, third, fourth]) => {
    const middle = [first ?? 0, second ?? 0, fourth ?? 0].toSorted((a, b) => a - b)[1] ?? 0;
    return Math.log((third ?? 0) / middle);
  });
  const line = {
    label: "3",
    x: [0, 0.5, 1, 1.5, 2.5, 3, 4, 4.5],
    y,
    variance: 0.00013542281566458804,
    df: 24,
    limit: Math.log(0.8),
  };
  const stays = [1, 2, 3.5].map((years) => 1 - passedWithin(line, years));
  expect(stays[0]).toBeCloseTo(0.9991369058148675, 12);
  expect(stays[1]).toBeCloseTo(0.518538499289754, 12);
  expect(stays[2]).toBeCloseTo(0.0022140626667478606, 12);
  // as printed in decision.md
  expect(Math.abs((stays[0] ?? 0) - 0.999136842402711)).toBeLessThan(2e-7);
  expect(Math.abs((stays[1] ?? 0) - 0.518538510443937)).toBeLessThan(2e-7);
  expect(Math.abs((stays[2] ?? 0) - 0.00221421293290979)).toBeLessThan(2e-7);
});
