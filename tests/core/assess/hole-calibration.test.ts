// What known holes say of a leak-down tester. Numbers by the handbook are computed there.

import {
  absolutePressure,
  gaugePressure,
  holeCalibration,
  holeFromKnownHoles,
  toSi,
} from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { gaugeOf } from "./gauge-of.ts";
import { combineHoles } from "../../../packages/core/src/assess/gauges/combine-holes.ts";

const tester = { gauge: "cheapo", kind: "leak-down", unit: "psi" };
const seaLevel = absolutePressure(101_325);
const psi = (value: number) => gaugePressure(toSi(value, "psi"));

test("three open holes in gauges.csv give the equal hole of a reading between them", () => {
  // handbook, leak-down H.3 number 8 (computed): holes 0.80, 1.00, 1.25 mm (± 0.02) read 74, 66, 52 psi; a cylinder that
  // reads 61 psi (u 0.577 psi) leaks like a hole of 1.083 ± 0.013 mm
  const { knownHoles = [] } = gaugeOf({ ...tester, known_holes: "0.80mm:74psi 1.00mm:66psi 1.25mm:52psi" });
  const found = holeFromKnownHoles(knownHoles, psi(61), { uReading: psi(0.577) });
  if (found.kind !== "measured") throw new Error(found.kind);
  expect(found.hole * 1000).toBeCloseTo(1.083, 3);
  expect(found.uHole * 1000).toBeCloseTo(0.013, 3);
});

test("a hole on a tester whose supply is known tells the bore that its restrictor acts as", () => {
  // a hole that equals the restrictor reads 61.767 of 80 psi at sea level (computed: alpha 1)
  const found = holeCalibration(
    gaugeOf({ ...tester, regulated: "80", restrictor_mm: "1.016", known_holes: "1.016mm:61.767psi" }),
    seaLevel,
  );
  if (found?.kind !== "restrictor") throw new Error(found?.kind);
  expect(found.actsAs * 1000).toBeCloseTo(1.016, 3);
  expect(found.used).toEqual({
    share: expect.closeTo(1, 3) as number,
    cd: expect.closeTo(0.82, 3) as number,
    ofHoles: 0.82,
  });
  // u(d)/d = half u(alpha)/alpha with the hole's own 0.02/(d sqrt 3): by H.1, S 2.22 at 61.8/80, dials 1.19 psi each
  expect(found.uActsAs * 1000).toBeGreaterThan(0.02);
  expect(found.uActsAs * 1000).toBeLessThan(0.04);
});

test.each([
  ["1.0mm:55psi", "one-hole"],
  ["0.8mm:74psi 1.0mm:66psi", "span"],
])("without the supply %s is %s", (holes, kind) => {
  expect(holeCalibration(gaugeOf({ ...tester, known_holes: holes }), seaLevel)?.kind).toBe(kind);
});

test("holes that cannot all be right, which no file brings, are a mistake of the calling code", () => {
  const gauge = gaugeOf({ ...tester, regulated: "80", known_holes: "1.0mm:66psi" });
  const [hole] = gauge.knownHoles ?? [];
  if (hole === undefined) throw new Error("no hole");
  for (const reads of [0, psi(80), psi(90)])
    expect(() => holeCalibration({ ...gauge, knownHoles: [{ ...hole, reads }] }, seaLevel)).toThrow(
      RangeError,
    );
  expect(() => holeCalibration({ ...gauge, knownHoles: [hole, hole] }, seaLevel)).toThrow(RangeError);
  expect(holeCalibration(gaugeOf(tester), seaLevel)).toBeUndefined();
});

const restrictorBy = (holes: string, more: Readonly<Record<string, string>> = {}) => {
  const found = holeCalibration(
    gaugeOf({ ...tester, regulated: "80", ...more, known_holes: holes }),
    seaLevel,
  );
  if (found?.kind !== "restrictor") throw new Error(found?.kind);
  return found;
};
/** On one restrictor of 1.016 mm at 80 psi, by the handbook's flow (computed): what each hole reads. */
const alike = ["0.8mm:72.05psi", "1.016mm:61.767psi", "1.25mm:49.48psi"];

test("further holes never make a calibration less sure than its best hole, and the surer ones count more", () => {
  for (const more of [{}, { matched: "yes" }, { full_scale: "100", class_percent: "0.25", division: "1" }]) {
    const each = alike.map((hole) => restrictorBy(hole, more));
    const best = Math.min(...each.map(({ uActsAs, actsAs }) => uActsAs / actsAs));
    const all = restrictorBy(alike.join(" "), more);
    expect(all.holesAre).toBe("together");
    expect(all.uActsAs / all.actsAs).toBeLessThanOrEqual(best * (1 + 1e-12));
    expect(all.holes.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(all.actsAs * 1000).toBeCloseTo(1.016, 1);
  }
});

test("holes of doubts that are their own combine by 1/u2; a doubt that all share does not shrink", () => {
  // weights 1/0.01^2 and 1/0.02^2: 0.8 and 0.2; ln 0.8 x 0 + 0.2 x 0.01; u = 1/sqrt(12500) = 0.008944
  expect(
    combineHoles([
      { ln: 0, shared: 0, own: 0.01 },
      { ln: 0.01, shared: 0, own: 0.02 },
    ]),
  ).toEqual({
    ln: expect.closeTo(0.002, 12) as number,
    uncertainty: expect.closeTo(0.0089443, 7) as number,
    weights: [expect.closeTo(0.8, 12) as number, expect.closeTo(0.2, 12) as number],
    chance: "together",
  });
  // all shared: 0.1 x 0.03 + 0.9 x 0.01 = 0.012 is more than the surest has alone, which bounds it
  expect(
    combineHoles([
      { ln: 0, shared: 0.03, own: 0 },
      { ln: 0.01, shared: 0.01, own: 0 },
    ]),
  ).toMatchObject({ ln: expect.closeTo(0.009, 12) as number, uncertainty: 0.01 });
});

test("holes that lie further apart than their doubt are said to, and widen it", () => {
  // 0.1 apart with 0.01 each: chi2 = 2 x 0.05^2/0.01^2 = 50, above 6.63 (table, 1 %); 0.01/sqrt(2) x sqrt(50) = 0.05
  expect(
    combineHoles([
      { ln: 0, shared: 0, own: 0.01 },
      { ln: 0.1, shared: 0, own: 0.01 },
    ]),
  ).toMatchObject({
    chance: "apart",
    uncertainty: expect.closeTo(0.05, 12) as number,
  });
});
