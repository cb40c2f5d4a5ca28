// Which readings are taken for a slipped digit: the rule in full, cylinder by cylinder, against the one that passes over tests
// in which no reading lies far from any other. Readings invented by chance.

import fc from "fast-check";
import { expect, test } from "vitest";
import { type DigitSlip, slipsOf } from "../../../packages/core/src/assess/values/slips.ts";
import { median } from "../../../packages/core/src/statistics/index.ts";

type Cells = Parameters<typeof slipsOf>[0];

const usual = fc.double({ min: 800_000, max: 1_200_000, noNaN: true });
const reading = fc.oneof(
  { weight: 8, arbitrary: usual },
  {
    weight: 1,
    arbitrary: fc.tuple(usual, fc.constantFrom(10, 0.1, 4, 0.2, 0.115, 0)).map(([a, b]) => a * b),
  },
);
const cells = fc.array(
  fc.option(
    fc
      .record({ readings: fc.array(reading, { minLength: 1, maxLength: 2 }), pegged: fc.boolean() })
      .map(({ readings, pegged }) => ({
        readings,
        value: readings.reduce((sum, one) => sum + one, 0) / readings.length,
        pegged,
      })),
    { nil: undefined, freq: 8 },
  ),
  { minLength: 1, maxLength: 6 },
);

const plainSlips = (all: Cells): readonly (DigitSlip | undefined)[] => {
  const each = all.map((cell, i): DigitSlip | undefined => {
    const others = all.flatMap((one, j) =>
      j !== i && one !== undefined && !one.pegged && one.value > 0 ? [one.value] : [],
    );
    if (cell === undefined || others.length === 0) return undefined;
    const middle = median(others);
    const [lowest, highest] = [Math.min(...cell.readings), Math.max(...cell.readings)];
    // 2.5 MPa: more than a spark engine makes
    const far = highest > 2_500_000 ? 3 : 4;
    if (highest >= far * middle && middle >= 300_000)
      return { kind: "high", times: highest / middle, reading: highest };
    const times = lowest / middle;
    const isRepeated = cell.readings.length > 1 && highest <= 0.115 * middle;
    const isTenth = times >= 0.085 && times <= 0.115 && !cell.pegged && !isRepeated;
    return isTenth ? { kind: "low", times, reading: lowest } : undefined;
  });
  const isHigh = (slip: DigitSlip | undefined): boolean => slip?.kind === "high";
  return each.some(isHigh) ? each.map((slip) => (isHigh(slip) ? slip : undefined)) : each;
};

test("no slip is missed where a test is passed over as a whole", () => {
  fc.assert(
    fc.property(cells, (all) => {
      expect(slipsOf(all)).toEqual(plainSlips(all));
    }),
    { numRuns: 500 },
  );
});

test("1310 among 131s is a slip upward, 13.1 one downward", () => {
  const kinds = (psi: readonly number[]) =>
    slipsOf(psi.map((value) => ({ readings: [value * 6_895], value: value * 6_895, pegged: false }))).map(
      (slip) => slip?.kind,
    );
  expect(kinds([131, 1_310, 129, 133])).toEqual([undefined, "high", undefined, undefined]);
  expect(kinds([131, 13.1, 129, 133])).toEqual([undefined, "low", undefined, undefined]);
  expect(kinds([131, 60, 129, 133])).toEqual([undefined, undefined, undefined, undefined]);
});
