// The sheets of data/faults: whole, sound, honest about where each statement comes from, and what the core carries.
// Numbers: handbook/diagnosis.md 2, 3 and 6, all of them judgement there.

import { readFileSync, readdirSync } from "node:fs";
import { type Faults, faultSheets, parseTable, readFaults, shippedFaults } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { withoutTopComments } from "../../packages/core/src/record/index.ts";

const read = (path: string): string => readFileSync(new URL(`../../data/${path}`, import.meta.url), "utf8");
const texts = Object.fromEntries(faultSheets.map((name) => [name, read(`faults/${name}`)]));
const faults = shippedFaults();

/** The rows of a sheet by column name, read without the reader of the tables. */
const rowsOf = (text: string): readonly Readonly<Record<string, string>>[] => {
  const { table, problems } = parseTable(withoutTopComments(text), "sheet");
  expect(problems).toEqual([]);
  return table.rows.map(({ cells }) =>
    Object.fromEntries(table.header.map(({ name }, i) => [name, cells[i]?.text ?? ""])),
  );
};

const findingRows = faultSheets
  .filter((name) => name.startsWith("finding-"))
  .flatMap((name) => rowsOf(texts[name] ?? "").map((row) => ({ name, ...row })));

test("every sheet is read without a fault and without a caution", () => {
  const outcome = readFaults(texts);
  expect(outcome.ok ? outcome.cautions : outcome.problems).toEqual([]);
});

test("the tables the core carries are those of the sheets", () => {
  const outcome = readFaults(texts);
  expect(outcome.ok && outcome.value).toEqual(faults);
});

test("the folder holds the sheets, a page that explains them, and nothing else", () => {
  const names = readdirSync(new URL("../../data/faults/", import.meta.url));
  expect(names.toSorted()).toEqual([...faultSheets, "README.md"].toSorted());
});

test("each sheet says at its top what it holds and that its numbers are judgement", () => {
  const silent = Object.entries(texts).filter(([, text]) => !/^# \S/.test(text) || !/judgement/i.test(text));
  expect(silent.map(([name]) => name)).toEqual([]);
});

// 19 findings of 27 causes.
test("19 findings with 27 causes make 513 rows of chances, and each adds up to 1", () => {
  const sums = Object.values(faults.findings).flatMap(({ columns }) =>
    columns.map(({ chances }) => chances.reduce((sum, chance) => sum + chance, 0)),
  );
  expect(sums).toHaveLength(513);
  expect(sums.filter((sum) => Math.abs(sum - 1) > 1e-9)).toEqual([]);
});

test("a cause and a finding are linked by something published, by common practice, or by judgement", () => {
  expect(findingRows).toHaveLength(513);
  const known = new Set(findingRows.map((row) => (row as Record<string, string>).link));
  expect(known).toEqual(new Set(["published", "common practice", "judgement"]));
});

test("every chance is called judgement, since nobody has published one", () => {
  expect(new Set(findingRows.map((row) => (row as Record<string, string>).status))).toEqual(
    new Set(["judgement"]),
  );
});

test("what is called published names sources of data/sources.csv, and nothing else does", () => {
  const keys = new Set(rowsOf(read("sources.csv")).map(({ key }) => key));
  const shifts = rowsOf(texts["shifts.csv"] ?? "").map((row) => ({ ...row, link: row.status }));
  const rows = [...findingRows, ...shifts] as readonly Readonly<Record<string, string>>[];
  const isKeyed = ({ source = "" }: Readonly<Record<string, string>>): boolean =>
    source.split(" ").every((key) => keys.has(key));
  expect(rows.filter((row) => isKeyed(row) !== (row.link === "published"))).toEqual([]);
});

test("a published link is shown with the titles of its sources", () => {
  const path = faults.findings.path.columns[faults.causes.findIndex(({ code }) => code === "plug-seal")];
  expect(path?.source).toBe(
    "Continental, SB03-3 and manuals that repeat it, 2003; Lycoming, IO-390-D maintenance manual chapter 72-30, 2020",
  );
});

// Handbook/diagnosis.md 2, the list of local priors.
test.each([
  ["exhaust-valve", 0.0138],
  ["worn-rings-or-bore", 0.00668],
  ["plug-seal", 0.0064],
  ["sticking-valve", 0.0044],
  ["tight-lash", 0.00388],
  ["intake-valve", 0.00368],
  ["gasket-to-coolant", 0.00316],
  ["broken-ring-or-piston", 0.00312],
  ["none-of-these", 0.00268],
  ["carbon", 0.0024],
  ["stuck-rings", 0.00236],
  ["crack", 0.00212],
  ["intake-lobe", 0.00212],
  ["valve-spring", 0.0015],
  ["exhaust-lobe", 0.0008],
  ["intake-valve-not-opening", 0.00042],
  ["low-compression-ratio", 0.0004],
  ["bent-valve", 0.000216],
])("before anything is measured %s has a chance of %d in one cylinder", (code, prior) => {
  expect(faults.causes.find((cause) => cause.code === code)?.prior).toBe(prior);
});

test("a gasket to the neighbour, late or early cams and conditions of the test have no chance in one cylinder alone", () => {
  const without = faults.causes.filter(({ prior }) => prior === undefined).map(({ code }) => code);
  expect(without).toEqual([
    "no-fault",
    "gasket-to-neighbour",
    "cam-retarded",
    "cam-advanced",
    "washed-or-dry-bores",
    "throttle-or-filter",
    "slow-cranking",
    "gauge-or-hose",
    "compression-release",
  ]);
});

// Handbook/diagnosis.md 2, the table of factors.
test.each([
  ["diesel", "exhaust-valve", "factor", 0.5],
  ["release possible", "all compression-release", "odds", 0.6],
  ["release active", "all compression-release", "odds", 9],
  ["stood 6 months or more", "some washed-or-dry-bores", "factor", 5],
  ["service: lash", "some tight-lash", "factor", 6],
  ["service: timing drive", "all cam-retarded", "factor", 15],
  ["event: overheated", "crack", "factor", 6],
  ["event: timing drive or over-rev", "some bent-valve", "factor", 40],
  ["event: water drawn in", "low-compression-ratio", "factor", 40],
  ["throttle closed", "all throttle-or-filter", "factor", 10],
  ["speed low", "all slow-cranking", "factor", 8],
  ["gauge proved", "all gauge-or-hose", "factor", 0.15],
] as const)("%s shifts %s by the %s %d", (when, entry, kind, value) => {
  expect(faults.shifts.find((shift) => shift.when === when && shift.entry === entry)?.by).toEqual({ kind, value });
});

// Handbook/diagnosis.md 3, the column "classes (bounds)".
test.each([
  ["wet", [-0.15, 0.05, 0.05, 0.1, 0.1, 0.25, 0.25, 0.8]],
  ["first-stroke", [0.4, 0.85, 0.85, 1.15, 1.15, 1.9]],
  ["leak", [0.15, 0.8, 0.8, 1.06, 1.06, 1.75, 1.75, 8]],
  ["running", [0.2, 0.85, 0.85, 1.15, 1.15, 1.8]],
] as const)("the classes of %s lie between %j", (name, bounds) => {
  const shapes = faults.findings[name].shapes;
  expect(shapes.flatMap((shape) => (shape.kind === "between" ? [shape.low, shape.high] : []))).toEqual(bounds);
});

test("a normal level lies round 1 with a deviation of 2.5 %", () => {
  expect(faults.findings.level.shapes[4]).toEqual({ kind: "around", middle: 1, deviation: 0.025 });
});

// Handbook/diagnosis.md 4.
test("level, leak and running grow with the leak; oil, first stroke and oil in a leak-down follow the rings", () => {
  const of = (kind: "size" | "oil"): readonly string[] =>
    Object.values(faults.findings).flatMap(({ name, dependence }) => (dependence === kind ? [name] : []));
  expect(of("size")).toEqual(["level", "leak", "running"]);
  expect(of("oil")).toEqual(["wet", "first-stroke", "oiled"]);
});

// Handbook/diagnosis.md 6, the table of tests.
test("the tests cost the minutes, risks and tools of the handbook", () => {
  const costs = faults.tests.map(({ code, minutes, risk, tool }) => `${code} ${minutes} ${risk} ${tool}`.trim());
  expect(costs).toEqual([
    "repeat 5 0",
    "first-stroke 12 0",
    "wet 10 1",
    "conditions 20 0",
    "second-gauge 10 0 second gauge",
    "lash 20 0",
    "release 10 1",
    "borescope 15 0 borescope",
    "leak-down-and-listen 25 2 leak-down tester",
    "leak-down-lower-down 15 2 leak-down tester",
    "coolant 15 1 coolant tester",
    "re-seat-and-repeat 10 1 leak-down tester",
    "re-index-the-neighbour 10 2 leak-down tester",
    "cranking 12 0",
    "running 15 2",
    "retest-warm 45 1",
  ]);
});

test("oil is never proposed for a diesel, nor where it would fill half the chamber", () => {
  const wet: Faults["tests"][number] | undefined = faults.tests.find(({ code }) => code === "wet");
  expect(wet?.blocked).toEqual(["diesel", "oil above half the chamber", "oil not allowed"]);
});

test("every test with air in the cylinder needs a crank that can be held", () => {
  const withAir = faults.tests.filter(({ tool }) => tool === "leak-down tester");
  expect(withAir).toHaveLength(4);
  expect(withAir.filter(({ blocked }) => !blocked.includes("crank cannot be held"))).toEqual([]);
});
