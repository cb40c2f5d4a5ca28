// Laws of the speed correction. They follow from its form: with one P_0, 1/sqrt(P) is a straight line in 1/N.

import {
  type LeakEvidence,
  type LossFreePressure,
  type SpeedStep,
  correctSpeed,
  gaugePressure,
  lossFreeByDefault,
  lossFreeFromTwoSpeeds,
  lossSpeed,
  speed,
  speedCorrectedUncertainty,
  usualLossSpeed,
  volume,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

const rpm = fc.double({ min: 120, max: 450, noNaN: true });
const evidences = fc.constantFrom<LeakEvidence>("unknown", "shown", "alone");
/** P_0, and readings as shares of it. */
const free = fc.double({ min: 5e5, max: 5e6, noNaN: true });
const share = fc.double({ min: 0.2, max: 0.98, noNaN: true });

const near = (value: number, expected: number, relative = 1e-9): void => {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
};
const kept = (pressure: number): LossFreePressure => ({
  pressure: gaugePressure(pressure),
  uncertainty: 0.05,
  sources: ["calibration"],
  ownShare: 0,
});
const at = (pressure: number, n: number) => ({ pressure: gaugePressure(pressure), speed: speed(n) });
const step = (p0: number, middle: ReturnType<typeof at>, to: number): SpeedStep => ({
  to: speed(to),
  lossFree: kept(p0),
  middle,
});
const moved = (
  p0: number,
  reading: ReturnType<typeof at>,
  { middle = reading, to, evidence }: { middle?: ReturnType<typeof at>; to: number; evidence: LeakEvidence },
) => correctSpeed(reading, step(p0, middle, to), evidence).pressure;

test("a reading brought to its own speed is itself", () => {
  fc.assert(
    fc.property(free, share, share, rpm, evidences, (p0, s, m, n, evidence) => {
      near(moved(p0, at(s * p0, n), { middle: at(m * p0, n), to: n, evidence }), s * p0);
    }),
  );
});

test("a reading brought to another speed and back by the same P_0 is itself", () => {
  fc.assert(
    fc.property(free, share, rpm, rpm, evidences, (p0, s, n, to, evidence) => {
      const there = moved(p0, at(s * p0, n), { to, evidence });
      near(moved(p0, at(there, to), { to: n, evidence }), s * p0);
    }),
  );
});

test("two steps are one", () => {
  fc.assert(
    fc.property(free, share, rpm, rpm, rpm, (p0, s, n, between, to) => {
      const there = moved(p0, at(s * p0, n), { to: between, evidence: "alone" });
      near(
        moved(p0, at(there, between), { to, evidence: "alone" }),
        moved(p0, at(s * p0, n), { to, evidence: "alone" }),
      );
    }),
  );
});

test("the step leaves the loss speed of a cylinder as it is", () => {
  fc.assert(
    fc.property(free, share, rpm, rpm, (p0, s, n, to) => {
      const there = moved(p0, at(s * p0, n), { to, evidence: "alone" });
      const own = lossSpeed(gaugePressure(p0), gaugePressure(s * p0), speed(n));
      near(lossSpeed(gaugePressure(p0), there, speed(to)), own, 1e-6);
    }),
  );
});

test("a faster speed raises a reading and never above P_0; a higher reading stays the higher one", () => {
  fc.assert(
    fc.property(free, share, share, rpm, rpm, evidences, (p0, s, m, n, to, evidence) => {
      const middle = at(m * p0, n);
      const one = moved(p0, at(s * p0, n), { middle, to, evidence });
      if (to > n) expect(one).toBeGreaterThanOrEqual(s * p0 * (1 - 1e-12));
      else expect(one).toBeLessThanOrEqual(s * p0 * (1 + 1e-12));
      if (evidence !== "unknown") expect(one).toBeLessThanOrEqual(p0 * (1 + 1e-12));
      expect(moved(p0, at(0.99 * s * p0, n), { middle, to, evidence })).toBeLessThan(one);
    }),
  );
});

test("a leaking cylinder gains more by speed than a sound one", () => {
  fc.assert(
    fc.property(free, fc.double({ min: 0.5, max: 0.95, noNaN: true }), (p0, s) => {
      const middle = at(s * p0, 180);
      const sound = moved(p0, middle, { middle, to: 260, evidence: "unknown" }) / (s * p0);
      for (const evidence of ["unknown", "shown"] as const)
        expect(
          moved(p0, at(0.9 * s * p0, 180), { middle, to: 260, evidence }) / (0.9 * s * p0),
        ).toBeGreaterThan(sound);
    }),
  );
});

test("everything scales with the pressure: in thinner air, on another unit, it is the same engine", () => {
  fc.assert(
    fc.property(free, share, share, rpm, rpm, evidences, (p0, s, m, n, to, evidence) => {
      const once = moved(p0, at(s * p0, n), { middle: at(m * p0, n), to, evidence });
      const twice = moved(2 * p0, at(2 * s * p0, n), { middle: at(2 * m * p0, n), to, evidence });
      near(twice, 2 * once);
    }),
  );
});

test("with the usual losses P_0 scales with the middle reading, and less is known of it the slower it was cranked", () => {
  fc.assert(
    fc.property(free, rpm, (p, n) => {
      const usual = usualLossSpeed("spark", volume(0.5e-3));
      const one = lossFreeByDefault(at(p, n), usual);
      near(lossFreeByDefault(at(3 * p, n), usual).pressure, 3 * one.pressure);
      expect(lossFreeByDefault(at(p, n / 2), usual).uncertainty).toBeGreaterThan(one.uncertainty);
    }),
  );
});

test("two speeds of one cylinder find the P_0 that made them", () => {
  fc.assert(
    fc.property(free, share, fc.double({ min: 120, max: 300, noNaN: true }), (p0, s, n) => {
      const fast = 1.4 * n;
      const reading = (pressure: number, at: number) => ({
        speed: speed(at),
        pressure: gaugePressure(pressure),
        uPressure: 0.01,
        uSpeed: 0.01,
      });
      const there = moved(p0, at(s * p0, n), { to: fast, evidence: "alone" });
      const found = lossFreeFromTwoSpeeds(reading(s * p0, n), reading(there, fast));
      if ("refused" in found) throw new Error(found.refused.text);
      near(found.P0, p0, 1e-6);
      expect(found.uncertainty).toBeGreaterThan(0);
    }),
  );
});

test("the doubt of a corrected reading is more than that of the speed it was read at", () => {
  fc.assert(
    fc.property(free, share, rpm, rpm, evidences, (p0, s, n, to, evidence) => {
      const result = correctSpeed(at(s * p0, n), step(p0, at(s * p0, n), to), evidence);
      const u = speedCorrectedUncertainty(result, 0.018);
      expect(u).toBeGreaterThan(Math.abs(result.doubts.speed));
      expect(u).toBeLessThan(1);
    }),
  );
});

test("a pressure that is not above 0 has no loss speed", () => {
  expect(() => lossSpeed(gaugePressure(1e6), gaugePressure(0), speed(200))).toThrow(RangeError);
  expect(lossSpeed(gaugePressure(1e6), gaugePressure(1.1e6), speed(200))).toBe(0);
});
