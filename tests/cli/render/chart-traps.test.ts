import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chart } from "../../../packages/cli/src/render/chart.ts";
import { draw, labelAt, markersIn, points, rowsOf } from "./drawn-chart.ts";

describe("traps of the plotting library that the chart survives", () => {
  test.each([
    ["NaN", NaN],
    ["undefined", undefined],
    ["Infinity", Infinity],
    ["-Infinity", -Infinity],
    ["null, which would be plotted as a dead cylinder at 0", null],
  ])("a missing reading given as %s is a gap in the line", (_, missing) => {
    const lines = draw(points([2014, 150], [2016, 148], [2018, missing], [2020, 146], [2022, 145]));
    expect(markersIn(lines)).toBe(4);
    expect(Math.min(...rowsOf(lines).map(({ label = Infinity }) => label))).toBeGreaterThan(140);
    // the axis runs from 2014 to 2022; between the tests of 2016 and 2020 no column is drawn
    const plot = rowsOf(lines).map(({ plot: text }) => text.padEnd(72));
    const columns = Array.from({ length: 64 }, (__, i) => plot.some((text) => text[i] !== " "));
    expect(columns.slice(20, 30)).not.toContain(true);
    expect(columns.slice(2, 14)).not.toContain(false);
  });

  test("an empty series says so instead of drawing", () => {
    expect(draw([])).toEqual(["No chart: nothing was measured here."]);
    expect(draw(points([2014, NaN]))).toEqual(["No chart: nothing was measured here."]);
    expect(draw(points([NaN, 150], [Infinity, 150]))).toEqual(["No chart: nothing was measured here."]);
  });

  test("an empty series beside a full one is left out of the drawing and of the legend", () => {
    const lines = chart({
      series: [
        { name: "cylinder 3", points: points([2014, 150]) },
        { name: "median of the others", points: [] },
      ],
      width: 72,
      unicode: true,
    });
    expect(lines.join("\n")).toContain("● cylinder 3");
    expect(lines.join("\n")).not.toContain("median");
  });

  test.each([148.4, 0, -3, 0.003, 1023.3, 987654])(
    "level readings of %d stand at a label within half a percent of them",
    (y) => {
      for (const list of [points([2014, y], [2026, y]), points([2020, y])]) {
        const lines = draw(list);
        expect(markersIn(lines)).toBe(list.length);
        expect(Math.abs((labelAt(lines) ?? NaN) - y)).toBeLessThanOrEqual(Math.abs(y) * 0.005);
      }
    },
  );

  test("148.4 is labelled 148.4", () => {
    expect(labelAt(draw(points([2014, 148.4], [2026, 148.4])))).toBe(148.4);
  });

  test.each([1e5, 1e9, 1e300])("a range of %d takes no more rows than any other", (y) => {
    const lines = draw(points([2014, 0], [2026, y]));
    expect(rowsOf(lines)).toHaveLength(9);
    for (const { label = 0 } of rowsOf(lines)) expect(label).toBeLessThanOrEqual(2e9);
  });

  test("given ends of the scale clip: what lies beyond is an arrow at the edge and is explained", () => {
    const lines = draw(points([2014, 50], [2018, 120], [2022, 400]), { low: 100, high: 150 });
    const labels = rowsOf(lines).flatMap(({ label }) => label ?? []);
    expect(Math.min(...labels)).toBe(100);
    expect(Math.max(...labels)).toBeLessThanOrEqual(200);
    expect(rowsOf(lines)[0]?.plot).toContain("▲");
    expect(rowsOf(lines).at(-1)?.plot).toContain("▼");
    expect(lines.join("\n")).toContain("▲ above the scale; ▼ below the scale");
  });

  test("a value far beyond the scale leaves the rest of the line on its own rows", () => {
    const lines = draw(points([2014, 150], [2018, 150], [2022, 9000]), { low: 100, high: 150 });
    expect(rowsOf(lines).find(({ label }) => label === 150)?.plot).toMatch(/^●─+●/);
  });

  test("one end of the scale may be given, even beyond all readings", () => {
    for (const ends of [{ low: 0 }, { high: 200 }, { low: 500 }, { high: 10 }])
      expect(rowsOf(draw(points([2014, 150], [2016, 140]), ends))).toHaveLength(9);
  });

  test.each([2, 8, 12, 40])("a height of %i is that many rows", (height) => {
    expect(rowsOf(draw(points([2014, 150], [2026, 120]), { height }))).toHaveLength(height);
  });

  test.each([
    [{ height: 41 }, "height must be a whole number within 2 … 40, got 41"],
    [{ height: 1 }, "height must be a whole number within 2 … 40, got 1"],
    [{ height: 8.5 }, "height must be a whole number within 2 … 40, got 8.5"],
    [{ width: 201 }, "width must be a whole number within 40 … 200, got 201"],
    [{ low: 10, high: 10 }, "low must be below high"],
    [{ low: NaN }, "low must be below high"],
    [{ high: Infinity }, "low must be below high"],
    [{ series: [] }, "the number of series must be a whole number within 1 … 6, got 0"],
  ])("%j is refused", (more, said) => {
    expect(() => draw(points([2014, 150]), more)).toThrow(said);
    expect(() => draw(points([2014, 150]), more)).toThrow(RangeError);
  });

  test("every reading stands within half a step of its label", () => {
    const reading = fc.integer({ min: 500, max: 4000 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(
        fc.array(reading, { minLength: 2, maxLength: 12 }),
        fc.integer({ min: 2, max: 10 }),
        (ys, height) => {
          const lines = draw(
            ys.map((y, i) => ({ x: 2000 + i, y })),
            { height },
          );
          const rows = rowsOf(lines);
          const labels = rows.flatMap(({ label }) => label ?? []);
          expect(labels).toHaveLength(height);
          const step = (labels[0] ?? 0) - (labels[1] ?? 0);
          // one test a year: the markers, from left to right, are the readings in order
          const found = rows.flatMap(({ label = NaN, plot }) =>
            [...plot].flatMap((sign, column) => (sign === "●" ? [{ column, label }] : [])),
          );
          found.sort((a, b) => a.column - b.column);
          expect(found).toHaveLength(ys.length);
          found.forEach(({ label }, i) =>
            expect(Math.abs(label - (ys[i] ?? NaN))).toBeLessThanOrEqual(step / 2 + 1e-9),
          );
        },
      ),
      { numRuns: 500 },
    );
  });

  test("the labels step by 1, 2, 2.5 or 5 times a power of ten and are multiples of the step", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 1e6, noNaN: true }),
        fc.double({ min: 1.01, max: 100, noNaN: true }),
        (low, times) => {
          const labels = rowsOf(draw(points([2014, low], [2026, low * times]))).flatMap(
            ({ label }) => label ?? [],
          );
          const step = (labels[0] ?? 0) - (labels[1] ?? 0);
          const mantissa = Number((step / 10 ** Math.floor(Math.log10(step * 1.000001))).toPrecision(4));
          expect([1, 2, 2.5, 5]).toContain(mantissa);
          const least = labels.at(-1) ?? NaN;
          expect(Math.abs(least / step - Math.round(least / step))).toBeLessThan(1e-5);
          expect(least).toBeLessThanOrEqual(low + step * 1e-8);
          expect(least + step).toBeGreaterThan(low - step * 1e-8);
        },
      ),
      { numRuns: 500 },
    );
  });
});
