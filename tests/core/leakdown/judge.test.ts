// Worked examples 1 to 4 and 7 of the handbook (computed by a second program from the equations), and the cases of a
// single reading. Dials ±2 psi divided in 1 psi, bore ±0.001 in, Cd 0.82 ±0.08.

import {
  type LeakReading,
  type Restrictor,
  dialUncertainty,
  gaugePressure,
  judgeLeak,
  leakFigures,
  length,
  partClosed,
  pressureAtAltitude,
  temperature,
  toSi,
  warmthOf,
} from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { bored, inMm, mm, psi, read, usual } from "./readings.ts";

const measured = (reading: LeakReading, restrictor: Restrictor = usual) => {
  const judged = judgeLeak(reading, restrictor);
  if (judged.kind !== "measured") throw new Error(`judged ${judged.kind}`);
  return judged.figures;
};
const offsetRemoved = dialUncertainty({ matched: true });

describe("a dial", () => {
  // √(2²/3 + 1²/12) and, with the offset removed, √(0.5²/3 + 1²/12)
  test("of ±2 psi divided in 1 psi is good to 1.190 psi, to 0.408 where both dials agree with the valve shut", () => {
    expect(dialUncertainty({}) / psi(1)).toBeCloseTo(1.19, 3);
    expect(offsetRemoved / psi(1)).toBeCloseTo(0.408, 3);
  });
});

describe("a reading", () => {
  test("of 60/80 on 1.016 mm: 25.0 ± 1.86 %, alpha 1.0586 ± 0.0499, hole 1.045 ± 0.029 mm, 0.704 ± 0.056 mm2", () => {
    const { lost, uLost, alpha, uAlpha, size, chokedLeak, chokedRestrictor } = measured(read(60));
    expect([100 * lost, 100 * uLost].map((x) => x.toFixed(2))).toEqual(["25.00", "1.86"]);
    expect([alpha, uAlpha].map((x) => x.toFixed(4))).toEqual(["1.0586", "0.0499"]);
    expect([size?.equalHole ?? 0, size?.uEqualHole ?? 0].map((x) => inMm(x).toFixed(3))).toEqual([
      "1.045",
      "0.029",
    ]);
    expect([size?.area ?? 0, size?.uArea ?? 0].map((x) => (1e6 * x).toFixed(3))).toEqual(["0.704", "0.056"]);
    expect([size?.cd, size?.cdHalfWidth, chokedLeak, chokedRestrictor]).toEqual([0.82, 0.08, true, false]);
  });

  test("of 72/80 with the offset removed: 10.0 ± 0.69 %, alpha 0.6253 ± 0.0235, hole 0.803 ± 0.019, 0.416 ± 0.031", () => {
    const { uLost, alpha, uAlpha, size } = measured(read(72, 80, offsetRemoved));
    expect((100 * uLost).toFixed(2)).toBe("0.69");
    expect([alpha, uAlpha].map((x) => x.toFixed(4))).toEqual(["0.6253", "0.0235"]);
    expect([size?.equalHole ?? 0, size?.uEqualHole ?? 0].map((x) => inMm(x).toFixed(3))).toEqual([
      "0.803",
      "0.019",
    ]);
    expect([size?.area ?? 0, size?.uArea ?? 0].map((x) => (1e6 * x).toFixed(3))).toEqual(["0.416", "0.031"]);
  });

  test("with the offset left in is less sure: ± 2.00 %, alpha ± 0.0684, hole ± 0.045 mm", () => {
    const { uLost, uAlpha, size } = measured(read(72));
    expect([(100 * uLost).toFixed(2), uAlpha.toFixed(4), inMm(size?.uEqualHole ?? 0).toFixed(3)]).toEqual([
      "2.00",
      "0.0684",
      "0.045",
    ]);
  });

  // section E: u(L) at 72/80 with gauges ±2 psi and no graduation is 1.94 points
  test("of 72/80 by gauges of ±2 psi alone is good to 1.94 points", () => {
    const alone = dialUncertainty({ division: gaugePressure(0) });
    expect(100 * measured(read(72, 80, alone)).uLost).toBeCloseTo(1.94, 2);
  });

  test("in kPa at 1500 m in a warm cylinder: 20.0 ± 1.65 %, alpha 1.0303 ± 0.0540, 1.015 ± 0.029 mm, 0.664 ± 0.053", () => {
    const kPa = (value: number) => gaugePressure(1e3 * value);
    const u = dialUncertainty({ limit: kPa(0.016 * 700), division: kPa(10) });
    const cool = {
      supply: kPa(550),
      cylinder: kPa(440),
      ambient: pressureAtAltitude(length(1500)),
      uSupply: u,
      uCylinder: u,
    };
    const warmth = warmthOf(temperature(toSi(80, "C")), temperature(toSi(20, "C")), 20);
    const restrictor = { bore: mm(1), tolerance: mm(0.02) };
    const { uLost, alpha, uAlpha, size } = measured({ ...cool, warmth }, restrictor);
    expect((100 * uLost).toFixed(2)).toBe("1.65");
    expect([alpha, uAlpha].map((x) => x.toFixed(4))).toEqual(["1.0303", "0.0540"]);
    expect([size?.equalHole ?? 0, size?.uEqualHole ?? 0].map((x) => inMm(x).toFixed(3))).toEqual([
      "1.015",
      "0.029",
    ]);
    expect([size?.area ?? 0, size?.uArea ?? 0].map((x) => (1e6 * x).toFixed(3))).toEqual(["0.664", "0.053"]);
    expect(measured(cool, restrictor).alpha).toBeCloseTo(0.9387, 4);
  });

  test("on a restrictor of unknown bore has an alpha, but no hole, no area and no flow", () => {
    const figures = measured(read(60), {});
    expect(figures.alpha).toBeCloseTo(1.0586, 4);
    expect(figures).not.toHaveProperty("size");
  });
});

describe("what the dials cannot carry", () => {
  test("78/80 is tighter than dials of ±2 psi can show: the hole is at most 0.722 mm (drop and twice its doubt)", () => {
    const judged = judgeLeak(read(78), usual);
    expect(judged.kind).toBe("tight");
    if (judged.kind !== "tight") return;
    expect([judged.drop / psi(1), judged.uDrop / psi(1)].map((x) => x.toFixed(2))).toEqual(["2.00", "1.68"]);
    expect(inMm(judged.limit.equalHole ?? 0).toFixed(3)).toBe("0.722");
  });

  // 2·√2·1.190 = 3.366 psi
  test.each([
    [76.5, "measured"],
    [76.7, "tight"],
    [80, "tight"],
    [83.3, "tight"],
    [83.4, "disagree"],
    [90, "disagree"],
    [0, "no-seal"],
    [-0.5, "no-seal"],
    [2, "no-seal"],
    [3, "measured"],
  ] as const)("%s psi of 80 is judged %s", (cylinder, kind) => {
    expect(judgeLeak(read(cylinder), usual).kind).toBe(kind);
  });

  test("a limit on a tester of unknown bore is one on alpha alone", () => {
    const judged = judgeLeak(read(80), {});
    expect(judged.kind === "tight" ? Object.keys(judged.limit) : []).toEqual(["alpha"]);
  });

  test("no reading without a supply", () => {
    expect(() => judgeLeak(read(0, 0), usual)).toThrow(RangeError);
  });
});

describe("next to no drop", () => {
  // handbook H.2 (f): only an upper limit; 0.639 mm is what the limit of 80/80 comes to, 3.366 psi below the supply
  test.each([80, 79.999999, 79.9])(
    "%s/80 has a doubt of the size of its limit, not of its slope",
    (cylinder) => {
      const { uAlpha, size } = leakFigures(read(cylinder), usual);
      const judged = judgeLeak(read(cylinder), usual);
      const most = judged.kind === "tight" ? judged.limit : { alpha: 0, equalHole: 0 };
      expect(uAlpha).toBeGreaterThan(0.2 * most.alpha);
      expect(uAlpha).toBeLessThan(most.alpha);
      expect(size?.uEqualHole).toBeLessThan(most.equalHole ?? 0);
      expect(inMm(most.equalHole ?? 0)).toBeCloseTo(0.64, 1);
    },
  );
});

describe("years apart on two testers", () => {
  // handbook example 7: 70/80 on 1.016 mm, later 77/80 on 1.524 mm
  test("0.854 ± 0.040 mm against 0.931 ± 0.133 mm is no change: ln ratio 0.086 ± 0.150, ± 0.235 from day to day", () => {
    const size = (cylinder: number, bore: number, day = 0) => {
      const reading = read(cylinder);
      const uCylinder = Math.hypot(reading.uCylinder ?? 0, psi(day));
      const found = leakFigures({ ...reading, uCylinder }, bored(bore)).size;
      return { hole: inMm(found?.equalHole ?? 0), u: inMm(found?.uEqualHole ?? 0) };
    };
    const early = size(70, 1.016);
    const late = size(77, 1.524);
    expect([early.hole, early.u, late.hole, late.u].map((x) => x.toFixed(3))).toEqual([
      "0.854",
      "0.040",
      "0.931",
      "0.133",
    ]);
    const ratio = (a: typeof early, b: typeof late): string =>
      `${Math.log(b.hole / a.hole).toFixed(3)} ± ${Math.hypot(a.u / a.hole, b.u / b.hole).toFixed(3)}`;
    expect(ratio(early, late)).toBe("0.086 ± 0.150");
    expect(ratio(size(70, 1.016, 2), size(77, 1.524, 2))).toBe("0.086 ± 0.235");
  });
});

describe("dry and oiled", () => {
  // handbook C.6: 64/80 dry (0.9245), 74/80 wet (0.5359)
  test("64/80 dry and 74/80 oiled: the rings' part is alpha 0.389, the rest 0.536", () => {
    const dry = leakFigures(read(64), usual);
    const wet = leakFigures(read(74), usual);
    expect(partClosed(dry, wet).alpha).toBeCloseTo(0.389, 3);
    expect(wet.alpha).toBeCloseTo(0.536, 3);
    expect(partClosed(dry, wet).uAlpha).toBeCloseTo(Math.hypot(dry.uAlpha, wet.uAlpha), 12);
  });
});

describe("the restrictor", () => {
  test("a thin plate has the coefficient of the reading, and shifts it by the reading's doubt", () => {
    const plate: Restrictor = { bore: mm(1), profile: "thin-plate" };
    const one = leakFigures(read(60), plate).size;
    const other = leakFigures(read(60), {
      bore: mm(1),
      cd: one?.cd ?? 0,
      cdHalfWidth: one?.cdHalfWidth ?? 0,
    }).size;
    expect(one?.cd).toBeCloseTo(0.64, 2); // r = 0.789: between 0.636 at 0.8 and 0.668 at 0.7
    expect(one?.area).toBe(other?.area);
    expect(one?.uArea).toBeGreaterThan(other?.uArea ?? 0);
  });

  test("a hole in a sheet thinner than it is wide may be a thin plate: its coefficient is open by 0.15", () => {
    const cd = (given: Restrictor) => leakFigures(read(60), { bore: mm(1), ...given }).size?.cdHalfWidth;
    expect([cd({}), cd({ length: mm(3) }), cd({ length: mm(0.5) })]).toEqual([0.08, 0.08, 0.15]);
    expect([cd({ profile: "square" }), cd({ profile: "coned" }), cd({ cd: 0.79 })]).toEqual([
      0.05, 0.06, 0.02,
    ]);
  });

  test("a bore of nothing is a mistake of the caller", () => {
    expect(() => leakFigures(read(60), { bore: mm(0) })).toThrow(RangeError);
  });
});
