// A master of the day, known holes, a supply nobody wrote down, two testers on one day: the cases of H.2 in the
// handbook (computed).

import {
  alphaOverSupplies,
  holeFromKnownHoles,
  inParallel,
  marginOverSupplies,
  masterMargin,
  seaLevelPressure,
  temperature,
  testerFactor,
  warmthOf,
} from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { inMm, mm, psi, read, uDial } from "./readings.ts";

describe("a master orifice of the day", () => {
  const master = { reads: psi(44), uReads: uDial };

  test("63/80 against a master of 44/80 uses 0.605 ± 0.032 of what it allows", () => {
    const { margin, uMargin } = masterMargin(read(63), master);
    expect([margin.toFixed(3), uMargin.toFixed(3)]).toEqual(["0.605", "0.032"]);
  });

  test("a cylinder of 80 °C uses 0.665 ± 0.035: the master breathes supply air", () => {
    const warmth = warmthOf(temperature(353.15), temperature(293.15));
    const { margin, uMargin } = masterMargin({ ...read(63), warmth }, master);
    expect([margin.toFixed(3), uMargin.toFixed(3)]).toEqual(["0.665", "0.035"]);
  });

  test("a master of 1.3 mm makes the cylinder a hole of 1.3·√0.605 = 1.011 mm, whatever the restrictor is", () => {
    expect(inMm(masterMargin(read(63), { ...master, bore: mm(1.3) }).hole ?? 0)).toBeCloseTo(
      1.3 * Math.sqrt(0.60548),
      4,
    );
    expect(masterMargin(read(63), master)).not.toHaveProperty("hole");
  });

  test("a cylinder worse than the master uses more than 1", () => {
    expect(masterMargin(read(40), master).margin).toBeGreaterThan(1);
  });

  test("a master that loses nothing, or everything, is no measure", () => {
    expect(() => masterMargin(read(63), { reads: psi(80) })).toThrow(RangeError);
    expect(() => masterMargin(read(63), { reads: psi(0) })).toThrow(RangeError);
  });
});

describe("a tester known by open holes", () => {
  const holes = [
    { hole: mm(0.8), reads: 74 },
    { hole: mm(1), reads: 66 },
    { hole: mm(1.25), reads: 52 },
  ];

  test("holes of 0.80, 1.00, 1.25 mm read 74, 66, 52: a cylinder of 61 is a hole of 1.083 ± 0.013 mm", () => {
    const found = holeFromKnownHoles(holes, 61, { uReading: 0.577 });
    expect(found.kind).toBe("measured");
    if (found.kind !== "measured") return;
    expect([inMm(found.hole).toFixed(3), inMm(found.uHole).toFixed(3)]).toEqual(["1.083", "0.013"]);
  });

  test("a hole that was read is that hole, in any order of the list", () => {
    const found = [74, 66, 52].map((reads) => holeFromKnownHoles([...holes].reverse(), reads));
    expect(found.map((one) => (one.kind === "measured" ? inMm(one.hole).toFixed(6) : one.kind))).toEqual([
      "0.800000",
      "1.000000",
      "1.250000",
    ]);
  });

  test.each([74.1, 51.9])("%s lies outside what was calibrated and is refused", (reads) => {
    expect(holeFromKnownHoles(holes, reads)).toEqual({ kind: "outside", from: 52, to: 74 });
  });

  test("the part lost serves as well, rising with the hole", () => {
    const lost = holes.map(({ hole, reads }) => ({ hole, reads: 1 - reads / 80 }));
    const found = holeFromKnownHoles(lost, 1 - 61 / 80);
    expect(found.kind === "measured" ? inMm(found.hole) : 0).toBeCloseTo(1.083, 3);
  });

  test("one hole is too few, and holes whose readings contradict one another are no calibration", () => {
    expect(holeFromKnownHoles(holes.slice(0, 1), 74).kind).toBe("too-few");
    expect(holeFromKnownHoles([...holes, { hole: mm(1.4), reads: 60 }], 61).kind).toBe("contradictory");
    expect(holeFromKnownHoles([...holes, { hole: mm(1.25), reads: 50 }], 61).kind).toBe("contradictory");
  });
});

describe("a percentage without its supply", () => {
  test("18 % is alpha 0.76 to 0.89 over 30 to 100 psi", () => {
    const { low, high } = alphaOverSupplies(0.18, seaLevelPressure);
    // ends: 18 % at 30 and at 100 psi, by hand from C.5: 24.6/30 and 82/100
    expect([low.toFixed(2), high.toFixed(2)]).toEqual(["0.76", "0.89"]);
  });

  test("against a master of 45 % the margin is fair all the same: 0.55 to 0.57", () => {
    const { low, high } = marginOverSupplies({ lost: 0.18, master: 0.45 }, seaLevelPressure);
    expect([low.toFixed(2), high.toFixed(2)]).toEqual(["0.55", "0.57"]);
  });
});

describe("two testers on one day", () => {
  // by hand: ratios 1.8, 2.0, 2.5; the median is 2.0; ln ratios 0.5878, 0.6931, 0.9163, s = 0.1678
  test("three cylinders give the median of their ratios, and its doubt 1.2533·s/√3", () => {
    const found = testerFactor([
      [0.5, 1],
      [0.4, 1],
      [1, 1.8],
    ]);
    expect(found?.factor).toBeCloseTo(2, 12);
    expect(found?.uncertainty).toBeCloseTo((1.2533 * 0.1678) / Math.sqrt(3), 3);
    expect(found?.cylinders).toBe(3);
  });

  test("two cylinders are too few, and one without a leak is no ratio", () => {
    expect(
      testerFactor([
        [0.5, 1],
        [0.4, 1],
      ]),
    ).toBeUndefined();
    expect(
      testerFactor([
        [0.5, 1],
        [0.4, 1],
        [0, 0.2],
      ]),
    ).toBeUndefined();
  });
});

describe("leaks side by side", () => {
  // C.6: the limits 10 and 20 % at 5 bar are alpha 0.620 and 0.916; together 1.536
  test("add as areas", () => {
    expect(inParallel([0.62, 0.916])).toBeCloseTo(1.536, 12);
    expect(inParallel([])).toBe(0);
  });
});
