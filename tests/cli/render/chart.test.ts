import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chart } from "../../../packages/cli/src/render/chart.ts";
import { displayWidth } from "../../../packages/cli/src/render/width.ts";
import { draw, markersIn, points, rowsOf } from "./drawn-chart.ts";

describe("one cylinder against its fellows", () => {
  const years = [2014.4, 2016.4, 2018.4, 2024.4, 2026.4];
  const cylinder = { name: "cylinder 3", points: years.map((x, i) => ({ x, y: 148 - 4 * i })) };
  const others = { name: "median of 1 2 4", points: years.map((x) => ({ x, y: 149 })) };

  test("tests stand true to time: six years are three times as long as two", () => {
    const rows = rowsOf(chart({ series: [cylinder], width: 80, unicode: true }));
    const at = rows
      .flatMap(({ plot }) => [...plot].flatMap((sign, column) => (sign === "●" ? [column] : [])))
      .sort((a, b) => a - b);
    const [a = 0, b = 0, c = 0, d = 0] = at;
    expect(Math.abs(d - c - 3 * (c - b))).toBeLessThanOrEqual(3);
    expect(Math.abs(c - b - (b - a))).toBeLessThanOrEqual(1);
  });

  test("a year's label stands under its tick", () => {
    const lines = chart({ series: [cylinder], width: 80, unicode: true });
    const axis = lines.findIndex((line) => line.includes("└"));
    const ticks = [...(lines[axis] ?? "")].flatMap((sign, i) => (sign === "┬" ? [i] : []));
    const labels = [...(lines[axis + 1] ?? "").matchAll(/\d{4}/g)];
    expect(labels.map(([text]) => text)).toEqual(["2016", "2018", "2020", "2022", "2024", "2026"]);
    expect(labels.map(({ index }) => index + 2)).toEqual(ticks);
  });

  test("tests within a year are labelled by months", () => {
    const text = draw(points([2026.1, 150], [2026.6, 148])).join("\n");
    expect(text).toMatch(/2026-0\d .*2026-0\d/);
  });

  test("a meter axis has round numbers, given ticks replace both", () => {
    expect(draw(points([1200, 150], [2900, 140]), { axis: "meter" }).join("\n")).toMatch(/1500 +2000 +2500/);
    const given = draw(points([2014, 150], [2026, 140]), {
      xTicks: [
        { x: 2014, text: "first" },
        { x: 2026, text: "last" },
        { x: 2050, text: "later" },
      ],
    });
    expect(given.join("\n")).toMatch(/first +last/);
    expect(given.join("\n")).not.toContain("later");
  });

  test("services stand as letters under the axis, with a key, two of one day side by side", () => {
    const marks = [
      { x: 2018.4, text: "valve job 2018-05" },
      { x: 2018.4, text: "red gauge" },
      { x: 2016, text: "oil change" },
    ];
    const lines = chart({ series: [cylinder], marks, width: 80, unicode: true });
    expect(lines.some((line) => /^ +a +bc$/.test(line))).toBe(true);
    expect(lines.at(-1)?.trim()).toBe("a oil change; b valve job 2018-05; c red gauge");
  });

  test("sixty services are lettered up to the fifty-second, the rest counted", () => {
    const marks = Array.from({ length: 60 }, (_, i) => ({ x: 2010 + i / 5, text: `oil ${String(i)}` }));
    expect(chart({ series: [cylinder], marks, width: 80, unicode: true }).join(" ")).toContain("and 8 more");
  });

  test("the legend says in words which sign is which, and one sign stands where both meet", () => {
    const lines = chart({ series: [cylinder, others], width: 80, unicode: true });
    expect(lines.at(-1)?.trim()).toBe("● cylinder 3; ○ median of 1 2 4");
    const meeting = chart({
      series: [cylinder, { ...others, points: cylinder.points.slice(0, 1) }],
      width: 80,
      unicode: true,
    });
    expect(meeting.at(-1)?.trim()).toBe("● cylinder 3; ○ median of 1 2 4; ◉ both on one spot");
  });

  test("ASCII mode uses nothing but ASCII", () => {
    const lines = chart({
      series: [cylinder, others],
      marks: [{ x: 2016, text: "oil change" }],
      width: 80,
      unit: "psi",
      low: 135,
      high: 148.5,
      unicode: false,
    });
    expect(lines.join("\n")).toMatch(/^[\x20-\x7e\n]*$/);
    expect(lines.at(-2)?.trim()).toBe("* cylinder 3; o median of 1 2 4; v below the scale");
  });

  test("readings of one day share a column and are all shown", () => {
    expect(markersIn(draw(points([2020, 150], [2020, 140], [2020, 130])))).toBe(3);
  });

  test("escapes in names, units, marks and ticks are written out", () => {
    const bad = "\x1b[2J\u202e";
    const text = chart({
      series: [{ name: bad, points: cylinder.points }],
      marks: [{ x: 2016, text: bad }],
      xTicks: [{ x: 2016, text: bad }],
      unit: bad,
      width: 80,
      unicode: true,
    }).join("");
    expect(text).not.toContain("\x1b");
    expect(text).not.toContain("\u202e");
  });

  test("the unit stands whole above the labels", () => {
    expect(draw(points([2014, 9], [2026, 10]), { unit: "kgf/cm2" })[0]?.trim()).toBe("kgf/cm2");
  });
});

describe("whatever the series", () => {
  const x = fc.oneof(
    fc.double({ min: 1900, max: 2100, noNaN: true }),
    fc.integer({ min: 2019, max: 2021 }),
    fc.double(),
  );
  const y = fc.oneof(
    fc.double({ min: 0, max: 5000, noNaN: true }),
    fc.integer({ min: 140, max: 150 }),
    fc.double(),
    fc.constantFrom(null, undefined),
  );
  const one = fc.record({
    name: fc.constantFrom("cylinder 3", "median of 1 2 4"),
    points: fc.array(fc.record({ x, y }), { maxLength: 25 }),
  });
  const anything = fc.record({
    series: fc.array(one, { minLength: 1, maxLength: 6 }),
    marks: fc.array(fc.record({ x, text: fc.constant("oil change") }), { maxLength: 6 }),
    axis: fc.constantFrom("dates" as const, "meter" as const),
    height: fc.integer({ min: 2, max: 40 }),
    width: fc.integer({ min: 40, max: 200 }),
    unicode: fc.boolean(),
  });

  test("a chart never throws, keeps its size and never prints NaN, undefined or Infinity", () => {
    fc.assert(
      fc.property(anything, (options) => {
        const lines = chart(options);
        expect(lines.join("\n")).not.toMatch(/NaN|undefined|Infinity|null|e[+-]\d/);
        expect(Math.max(...lines.map(displayWidth))).toBeLessThanOrEqual(options.width);
        if (lines.length > 1) expect(rowsOf(lines)).toHaveLength(options.height);
      }),
      { numRuns: 1500 },
    );
  });
});
