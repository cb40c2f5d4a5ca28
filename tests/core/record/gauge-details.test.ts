// gauges.csv: what a gauge may say of itself beyond its dial. Contract: design.md section 3.

import { gaugeColumns, gaugeStanding, readGauges, readKnownHole } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { marked } from "./sample.ts";

const header = gaugeColumns.join(",");
type Cells = Readonly<Record<string, string>>;

/** Rows of gauges.csv by column name. */
const fileOf = (...rows: readonly Cells[]): string =>
  [header, ...rows.map((row) => gaugeColumns.map((name) => row[name] ?? "").join(","))].join("\n") + "\n";
const read = (...rows: readonly Cells[]) => readGauges(fileOf(...rows), "gauges.csv");
const faults = (...rows: readonly Cells[]) => marked(read(...rows).problems, fileOf(...rows));

const tester: Cells = { gauge: "tester", kind: "leak-down", unit: "psi" };
const red: Cells = { gauge: "red", kind: "compression", unit: "psi" };
const black: Cells = { gauge: "black", kind: "compression", unit: "psi" };

test("everything that is known of a tester is kept in SI", () => {
  const { gauges, problems } = read({
    ...tester,
    full_scale: "100",
    restrictor_mm: "1.016",
    restrictor_tol_mm: "0.025",
    restrictor_length_mm: "6.35",
    profile: "coned",
    restrictor_cd: "0.87",
    regulated: "80",
    dial: "pressure",
    matched: "yes",
    known_holes: "0.80mm:74psi 1.00mm:66psi",
  });
  expect(problems).toEqual([]);
  // 1 psi = 6894.757 Pa (pound and inch of 1959): 80 psi = 551580.6 Pa, 74 psi = 510212.0 Pa, 66 psi = 455054.0 Pa
  expect(gauges).toEqual([
    {
      id: "tester",
      kind: "leak-down",
      unit: "psi",
      fullScale: expect.closeTo(689_475.7, 0) as number,
      restrictor: expect.closeTo(0.001016, 9) as number,
      restrictorTolerance: expect.closeTo(0.000025, 9) as number,
      restrictorLength: expect.closeTo(0.00635, 9) as number,
      profile: "coned",
      restrictorCd: 0.87,
      regulated: expect.closeTo(551_580.6, 0) as number,
      dial: "pressure",
      matched: true,
      knownHoles: [
        {
          text: "0.80mm:74psi",
          hole: expect.closeTo(0.0008, 9) as number,
          reads: expect.closeTo(510_212, 0) as number,
          holds: "pressure",
        },
        {
          text: "1.00mm:66psi",
          hole: expect.closeTo(0.001, 9) as number,
          reads: expect.closeTo(455_054, 0) as number,
          holds: "pressure",
        },
      ],
    },
  ]);
});

test("a compression gauge may read high or low, and says where its valve sits and what its hose holds", () => {
  expect(
    read(
      { ...red, unit: "bar", reads_high: "0.2", valve_end: "plug", hose_cm3: "8" },
      { ...black, unit: "bar", reads_high: "-0.1", valve_end: "gauge" },
    ).gauges,
  ).toEqual([
    { id: "red", kind: "compression", unit: "bar", readsHigh: 20_000, valveEnd: "plug", hose: 8e-6 },
    { id: "black", kind: "compression", unit: "bar", readsHigh: -10_000, valveEnd: "gauge" },
  ]);
});

test("a dial in percent does not show its supply, which then carries its own unit", () => {
  expect(read({ ...tester, unit: "%", dial: "percent-lost", regulated: "6bar" }).gauges).toMatchObject([
    { regulated: 600_000 },
  ]);
  expect(faults({ ...tester, unit: "%", dial: "percent-lost", regulated: "80" })).toEqual([
    "unit-missing@2 80",
  ]);
});

test("a hole read on a dial in percent keeps the fraction lost, also where the dial shows what is held", () => {
  expect(readKnownHole("1.0mm:35%", "percent-lost")).toMatchObject({ reads: 0.35, holds: "lost" });
  expect(
    read({ ...tester, dial: "percent-held", known_holes: "1.0mm:65%" }).gauges[0]?.knownHoles?.[0]?.reads,
  ).toBeCloseTo(0.35, 12);
});

test.each([
  ["a size without its unit", "0.8:74psi"],
  ["a reading without its unit", "0.8mm:74"],
  ["a hole as wide as a finger", "12mm:3psi"],
  ["more than all", "1.0mm:135%"],
  ["a reading above any supply", "1.0mm:400psi"],
  ["no reading", "1.0mm"],
])("%s is no hole with its reading", (_, cell) => {
  expect(faults({ ...tester, known_holes: `1.0mm:60psi ${cell}` })).toEqual([
    `known-hole-bad@2 1.0mm:60psi ${cell}`,
  ]);
});

const foundIn = (cells: Cells): readonly string[] =>
  read({ ...tester, ...cells }).problems.map(({ found }) => found);

test.each([
  [
    "1.0mm:55psi 1.25mm:66psi",
    {},
    "1.0mm:55psi and 1.25mm:66psi do not go together: the larger hole lost no more",
  ],
  ["0.8mm:7% 1.0mm:6%", {}, "0.8mm:7% and 1.0mm:6% do not go together: the larger hole lost no more"],
  [
    "0.8mm:66psi 1.0mm:66psi",
    {},
    "0.8mm:66psi and 1.0mm:66psi do not go together: the larger hole lost no more",
  ],
  ["1.0mm:90psi", { regulated: "80" }, "1.0mm:90psi does not lie below the supply of 80 psi"],
  [
    "1.0mm:83psi",
    { regulated: "80", reads_high: "3" },
    "1.0mm:83psi does not lie below the supply of 80 psi",
  ],
  ["1.0mm:75psi", { full_scale: "60" }, "1.0mm:75psi is more than the dial can show (60 psi)"],
  ["1.0mm:0%", {}, "1.0mm:0% lost nothing"],
  ["1.0mm:0%", { dial: "percent-held" }, "1.0mm:0% lost all"],
  ["0.8mm:0psi 1.0mm:55psi", {}, "0.8mm:0psi lost all"],
  ["1.0mm:55psi 1mm:56psi", {}, "1.0mm:55psi and 1mm:56psi are the same hole"],
  ["0.8mm:74psi 1.0mm:40%", {}, "0.8mm:74psi and 1.0mm:40%: one in percent, one in pressure"],
  ["1.0mm:55psi", { dial: "percent-lost" }, "1.0mm:55psi is a pressure, and the dial shows percent"],
])("the holes %s cannot be right beside %j", (known_holes, more: Cells, found) => {
  expect(foundIn({ ...more, known_holes })).toEqual([found]);
  expect(read({ ...tester, ...more, known_holes }).gauges).toEqual([]);
});

test("a reading near the supply, and one at the end of the dial, are readings", () => {
  expect(foundIn({ known_holes: "0.2mm:79.5psi", regulated: "80", full_scale: "100" })).toEqual([]);
  // 5.5158 bar = 80.0 psi
  expect(foundIn({ known_holes: "0.2mm:5.5158bar", full_scale: "80" })).toEqual([]);
});

test.each([
  ["1.0mm 55psi", "write 1.0mm:55psi if that is meant"],
  ["1.00:66psi 0.8mm=74psi", "write 1.00mm:66psi 0.8mm:74psi if that is meant"],
  ["0.8mm:74", "write 0.8mm:74psi if that is meant"],
  ["1.0 mm: 55 psi; 0.8 mm: 74 psi", "write 1.0mm:55psi 0.8mm:74psi if that is meant"],
  [
    "fifty",
    "write size and reading with a colon and no blank between, a blank between the holes, or empty the cell",
  ],
  [
    "12mm:3psi",
    "write size and reading with a colon and no blank between, a blank between the holes, or empty the cell",
  ],
])("of the cell %s the mend says what to write in it", (known_holes, mend) => {
  const [problem] = read({ ...tester, known_holes }).problems;
  expect([problem?.code, problem?.mend]).toEqual(["known-hole-bad", mend]);
  const mended = /^write (.*) if that is meant$/.exec(mend)?.[1];
  if (mended !== undefined) expect(read({ ...tester, known_holes: mended }).problems).toEqual([]);
});

test.each([
  ["full_scale", "-300"],
  ["full_scale", "0"],
  ["full_scale", "99999"],
  ["division", "0"],
  ["division", "-5"],
  ["reads_high", "400"],
  ["reads_high", "-80"],
  ["regulated", "0"],
  ["regulated", "-5"],
  ["regulated", "-80psi"],
  ["regulated", "-5psi"],
  ["regulated", "0psi"],
  ["regulated", "80bar"],
  ["regulated", "4.9"],
  ["regulated", "201"],
  ["class_percent", "0"],
  ["restrictor_mm", "0"],
  ["restrictor_tol_mm", "0.6"],
  ["restrictor_length_mm", "0"],
  ["restrictor_cd", "0"],
  ["link_u", "0"],
])("%s %s is out of range, at its cell", (column, text) => {
  const linked: Cells = column === "link_u" ? { ...link, link_to: "other" } : {};
  const cells = { ...tester, restrictor_mm: "1.0", ...linked, [column]: text };
  const other = { ...tester, gauge: "other" };
  expect(marked(read(cells, other).problems, fileOf(cells, other))).toEqual([`number-range@2 ${text}`]);
});

test("the supply has the bounds that it has in tests.csv, 5 to 200 psi, in whatever unit", () => {
  for (const regulated of ["5", "200", "80psi", "5.5bar", "550kPa", "13bar"])
    expect(foundIn({ regulated })).toEqual([]);
  expect(read({ ...tester, regulated: "80bar" }).problems[0]?.expected).toBe(
    "regulated in bar from 0.34 to 14",
  );
});

test("cells of the other kind of gauge are not used, and said so", () => {
  const { gauges, problems } = read({
    ...red,
    restrictor_mm: "1.0",
    known_holes: "1.0mm 55psi",
    dial: "pressure",
  });
  expect(gauges).toEqual([{ id: "red", kind: "compression", unit: "psi" }]);
  expect(problems.map(({ code, severity }) => [code, severity])).toEqual([
    ["gauge-other-kind", "caution"],
    ["gauge-other-kind", "caution"],
  ]);
});

const link: Cells = { link_to: "red", link_factor: "1.031", link_u: "0.006", link_date: "2026-05-03" };

test("a link to another gauge is its name, the factor, the uncertainty of its logarithm and the day", () => {
  const { gauges, problems } = read(red, { ...black, ...link });
  expect(problems).toEqual([]);
  expect(gauges[1]?.link).toEqual({ to: "red", factor: 1.031, uncertainty: 0.006, date: "2026-05-03" });
});

test.each([
  ["to itself", { ...link, link_to: "black" }, "link-bad@3 black"],
  ["to a gauge that is not there", { ...link, link_to: "rod" }, "link-bad@3 rod"],
  ["without its factor", { ...link, link_factor: "" }, "link-partial@3 red"],
  ["without a name", { ...link, link_to: "" }, "link-partial@3 1.031"],
  ["of a day that is none", { ...link, link_date: "2026-02-30" }, "date-bad@3 2026-02-30"],
  ["with a factor out of reason", { ...link, link_factor: "103" }, "number-range@3 103"],
])("a link %s is a fault, and the gauge is left out", (_, cells: Cells, fault) => {
  expect(faults(red, { ...black, ...cells })).toEqual([fault]);
  expect(read(red, { ...black, ...cells }).gauges.map(({ id }) => id)).toEqual(["red"]);
});

test("links that lead back to where they began are a fault at each of them; a compression gauge is no leak-down tester", () => {
  expect(faults({ ...red, ...link, link_to: "black" }, { ...black, ...link })).toEqual([
    "link-bad@2 black",
    "link-bad@3 red",
  ]);
  expect(faults(red, { ...tester, ...link })).toEqual(["link-bad@3 red"]);
});

test("links are followed to their end, and their factors multiply", () => {
  const blue: Cells = {
    gauge: "blue",
    kind: "compression",
    unit: "psi",
    ...link,
    link_to: "black",
    link_factor: "0.98",
  };
  const { gauges } = read(red, { ...black, ...link }, blue);
  expect(gaugeStanding(gauges, "blue")).toMatchObject({
    counts: "red",
    links: [{ gauge: "blue" }, { gauge: "black" }],
  });
  expect(gaugeStanding(gauges, "blue").factor).toBeCloseTo(0.98 * 1.031, 12);
  expect(gaugeStanding(gauges, "red")).toEqual({ counts: "red", factor: 1, links: [] });
  expect(gaugeStanding(gauges, "never heard of")).toEqual({ counts: "never heard of", factor: 1, links: [] });
});
