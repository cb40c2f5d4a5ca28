// Worked examples 9 to 11 of the handbook (computed from its fits to the cycle model).

import {
  type CrankingLeak,
  area,
  boreUncertainty,
  dischargeOf,
  dischargeUncertainty,
  leakExplains,
  leakFigures,
  speed,
  volume,
} from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { read, usual } from "./readings.ts";

const leak = (cylinder: number) => {
  const { alpha, uAlpha, size } = leakFigures(read(cylinder), usual);
  return { area: area(size?.area ?? 0), uncertainty: uAlpha / alpha };
};
const uCommon = Math.hypot(boreUncertainty(usual), dischargeUncertainty(dischargeOf(usual, 0.8)));
const petrol: CrankingLeak = {
  compressionRatio: 9.5,
  displacement: volume(0.5e-3),
  speed: speed(250),
  speedFrom: "assumed",
  leak: leak(56),
  fellows: leak(72),
  uCommon,
  observed: 118 / 150,
  cylinders: 4,
};
const shown = (one: CrankingLeak) => {
  const { kind, expected, uExpected, z } = leakExplains(one);
  return [expected.toFixed(3), uExpected.toFixed(3), z.toFixed(1), kind];
};

// 9: R 0.907 ± 0.032, z −2.5
test("a leak of 56/80 among 72/80 does not explain 118 among 150 psi", () => {
  expect(uCommon).toBeCloseTo(0.0633, 4);
  expect(shown(petrol)).toEqual(["0.907", "0.032", "-2.5", "does-not-explain"]);
});

// 10: R 0.820 ± 0.054, z −0.3
test("a leak of 40/80 among 74/80 explains 122 among 152 psi", () => {
  expect(shown({ ...petrol, leak: leak(40), fellows: leak(74), observed: 122 / 152 })).toEqual([
    "0.820",
    "0.054",
    "-0.3",
    "explains",
  ]);
});

// 11: R 0.937 ± 0.033, z −1.4, half rule not met
test("a diesel's leak of 60/80 among 68/80 may be part of 0.87, cannot tell", () => {
  const diesel = {
    ...petrol,
    compressionRatio: 17.3,
    displacement: volume(0.98e-3),
    speed: speed(200),
    leak: leak(60),
    fellows: leak(68),
    observed: 0.87,
  };
  expect(shown(diesel)).toEqual(["0.937", "0.033", "-1.4", "perhaps-part"]);
});

// 2·0.03·√(4/3) = 0.069
test("a cylinder within what readings scatter has nothing to explain, one that should be lower is read again", () => {
  expect(leakExplains({ ...petrol, observed: 0.94 }).kind).toBe("nothing");
  expect(leakExplains({ ...petrol, leak: leak(20), observed: 0.92, speedFrom: "measured" }).kind).toBe(
    "worse",
  );
});

test("slow cranking magnifies a leak, and only area over displacement and speed matters", () => {
  const expected = (one: Partial<CrankingLeak>): number => leakExplains({ ...petrol, ...one }).expected;
  expect(expected({ speed: speed(150) })).toBeLessThan(expected({}));
  expect(expected({ speed: speed(500), displacement: volume(0.25e-3) })).toBeCloseTo(expected({}), 12);
});

test("one cylinder has no fellows, and a crank that stands no reading", () => {
  expect(() => leakExplains({ ...petrol, cylinders: 1 })).toThrow(RangeError);
  expect(() => leakExplains({ ...petrol, speed: speed(0) })).toThrow(RangeError);
});
