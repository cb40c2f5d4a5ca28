// What may not change a course: the unit, the gauge, the battery, the order of the cylinders.

import fc from "fast-check";
import { expect, test } from "vitest";
import {
  analyseHistory,
  type HistoryCell,
  type HistoryInput,
  type HistoryResult,
} from "../../packages/core/src/history/index.ts";

const reading = fc.integer({ min: 60, max: 220 });
const cell = fc.oneof(
  {
    weight: 9,
    arbitrary: reading.map((psi): HistoryCell => ({ kind: "read", ln: Math.log(psi), repeats: 1 })),
  },
  { weight: 1, arbitrary: fc.constant<HistoryCell>({ kind: "not-read" }) },
);
const history = fc
  .tuple(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 2, max: 10 }))
  .chain(([cylinders, count]) =>
    fc.record({
      cells: fc.array(fc.array(cell, { minLength: cylinders, maxLength: cylinders }), {
        minLength: count,
        maxLength: count,
      }),
      gaps: fc.array(fc.integer({ min: 1, max: 40 }), { minLength: count, maxLength: count }),
    }),
  )
  .map(({ cells, gaps }): HistoryInput => {
    let x = 0;
    return {
      kind: "cranking",
      labels: (cells[0] ?? []).map((_, i) => `c${i}`),
      axis: { kind: "dates", unit: "year" },
      services: [],
      tests: cells.map((row, k) => {
        x += (gaps[k] ?? 1) / 10;
        return { id: `t${k}`, x, years: x, use: "full", correctionUncertainty: 0, cells: row };
      }),
    };
  });

const shifted = (input: HistoryInput, by: (test: number) => number): HistoryInput => ({
  ...input,
  tests: input.tests.map((one, k) => ({
    ...one,
    cells: one.cells.map((c) => (c.kind === "read" ? { ...c, ln: c.ln + by(k) } : c)),
  })),
});

const expectSame = (one: HistoryResult, other: HistoryResult): void => {
  one.cylinders.forEach((cylinder, i) => {
    const twin = other.cylinders[i];
    expect(twin?.course).toBe(cylinder.course);
    expect(twin?.alarms).toEqual(cylinder.alarms);
    cylinder.contrasts.forEach((contrast, k) => {
      if (contrast === undefined) expect(twin?.contrasts[k]).toBeUndefined();
      else expect(twin?.contrasts[k]).toBeCloseTo(contrast, 9);
    });
  });
};

test("another unit or a gauge that reads high by a constant share changes no contrast and no course", () => {
  fc.assert(
    fc.property(history, fc.double({ min: -5, max: 5, noNaN: true }), (input, factor) =>
      expectSame(analyseHistory(input), analyseHistory(shifted(input, () => factor))),
    ),
    { numRuns: 60 },
  );
});

test("what a test does to all cylinders alike changes no contrast and no course", () => {
  fc.assert(
    fc.property(
      history,
      fc.array(fc.integer({ min: -64, max: 64 }), { minLength: 10, maxLength: 10 }),
      (input, sizes) =>
        expectSame(analyseHistory(input), analyseHistory(shifted(input, (k) => (sizes[k] ?? 0) / 256))),
    ),
    { numRuns: 60 },
  );
});

test("the order of the cylinders changes no contrast and no course", () => {
  const turned = (input: HistoryInput): HistoryInput => ({
    ...input,
    labels: input.labels.toReversed(),
    tests: input.tests.map((one) => ({ ...one, cells: one.cells.toReversed() })),
  });
  fc.assert(
    fc.property(history, (input) => {
      const back = analyseHistory(turned(input));
      expectSame(analyseHistory(input), { ...back, cylinders: back.cylinders.toReversed() });
    }),
    { numRuns: 60 },
  );
});
