// What must hold for every gauge, hose and drop of oil, whatever the numbers.

import fc from "fast-check";
import { expect, test } from "vitest";
import {
  absolutePressure,
  fillLimit,
  fillSeries,
  hoseShare,
  oilAmount,
  oilRise,
  reachedBy,
  stillMissing,
  suggestedOil,
  throttledReading,
  volume,
} from "@sealtrend/core/parts";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const chambers = real(5e-6, 500e-6).map(volume);
const ratios = real(1.5, 20);
const exponents = real(1.1, 1.4);
const airs = real(50_000, 110_000).map(absolutePressure);
const fillings = fc
  .record({ chamber: chambers, ratio: ratios, behindValve: real(0, 500e-6).map(volume), air: airs })
  .map(({ ratio, ...rest }) => ({ ...rest, trapped: volume(ratio * rest.chamber) }));

const near = (found: number, expected: number): boolean =>
  Math.abs(found - expected) <= 1e-9 * Math.max(1, Math.abs(expected));

test("the needle climbs with every stroke, never beyond where it stops, by P(1 - q^j)", () => {
  fc.assert(
    fc.property(fillings, (filling) => {
      const shown = fillSeries(filling, 12);
      const [limit, q] = [fillLimit(filling), stillMissing(filling)];
      shown.forEach((value, j) => {
        expect(value).toBeGreaterThanOrEqual((shown[j - 1] ?? 0) * (1 - 1e-12));
        expect(value).toBeLessThanOrEqual(limit * (1 + 1e-12));
        expect(near(value, limit * (1 - q ** (j + 1)))).toBe(true);
      });
    }),
  );
});

// The recursion itself, not its closed form: each stroke mixes the fresh charge with what the gauge holds.
test("each stroke is the fresh charge mixed with what the gauge holds", () => {
  fc.assert(
    fc.property(fillings, (filling) => {
      const { chamber, trapped, behindValve, air } = filling;
      let held: number = air;
      for (const value of fillSeries(filling, 8)) {
        held = (air * trapped + held * behindValve) / (chamber + behindValve);
        expect(near(value / air, held / air - 1)).toBe(true);
      }
    }),
  );
});

test("how far the last stroke got is found again from the first", () => {
  fc.assert(
    fc.property(real(0.01, 0.85), fc.integer({ min: 2, max: 12 }), (q, strokes) => {
      const found = reachedBy((1 - q) / (1 - q ** strokes), strokes) ?? 0;
      expect(Math.abs(found - (1 - q ** strokes))).toBeLessThan(1e-6);
    }),
  );
});

test("no hose changes nothing; a longer one always costs more, a larger chamber less", () => {
  fc.assert(
    fc.property(chambers, ratios, exponents, real(0.2e-6, 20e-6), (chamber, trappedRatio, exponent, hose) => {
      const cylinder = { chamber, trappedRatio, exponent };
      expect(hoseShare(cylinder, volume(0))).toBeCloseTo(1, 12);
      const share = hoseShare(cylinder, volume(hose));
      expect(share).toBeLessThan(1);
      expect(hoseShare(cylinder, volume(2 * hose))).toBeLessThan(share);
      expect(hoseShare({ ...cylinder, chamber: volume(2 * chamber) }, volume(hose))).toBeGreaterThan(share);
    }),
  );
});

test("no oil raises nothing; more oil always raises more", () => {
  fc.assert(
    fc.property(real(2, 25), real(0.001, 0.4), (ratio, share) => {
      expect(oilRise(ratio, 0)).toBeCloseTo(0, 12);
      expect(oilRise(ratio, share)).toBeGreaterThan(0);
      expect(oilRise(ratio, 2 * share)).toBeGreaterThan(oilRise(ratio, share));
    }),
  );
});

test("the oil that is suggested always fits", () => {
  fc.assert(
    fc.property(chambers, (chamber) => {
      const { least, middle, most } = suggestedOil(chamber);
      expect([least < middle, middle < most, oilAmount(most / chamber)]).toEqual([true, true, "fits"]);
    }),
  );
});

test("a manifold as full as the air outside costs nothing, and thin air lowers both alike", () => {
  fc.assert(
    fc.property(real(2, 40), airs, real(0.5, 1), (multiple, air, share) => {
      expect(near(throttledReading(multiple, air, air), (multiple - 1) * air)).toBe(true);
      const part = (outside: number): number =>
        throttledReading(multiple, absolutePressure(share * outside), absolutePressure(outside)) / outside;
      expect(part(air)).toBeCloseTo(part(101_325), 9);
    }),
  );
});
