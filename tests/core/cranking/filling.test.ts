// The edges of the filling of a gauge, its hose, and oil in the chamber; values by hand unless named.

import { expect, test } from "vitest";
import {
  absolutePressure,
  fillLimit,
  fillSeries,
  hoseShare,
  knownChamber,
  length,
  oilAmount,
  oilRise,
  reachedBy,
  stillMissing,
  strokesTo,
  suggestedOil,
  throttledReading,
  volume,
} from "@sealtrend/core/parts";

const none = volume(0);

// cranking.md D.1 (computed): 86 x 86 mm at 10:1 leaves 55.5064 cm3
test("the chamber is known from bore, stroke and compression ratio together, and not from two of them", () => {
  const sizes = { bore: length(0.086), stroke: length(0.086) };
  expect(1e6 * (knownChamber({ ...sizes, compressionRatio: 10 }) ?? 0)).toBeCloseTo(55.5064, 3);
  expect(knownChamber(sizes)).toBeUndefined();
  expect(knownChamber({ bore: length(0.086), compressionRatio: 10 })).toBeUndefined();
  expect(() => knownChamber({ ...sizes, compressionRatio: 1 })).toThrow(RangeError);
});

test("a gauge that holds nothing shows the final reading at the first stroke", () => {
  const filling = {
    chamber: volume(5e-5),
    trapped: volume(4e-4),
    behindValve: none,
    air: absolutePressure(1e5),
  };
  expect(fillSeries(filling, 3)).toEqual([7e5, 7e5, 7e5]);
  expect(fillSeries(filling, 0)).toEqual([]);
  expect(strokesTo(0.99, stillMissing(filling))).toBe(1);
});

test("a needle that climbs evenly to the last stroke does not tell where it would have stopped", () => {
  expect(reachedBy(0.25, 4)).toBeUndefined();
  expect(reachedBy(0.2, 4)).toBeUndefined();
  expect(reachedBy(1.01, 4)).toBeUndefined();
  expect(reachedBy(1, 4)).toBeCloseTo(1, 9);
});

test("oil fits up to a quarter of the chamber, is much up to a half, and beyond it too much", () => {
  expect([0, 0.25, 0.2501, 0.5, 0.5001, 2].map(oilAmount)).toEqual([
    "fits",
    "fits",
    "much",
    "much",
    "too-much",
    "too-much",
  ]);
});

test("a chamber of 100 ml gets 3 to 5 ml of oil", () => {
  const { least, middle, most } = suggestedOil(volume(100e-6));
  expect([least, middle, most].map((amount) => Math.round(amount * 1e9))).toEqual([3000, 4000, 5000]);
});

test.each([
  () => stillMissing({ chamber: none, behindValve: none }),
  () => fillLimit({ chamber: none, trapped: none, behindValve: none, air: absolutePressure(1e5) }),
  () =>
    fillSeries(
      { chamber: volume(1), trapped: volume(2), behindValve: none, air: absolutePressure(1e5) },
      1.5,
    ),
  () => strokesTo(1, 0.5),
  () => strokesTo(0.5, 1),
  () => reachedBy(0.5, 1),
  () => hoseShare({ chamber: none, trappedRatio: 8, exponent: 1.25 }, none),
  () => hoseShare({ chamber: volume(1), trappedRatio: 1, exponent: 1.25 }, none),
  () => oilRise(1, 0.1),
  () => oilRise(9, 1),
  () => throttledReading(1, absolutePressure(1e5), absolutePressure(1e5)),
])("what cannot be is refused, never answered with a number %#", (impossible) => {
  expect(impossible).toThrow(RangeError);
});
