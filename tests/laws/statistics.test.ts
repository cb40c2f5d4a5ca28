import fc from "fast-check";
import { expect, test } from "vitest";
import {
  kendall,
  leastSquares,
  median,
  normalCdf,
  normalQuantile,
  rangeUpperTail,
  studentCdf,
  studentQuantile,
  theilSen,
} from "../../packages/core/src/statistics/index.ts";

const probability = fc.double({ min: 1e-12, max: 0.5, noNaN: true });
const degrees = fc.oneof(fc.integer({ min: 1, max: 60 }), fc.double({ min: 0.6, max: 400, noNaN: true }));

/** Whole-number readings at distinct dates: sums and differences stay exact, so laws hold to the last digit. */
const series = fc
  .uniqueArray(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 100, max: 180 })), {
    minLength: 5,
    maxLength: 14,
    selector: ([date]) => date,
  })
  .map((points) => ({ x: points.map(([date]) => date), y: points.map(([, reading]) => reading) }));

test("the normal quantile undoes the normal distribution", () => {
  fc.assert(
    fc.property(probability, (p) => {
      expect(Math.abs(normalCdf(normalQuantile(p)) / p - 1)).toBeLessThan(1e-13);
    }),
  );
});

test("Student's quantile undoes Student's distribution, for whole and broken degrees of freedom", () => {
  fc.assert(
    fc.property(probability, degrees, (p, df) => {
      expect(Math.abs(studentCdf(studentQuantile(p, df), df) / p - 1)).toBeLessThan(1e-12);
    }),
  );
});

test("both sides of a distribution mirror each other", () => {
  fc.assert(
    fc.property(fc.double({ min: -8, max: 8, noNaN: true }), degrees, (t, df) => {
      expect(studentCdf(t, df) + studentCdf(-t, df)).toBeCloseTo(1, 14);
      expect(normalCdf(t) + normalCdf(-t)).toBeCloseTo(1, 14);
    }),
  );
});

test("the chance of a wide range falls with its width and grows with the count", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 9, noNaN: true }), fc.integer({ min: 2, max: 20 }), (q, n) => {
      const here = rangeUpperTail(q, n);
      expect(rangeUpperTail(q + 0.1, n)).toBeLessThanOrEqual(here);
      expect(rangeUpperTail(q, n + 1)).toBeGreaterThanOrEqual(here - 1e-14);
    }),
    { numRuns: 40 },
  );
});

test("a Theil-Sen line moves with its readings: shifted, tilted, stretched, mirrored, reordered", () => {
  fc.assert(
    fc.property(
      series,
      fc.integer({ min: -5, max: 5 }),
      fc.integer({ min: -50, max: 50 }),
      ({ x, y }, tilt, shift) => {
        const line = theilSen(x, y, 0.95);
        const moved = theilSen(
          x,
          y.map((value, i) => value + shift + tilt * (x[i] ?? NaN)),
          0.95,
        );
        expect(moved.slope).toBeCloseTo(line.slope + tilt, 8);
        expect(moved.intercept).toBeCloseTo(line.intercept + shift, 7);
        expect(moved.interval?.low).toBeCloseTo((line.interval?.low ?? NaN) + tilt, 8);
        const stretched = theilSen(
          x.map((value) => value * 4),
          y,
          0.95,
        );
        expect(stretched.slope === line.slope / 4).toBe(true); // exact; 0 and -0 are one
        const mirrored = theilSen(
          x,
          y.map((value) => -value),
          0.95,
        );
        expect(mirrored.slope).toBeCloseTo(-line.slope, 12);
        expect(0 + (mirrored.interval?.low ?? NaN)).toBe(0 - (line.interval?.high ?? NaN)); // 0 and -0 are one
        expect(theilSen(x.toReversed(), y.toReversed(), 0.95)).toEqual(line);
      },
    ),
  );
});

test("the Theil-Sen interval holds its slope and covers at least what was asked for", () => {
  fc.assert(
    fc.property(series, fc.constantFrom(0.8, 0.9, 0.95), ({ x, y }, asked) => {
      const { slope, interval } = theilSen(x, y, asked);
      expect(interval?.coverage).toBeGreaterThanOrEqual(asked);
      expect(interval?.low).toBeLessThanOrEqual(slope);
      expect(interval?.high).toBeGreaterThanOrEqual(slope);
    }),
  );
});

test("Kendall's S sees order alone: any rising scale of the readings gives the same answer", () => {
  fc.assert(
    fc.property(series, ({ x, y }) => {
      const order = kendall(x, y);
      expect(
        kendall(
          x,
          y.map((value) => value ** 3),
        ),
      ).toEqual(order);
      expect(kendall(y, x).s).toBe(order.s);
      const turned = kendall(
        x,
        y.map((value) => -value),
      );
      // P(S <= s) + P(S <= -s) = 1 + P(S = s)
      expect(turned.s + order.s).toBe(0);
      expect(turned.twoSided).toBe(order.twoSided);
      expect(turned.lowerTail + order.lowerTail).toBeGreaterThanOrEqual(1 - 1e-12);
    }),
  );
});

test("residuals of the least-squares line balance: no other slope comes closer", () => {
  fc.assert(
    fc.property(series, fc.double({ min: -1, max: 1, noNaN: true }), ({ x, y }, change) => {
      const line = leastSquares(x, y);
      const squares = (slope: number): number =>
        y.reduce(
          (sum, value, i) => sum + (value - line.meanY - slope * ((x[i] ?? NaN) - line.meanX)) ** 2,
          0,
        );
      expect(squares(line.slope + change)).toBeGreaterThanOrEqual(line.sse * (1 - 1e-9) - 1e-9);
    }),
  );
});

test("the median does not care for order and lies between the extremes", () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 30 }),
      (xs) => {
        const middle = median(xs);
        expect(median(xs.toReversed())).toBe(middle);
        expect(xs.filter((x) => x < middle).length).toBeLessThanOrEqual(xs.length / 2);
        expect(xs.filter((x) => x > middle).length).toBeLessThanOrEqual(xs.length / 2);
      },
    ),
  );
});
