import {
  alphaOf,
  alphaUncertainty,
  area,
  gaugePressure,
  isentropicFlow,
  isoFlow,
  leakFigures,
  length,
  masterMargin,
  pressureAtAltitude,
  readingOfAlpha,
  readingOn,
  restate,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

const supplyOf = fc.double({ min: 50_000, max: 1_000_000, noNaN: true });
const kept = fc.double({ min: 0.05, max: 0.995, noNaN: true });
const height = fc.double({ min: 0, max: 4_000, noNaN: true });
const bores = fc.double({ min: 0.0004, max: 0.002, noNaN: true });
const models = fc.constantFrom(isentropicFlow, isoFlow(), isoFlow(0.3));
const makes = fc.constantFrom("coned", "square", "thin-plate", "unknown");
const alphas = fc.double({ min: 0.02, max: 6, noNaN: true });

const reading = (supply: number, part: number, h = 0) => ({
  supply: gaugePressure(supply),
  cylinder: gaugePressure(supply * part),
  ambient: pressureAtAltitude(length(h)),
});
const near = (value: number, expected: number, relative: number): void => {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
};

test("a leak read and told back as a reading is that reading, and the other way round", () => {
  fc.assert(
    fc.property(supplyOf, kept, height, bores, makes, models, (supply, part, h, d, profile, model) => {
      const given = reading(supply, part, h);
      const restrictor = { bore: length(d), profile };
      const leak = area(leakFigures(given, restrictor, model).size?.area ?? 0);
      const back = readingOn({ ...given, restrictor }, leak, { model });
      near(back.cylinder, given.cylinder, 1e-9);
      near(back.lost, 1 - part, 1e-9);
    }),
  );
  fc.assert(
    fc.property(supplyOf, alphas, height, models, (supply, alpha, h, model) => {
      const tester = reading(supply, 1, h);
      const told = readingOfAlpha(tester, alpha, model);
      near(alphaOf({ ...tester, cylinder: told.cylinder }, model), alpha, 1e-9);
    }),
  );
});

test("a bore k times as wide makes alpha k² times smaller, and leaves area and equal hole as they are", () => {
  fc.assert(
    fc.property(
      supplyOf,
      kept,
      bores,
      fc.double({ min: 0.7, max: 1.5, noNaN: true }),
      (supply, part, d, k) => {
        const given = reading(supply, part);
        const one = leakFigures(given, { bore: length(d) });
        const wide = readingOn({ ...given, restrictor: { bore: length(k * d) } }, area(one.size?.area ?? 0));
        const two = leakFigures({ ...given, cylinder: wide.cylinder }, { bore: length(k * d) });
        near(two.alpha, one.alpha / k ** 2, 1e-6);
        near(two.size?.equalHole ?? 0, one.size?.equalHole ?? 1, 1e-6);
        // the same reading through it is a leak k² times as large, to the digits
        const same = leakFigures(given, { bore: length(k * d) });
        expect(same.alpha).toBe(one.alpha);
        near(same.size?.area ?? 0, k ** 2 * (one.size?.area ?? 1), 1e-12);
      },
    ),
  );
});

test("more pressure kept is a smaller leak, and a larger leak keeps less", () => {
  fc.assert(
    fc.property(supplyOf, kept, height, models, (supply, part, h, model) => {
      const step = 0.001;
      const less = alphaOf(reading(supply, part - step, h), model);
      expect(alphaOf(reading(supply, part, h), model)).toBeLessThan(less);
    }),
  );
  fc.assert(
    fc.property(supplyOf, alphas, models, (supply, alpha, model) => {
      const at = (one: number): number => readingOfAlpha(reading(supply, 1), one, model).cylinder;
      expect(at(alpha * 1.01)).toBeLessThan(at(alpha));
    }),
  );
});

test("a leak told for the tester it was read on is the reading itself, by either law", () => {
  fc.assert(
    fc.property(supplyOf, kept, height, bores, makes, models, (supply, part, h, d, profile, model) => {
      const given = reading(supply, part, h);
      const restrictor = { bore: length(d), profile };
      const { restated } = restate({ reading: given, restrictor }, { restrictor: { ...restrictor } }, model);
      near(restated?.reading.lost ?? 0, 1 - part, 1e-8);
      near(restated?.laminarLost ?? 0, 1 - part, 1e-8);
    }),
  );
});

test("told for another tester and told back, a leak that is a hole is where it was", () => {
  fc.assert(
    fc.property(
      fc.tuple(supplyOf, supplyOf),
      kept,
      fc.tuple(bores, bores),
      height,
      ([from, to], part, [here, there], h) => {
        const given = reading(from, part, h);
        const near1 = { bore: length(here) };
        const far = { bore: length(there) };
        const ambient = pressureAtAltitude(length(0));
        const out = restate(
          { reading: given, restrictor: near1 },
          { supply: gaugePressure(to), restrictor: far, ambient },
        ).restated?.reading;
        fc.pre(out !== undefined && out.lost > 1e-4 && out.cylinder > 1);
        const back = restate(
          {
            reading: { supply: gaugePressure(to), cylinder: out.cylinder, ambient },
            restrictor: far,
          },
          { supply: given.supply, restrictor: near1, ambient: given.ambient },
        ).restated?.reading;
        near(back?.cylinder ?? 0, given.cylinder, 1e-6);
      },
    ),
  );
});

test("the other side of a tester whose discharge coefficient is common does not feel it", () => {
  fc.assert(
    fc.property(supplyOf, kept, fc.double({ min: 0.5, max: 1, noNaN: true }), (supply, part, cd) => {
      const given = reading(supply, part);
      const told = (one?: number) =>
        restate(
          { reading: given, restrictor: { bore: length(0.001), ...(one === undefined ? {} : { cd: one }) } },
          { restrictor: { bore: length(0.0015), ...(one === undefined ? {} : { cd: one }) } },
        ).restated?.reading.lost ?? 0;
      near(told(cd), told(), 1e-9);
    }),
  );
});

test("the margin to a master does not depend on the bore, and its own master is exactly what it allows", () => {
  fc.assert(
    fc.property(supplyOf, kept, kept, bores, (supply, part, master, d) => {
      const given = reading(supply, part);
      const reads = gaugePressure(supply * master);
      const free = masterMargin(given, { reads });
      near(masterMargin(given, { reads }, { restrictor: { bore: length(d) } }).margin, free.margin, 1e-12);
      near(masterMargin(given, { reads: given.cylinder }).margin, 1, 1e-12);
    }),
  );
});

test("the uncertainty told is that of two readings a little apart", () => {
  fc.assert(
    fc.property(supplyOf, fc.double({ min: 0.1, max: 0.97, noNaN: true }), models, (supply, part, model) => {
      const given = reading(supply, part);
      const critical = (p: number, q: number) => Math.abs(p / q - model.criticalRatio) < 1e-3;
      const [p1, p2] = [supply + given.ambient, supply * part + given.ambient];
      fc.pre(!critical(p2, p1) && !critical(given.ambient, p2));
      const step = 1e-5 * supply;
      const lnAlpha = (p: number): number =>
        Math.log(alphaOf({ ...given, cylinder: gaugePressure(p) }, model));
      const slope = (lnAlpha(given.cylinder + step) - lnAlpha(given.cylinder - step)) / (2 * step);
      near(alphaUncertainty({ ...given, uCylinder: 1 }, model), Math.abs(slope), 1e-4);
      const lnSupply = (p: number): number =>
        Math.log(alphaOf({ ...given, supply: gaugePressure(p) }, model));
      const rise = (lnSupply(supply + step) - lnSupply(supply - step)) / (2 * step);
      near(alphaUncertainty({ ...given, uSupply: 1 }, model), Math.abs(rise), 1e-4);
    }),
  );
});
