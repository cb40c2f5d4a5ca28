// What may not change a course: the unit, the gauge, the battery, the order of the cylinders, the day that years count from.

import fc from "fast-check";
import { expect, test } from "vitest";
import {
  analyseHistory,
  coursesOf,
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
      limitRatio: 0.8,
      minimum: Math.log(60),
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

/** The numbers of a cylinder's tests, slopes and forecasts against the others. */
const numbersOf = (
  cylinder: HistoryResult["cylinders"][number] | undefined,
): readonly (number | undefined)[] => [
  cylinder?.theilSen?.slope,
  cylinder?.theilSen?.low,
  cylinder?.theilSen?.high,
  cylinder?.theilSen?.coverage,
  cylinder?.pooled?.slope,
  cylinder?.pooled?.t,
  cylinder?.ownScatter?.t,
  cylinder?.twoBelow?.t,
  cylinder?.lossBound,
  cylinder?.change?.change,
  cylinder?.limit?.crossing,
  cylinder?.limit?.low,
  cylinder?.limit?.high,
  cylinder?.limit?.notBefore,
  ...(cylinder?.stays ?? []).map(({ probability }) => probability),
];

const expectClose = (
  ours: readonly (number | undefined)[],
  theirs: readonly (number | undefined)[],
  digits: number,
): void => {
  expect(theirs).toHaveLength(ours.length);
  ours.forEach((value, k) => {
    if (value === undefined) expect(theirs[k]).toBeUndefined();
    else expect(theirs[k]).toBeCloseTo(value, digits);
  });
};

const expectSame = (one: HistoryResult, other: HistoryResult): void => {
  expect(other.scatter.s).toBeCloseTo(one.scatter.s, 9);
  one.cylinders.forEach((cylinder, i) => {
    const twin = other.cylinders[i];
    expect(twin?.course).toBe(cylinder.course);
    expect(twin?.alarms).toEqual(cylinder.alarms);
    expect(twin?.count).toBe(cylinder.count);
    expectClose(numbersOf(cylinder), numbersOf(twin), 6);
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

test("another unit, the minimum in it too, changes neither the trend of the engine nor the chances of a cylinder", () => {
  fc.assert(
    fc.property(history, fc.double({ min: -5, max: 5, noNaN: true }), (input, factor) => {
      const one = analyseHistory(input);
      const moved = shifted(input, () => factor);
      const other = analyseHistory({ ...moved, minimum: Math.log(60) + factor });
      const trend = ({ common: { trend } }: HistoryResult): readonly (number | undefined)[] => [
        trend?.slope,
        trend?.standardError,
        trend?.p,
        trend?.lossBound,
      ];
      expectClose(trend(one), trend(other), 8);
      expect(other.common.word).toBe(one.common.word);
      const own = ({ cylinders }: HistoryResult) =>
        cylinders.flatMap(({ absolute }) => [
          absolute?.trend?.slope,
          absolute?.trend?.crossing,
          absolute?.trend?.notBefore,
          ...(absolute?.stays ?? []).map(({ probability }) => probability),
        ]);
      expectClose(own(one), own(other), 6);
      expectClose(
        one.weakest.flatMap(({ probability, allAtLeast }) => [probability, allAtLeast]),
        other.weakest.flatMap(({ probability, allAtLeast }) => [probability, allAtLeast]),
        6,
      );
    }),
    { numRuns: 60 },
  );
});

test("a gauge that reads high by its own share, wherever it was used, changes no contrast and no course", () => {
  const gauges = fc.array(fc.constantFrom("red", "blue", "old"), { minLength: 10, maxLength: 10 });
  const share = { red: 0.031, blue: -0.02, old: 0.15 } as const;
  fc.assert(
    fc.property(history, gauges, (input, used) => {
      const named = { ...input, tests: input.tests.map((one, k) => ({ ...one, gauge: used[k] ?? "red" })) };
      expectSame(analyseHistory(named), analyseHistory(shifted(named, (k) => share[used[k] ?? "red"])));
    }),
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
      expect(back.common.word).toBe(analyseHistory(input).common.word);
    }),
    { numRuns: 60 },
  );
});

test("the day that the years are counted from changes no slope and no chance, and moves the places of limits with it", () => {
  fc.assert(
    fc.property(history, fc.integer({ min: -20, max: 40 }), (input, years) => {
      const moved = {
        ...input,
        tests: input.tests.map((one) => ({ ...one, x: one.x + years, years: one.years + years })),
      };
      const [one, other] = [analyseHistory(input), analyseHistory(moved)];
      const back = other.cylinders.map((cylinder) => {
        const { limit } = cylinder;
        if (limit === undefined) return cylinder;
        const { crossing, low, high, notBefore, ...rest } = limit;
        const places = Object.entries({ crossing, low, high, notBefore }).flatMap(([name, place]) =>
          place === undefined ? [] : [[name, place - years] as const],
        );
        return { ...cylinder, limit: { ...rest, ...Object.fromEntries(places) } };
      });
      expectSame(one, { ...other, cylinders: back });
    }),
    { numRuns: 60 },
  );
});

test("the courses alone are those of the whole history, to the last digit of their slopes and intervals", () => {
  fc.assert(
    fc.property(history, fc.integer({ min: 1, max: 6 }), (drawn, most) => {
      const input = {
        ...drawn,
        labels: drawn.labels.slice(0, most),
        tests: drawn.tests.map((one) => ({ ...one, cells: one.cells.slice(0, most) })),
      };
      const { cylinders, tests, axis, common } = analyseHistory(input);
      const whole = common.count < 4 || common.trend === undefined ? undefined : common.trend.slope;
      const lone =
        cylinders.length === 1 ? { slope: whole === undefined ? undefined : { slope: whole } } : {};
      const alone = coursesOf(input);
      expect(alone.perYear).toBe(axis.perYear);
      expect(alone.tests.map(({ ids }) => ids)).toEqual(tests.map(({ ids }) => ids));
      expect(
        alone.cylinders.map(({ label, course, slope, alarms, early, mirrored, shape, afterFall }) => ({
          ...{ label, course, slope: slope(), alarms, mirrored: mirrored(), ...afterFall() },
          early: early?.test,
          shape: alarms.length > 0 ? shape : undefined,
        })),
      ).toEqual(
        cylinders.map(({ label, course, theilSen, alarms, early, mirrored, shape, ...after }) => ({
          ...{ label, course, slope: theilSen, alarms, mirrored, ...lone },
          ...{ wentOn: after.wentOn, cameBack: after.cameBack, lowAgain: after.lowAgain },
          early: early?.test,
          shape: alarms.length > 0 ? shape : undefined,
        })),
      );
    }),
    { numRuns: 100 },
  );
});
