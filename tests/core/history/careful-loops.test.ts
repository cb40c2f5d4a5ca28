// The loops that run most, against the plain definitions they stand for. Tables invented by chance: read and unread cells,
// values that are equal and values that are not.

import fc from "fast-check";
import { expect, test } from "vitest";
import { looContrasts } from "../../../packages/core/src/history/contrasts.ts";
import { covarianceRows } from "../../../packages/core/src/history/covariance.ts";
import { dependentPlaces, generalisedLine } from "../../../packages/core/src/history/generalised-line.ts";
import { medianPolish } from "../../../packages/core/src/history/median-polish.ts";
import type { MergedTest } from "../../../packages/core/src/history/merge-tests.ts";
import { noiseOf } from "../../../packages/core/src/history/noise.ts";
import { median, varianceOfMedian } from "../../../packages/core/src/statistics/index.ts";

const levels = fc.oneof(
  fc.integer({ min: 0, max: 3 }).map((n) => 5 + n / 64),
  fc.double({ min: 4.5, max: 5.5, noNaN: true }),
);
const tables = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 9 }))
  .chain(([rows, columns]) =>
    fc
      .array(fc.option(levels, { nil: NaN, freq: 6 }), {
        minLength: rows * columns,
        maxLength: rows * columns,
      })
      .map((cells) => ({ rows, columns, ln: Float64Array.from(cells) })),
  );
type Table = Parameters<typeof medianPolish>[0];

const middle = (values: readonly number[]): number => {
  const read = values.filter((value) => !Number.isNaN(value));
  return read.length === 0 ? NaN : median(read);
};

const cell = ({ columns, ln }: Table, t: number, i: number): number => ln[t * columns + i] ?? NaN;
const places = (count: number): readonly number[] => Array.from({ length: count }, (_, k) => k);

/** The polish as it is defined: every median of every sweep from all its values. */
const plainPolish = (table: Table): ReturnType<typeof medianPolish> => {
  let effects = places(table.rows).map(() => 0);
  let own = places(table.columns).map(() => 0);
  let sweeps = 0;
  for (let moved = Infinity; moved >= 1e-12 && sweeps < 200; sweeps += 1) {
    const now = effects.map((_, t) => middle(own.map((level, i) => cell(table, t, i) - level)));
    const then = own.map((_, i) => middle(now.map((effect, t) => cell(table, t, i) - effect)));
    const moves = [
      ...now.map((effect, t) => effect - (effects[t] ?? NaN)),
      ...then.map((level, i) => level - (own[i] ?? NaN)),
    ];
    moved = Math.max(0, ...moves.filter((move) => !Number.isNaN(move)).map(Math.abs));
    effects = now;
    own = then;
  }
  return { effects: Float64Array.from(effects), levels: Float64Array.from(own), sweeps };
};

test("the polish that keeps the order of its rows gives the plain one's numbers, to the last digit", () => {
  fc.assert(
    fc.property(tables, (table) => {
      expect(medianPolish(table)).toEqual(plainPolish(table));
    }),
    { numRuns: 300 },
  );
});

test("so it does where it converges slowly: many cylinders, an even number of them", () => {
  const [rows, columns] = [20, 12];
  const wave = (t: number, i: number): number => 5 + Math.sin(7 * t + 3 * i) / 40 + Math.cos(i * t) / 90;
  const ln = Float64Array.from(places(rows * columns).map((k) => wave(Math.floor(k / columns), k % columns)));
  const polish = medianPolish({ rows, columns, ln });
  expect(polish.sweeps).toBeGreaterThan(20);
  expect(polish).toEqual(plainPolish({ rows, columns, ln }));
});

test("a contrast is the reading less the middle of the others, however it is found", () => {
  fc.assert(
    fc.property(tables, fc.array(levels, { minLength: 9, maxLength: 9 }), (table, drawn) => {
      const off = Float64Array.from(drawn.slice(0, table.columns));
      const plain = places(table.rows).flatMap((t) =>
        places(table.columns).map((i) => {
          const others = places(table.columns).filter((j) => j !== i);
          return cell(table, t, i) - middle(others.map((j) => cell(table, t, j) - (off[j] ?? NaN)));
        }),
      );
      expect([...looContrasts(table, off)]).toEqual(plain);
    }),
  );
});

const noise = noiseOf.cranking;
const days = fc.array(
  fc.record({
    gauge: fc.option(fc.constantFrom("red", "blue"), { nil: undefined }),
    countsAs: fc.option(fc.constantFrom("red", "blue"), { nil: undefined }),
    shared: fc.dictionary(
      fc.constantFrom("P0", "speed", "link"),
      fc.double({ min: -0.03, max: 0.03, noNaN: true }),
    ),
    own: fc.double({ min: 0, max: 0.02, noNaN: true }),
    read: fc.integer({ min: 1, max: 6 }),
    repeats: fc.integer({ min: 1, max: 3 }),
  }),
  { minLength: 2, maxLength: 8 },
);
const testsOfDays = (drawn: typeof days extends fc.Arbitrary<infer T> ? T : never): readonly MergedTest[] =>
  drawn.map(({ gauge, countsAs, shared, own, read, repeats }, k) => ({
    ids: [String(k)],
    x: k,
    years: k,
    use: "full",
    ...(gauge === undefined ? {} : { gauge }),
    ...(countsAs === undefined ? {} : { countsAs }),
    sharedUncertainty: shared,
    correctionUncertainty: own,
    cells: places(read).map(() => ({ kind: "read", ln: 5, repeats })),
  }));

/** V_st by the formula alone. */
const plainCovariance = (tests: readonly MergedTest[], s: number, t: number): number => {
  const [one, other] = [tests[s], tests[t]];
  if (one === undefined || other === undefined) return NaN;
  const [a, b] = [one.countsAs ?? one.gauge, other.countsAs ?? other.gauge];
  const names = Object.keys(one.sharedUncertainty ?? {});
  const shared = names.reduce(
    (sum, name) => sum + (one.sharedUncertainty?.[name] ?? 0) * (other.sharedUncertainty?.[name] ?? 0),
    0,
  );
  const gauge = s === t || (a !== undefined && a === b) ? noise.gauge ** 2 : 0;
  if (s !== t) return gauge + shared;
  const first = one.cells[0];
  const repeats = first?.kind === "read" ? first.repeats : NaN;
  const reading = noise.reading ** 2 / repeats + noise.interaction ** 2;
  const own = noise.common ** 2 + reading * varianceOfMedian(one.cells.length);
  return gauge + shared + own + one.correctionUncertainty ** 2;
};

test("the covariance of tests is the formula's, row by row", () => {
  fc.assert(
    fc.property(days, (drawn) => {
      const tests = testsOfDays(drawn);
      const rows = tests.map(covarianceRows(noise));
      rows.forEach((row, s) => {
        expect(row).toHaveLength(s + 1);
        row.forEach((value, t) => {
          expect(value).toBeCloseTo(plainCovariance(tests, s, t), 15);
        });
      });
    }),
  );
});

test("a line drawn as tests come one by one is the line through all of them at once", () => {
  fc.assert(
    fc.property(days, (drawn) => {
      const tests = testsOfDays(drawn);
      const rows = tests.map(covarianceRows(noise));
      const x = tests.map((_, k) => k * 0.7);
      const y = tests.map((_, k) => Math.sin(3 * k));
      const growing = dependentPlaces();
      rows.forEach((row, k) => {
        growing.add(x[k] ?? NaN, row);
        const n = k + 1;
        expect(growing.lineThrough(y.slice(0, n))).toEqual(
          generalisedLine(x.slice(0, n), y.slice(0, n), rows),
        );
      });
    }),
  );
});

test("where tests do not depend on each other, the line is that of least squares", () => {
  const [x, y] = [
    [0, 1, 3, 4],
    [2, 4, 3, 7],
  ];
  const rows = x.map((_, k) => [...new Array<number>(k).fill(0), 4]);
  const line = generalisedLine(x, y, rows);
  // means 2 and 4: Sxy = 9, Sxx = 10, so slope .9; residuals -.2, .9, -1.9, 1.2 over s = 2
  expect(line?.slope).toBeCloseTo(0.9, 14);
  expect(line?.level).toBeCloseTo(4, 14);
  expect(line?.meanX).toBeCloseTo(2, 14);
  expect(line?.standardError).toBeCloseTo(2 / Math.sqrt(10), 14);
  expect(line?.levelError).toBeCloseTo(1, 14);
  expect(line?.misfit).toBeCloseTo(5.9 / 4, 14);
});
