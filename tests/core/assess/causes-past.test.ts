// From the logbook to what the diagnosis goes by: the engine, its past, what was seen. Readings invented.

import { expect, test } from "vitest";
import { type Row, type Written, assessed } from "./records.ts";

const year = (date: string, cells: string, more: Partial<Row> = {}): Row => ({
  test: `${date}a`,
  cells,
  ...more,
});
const low = year("2026-05-02", "150 148 110 151");
const evidenceOf = (written: Partial<Written>) => assessed({ tests: [low], ...written }).evidence;
const whens = (written: Partial<Written>) => evidenceOf(written)?.circumstances.map(({ when }) => when);

test.each([
  ["diesel", { ignition: "compression" }],
  ["individual barrels", { sharedGasket: false }],
  ["air-cooled", { cooling: "air" }],
  ["release possible", { compressionRelease: "automatic" }],
  ["two-stroke, ports only", { cycle: "two-stroke" }],
  ["two-stroke, exhaust valves", { cycle: "two-stroke", porting: "ports-and-exhaust-valve" }],
] as const)("%s is known from engine.json", (when, engine) => {
  expect(whens({ engine })).toContain(when);
  expect(whens({})).not.toContain(when);
});

const speed = { limits: { compression: { speed: "250rpm" } } };
test.each([
  ["cold", { engine_temp: "cold" }, {}],
  ["throttle open", { throttle: "open" }, {}],
  ["release active", { release: "active" }, { compressionRelease: "manual" }],
  ["speed recorded and enough", { crank_rpm: "245" }, speed],
  ["speed low", { crank_rpm: "180" }, speed],
] as const)("%s is known from the day", (when, more, engine) => {
  expect(whens({ engine, tests: [{ ...low, ...more }] })).toContain(when);
  expect(whens({ engine })).not.toContain(when);
});

test("a speed that nothing tells the right one of is neither enough nor low", () => {
  expect(whens({ tests: [{ ...low, crank_rpm: "180" }] })).toEqual([]);
});

test("below the least speed that any maker allows cranking is slow, whatever the engine's own tests say", () => {
  const before = year("2025-05-02", "150 148 151 150", { crank_rpm: "130", gauge: "red" });
  expect(whens({ tests: [{ ...low, crank_rpm: "139" }] })).toEqual(["speed low"]);
  expect(whens({ tests: [before, { ...low, crank_rpm: "130", gauge: "red" }] })).toEqual(["speed low"]);
});

// trade.md A9: a release worked by hand is open only where somebody opened it
test("a release worked by hand is asked for, and no odds are given for it", () => {
  const engine = { compressionRelease: "manual" };
  expect(whens({ engine })).toEqual([]);
  expect(assessed({ tests: [low], engine }).missing[0]).toMatch(/^compression release, open or shut/);
});

test("a release that was defeated is out of the question", () => {
  const engine = { compressionRelease: "automatic" };
  expect(whens({ engine, tests: [{ ...low, release: "defeated" }] })).toEqual([]);
});

test.each([
  ["valve lash,3,", "service: lash", [2]],
  ["head gasket,,", "service: head off", undefined],
  ["valve job,2 3,2 3", "service: head off", [1, 2]],
  ["timing drive,,", "service: timing drive", undefined],
  ["re-ring,,", "service: rings or bores", undefined],
  ["plugs,,", "service: plugs or injectors", undefined],
  ["overheated,,", "event: overheated", undefined],
  ["over-rev,,", "event: timing drive or over-rev", undefined],
  ["water drawn in,3,", "event: water drawn in", [2]],
  ["flooded,,", "event: flooded", undefined],
  ["storage,,,me,7 months", "stood 6 months or more", undefined],
  ["storage,,,me,1 year", "stood 6 months or more", undefined],
] as const)("%s since the last test counts, with the cylinders it touched", (service, when, cylinders) => {
  const of = (date: string) =>
    evidenceOf({
      tests: [year("2025-05-02", "150 148 151 150"), low],
      services: [`${date},,${service}`],
    })?.circumstances.find((one) => one.when === when);
  expect(of("2025-08-01")).toEqual({ when, ...(cylinders === undefined ? {} : { cylinders }) });
  expect(of("2025-04-01")).toBeUndefined();
});

test("five months of standing, or months that nobody wrote down, are no long stand", () => {
  for (const note of ["5 months", ""])
    expect(whens({ services: [`2025-12-01,,storage,,,me,${note}`] })).toEqual([]);
});

test("a repeated test remembers what the first one followed", () => {
  const tests = [
    year("2024-05-02", "150 148 151 150"),
    year("2025-05-02", "150 148 110 151"),
    year("2025-05-04", "150 149 111 150"),
  ];
  const services = ["2025-04-01,,overheated,,", "2025-05-03,,plugs,,"];
  expect(whens({ tests, services })).toEqual(
    expect.arrayContaining(["event: overheated", "service: plugs or injectors"]),
  );
});

test("what befell an engine before its head was mended speaks no longer", () => {
  const services = ["2026-03-01,,overheated,,", "2026-04-01,,head gasket,,"];
  expect(whens({ services })).toEqual(["service: head off"]);
});

test("another gauge than last time counts, unless the two are linked or the new one has a baseline of its own", () => {
  const gauges = (link: string) =>
    `gauge,kind,unit,link_to,link_factor,link_u,link_date\nred,compression,psi,,,,\nblue,compression,psi,${link}\n`;
  const before = year("2025-05-02", "150 148 151 150", { gauge: "red" });
  const now = { ...low, gauge: "blue" };
  const changed = "gauge changed since the last test";
  expect(whens({ tests: [before, now], gauges: gauges(",,,") })).toContain(changed);
  expect(whens({ tests: [before, now], gauges: gauges("red,1.02,.01,2025-06-01") })).not.toContain(changed);
  const own = year("2024-05-02", "150 148 151 150", { gauge: "blue" });
  expect(whens({ tests: [own, before, now], gauges: gauges(",,,") })).not.toContain(changed);
});

test("a gauge that was proved within the year counts as proved, until another one is used", () => {
  const notes = ["2026-01-10,,gauge proved,yes,,"];
  expect(whens({ tests: [{ ...low, gauge: "red" }], notes })).toEqual(["gauge proved"]);
  expect(whens({ notes })).toEqual([]);
  const other = year("2026-02-02", "150 148 151 150", { gauge: "blue" });
  expect(whens({ tests: [other, { ...low, gauge: "red" }], notes })).not.toContain("gauge proved");
});

test("knock is an event of the cylinders it was heard in", () => {
  expect(evidenceOf({ notes: ["2026-04-01,,knock,some,,3"] })?.circumstances).toEqual([
    { when: "event: knock or lean running", cylinders: [2] },
  ]);
  expect(whens({ notes: ["2026-04-01,,knock,none,,3"] })).toEqual([]);
});

// Published: 0.9 L in 3200 km is .281 L/1000km; 1 qt in 1000 miles is .588 L/1000km (handbook/trade.md F1)
test.each([
  ["oil use,none,", "oil use", "absent"],
  ["oil use,heavy,", "oil use", "present"],
  ["oil use,0.2,L/1000km", "oil use", "absent"],
  ["oil use,0.4,L/1000km", "oil use", undefined],
  ["oil use,0.7,L/1000km", "oil use", "present"],
  ["oil use,1.2,qt/1000mi", "oil use", "present"],
  ["oil use,0.3,L/100h", "oil use", undefined],
  ["oil use,0,L/h", "oil use", "absent"],
  ["smoke,blue,", "oil use", "present"],
  ["coolant loss,some,", "coolant loss", "present"],
  ["coolant loss,0.1,L", "coolant loss", undefined],
  ["miss,none,", "miss", "absent"],
  ["blow-by,some,", "blow-by", "present"],
  ["blow-by,30,L/min", "blow-by", undefined],
] as const)("%s: %s is %s", (note, sign, word) => {
  expect(evidenceOf({ notes: [`2026-04-01,,${note},`] })?.signs[sign]).toBe(word);
});

// Three times the first figure is published for oil and blow-by (Caterpillar, handbook/trade.md F1)
test.each([
  ["0.2", "absent"],
  ["0.5", undefined],
  ["0.6", "present"],
] as const)("oil an hour is held against the engine's own first figure of 0.2: %s is %s", (value, word) => {
  const notes = ["2015-04-01,,oil use,0.2,L/100h,", `2026-04-01,,oil use,${value},L/100h,`];
  expect(evidenceOf({ notes })?.signs["oil use"]).toBe(word);
});

test("a note older than a year, from before the mend, or from after the next work says nothing of this test", () => {
  const oil = (date: string, services: readonly string[] = []) =>
    evidenceOf({ notes: [`${date},,oil use,heavy,,`], services })?.signs["oil use"];
  expect(oil("2025-06-01")).toBe("present");
  expect(oil("2025-04-01")).toBeUndefined();
  expect(oil("2026-02-01", ["2026-03-01,,re-ring,,"])).toBeUndefined();
  expect(oil("2026-05-20")).toBe("present");
  expect(oil("2026-05-20", ["2026-05-10,,re-ring,,"])).toBeUndefined();
});

test("gas in the coolant is positive or negative by its words", () => {
  expect(evidenceOf({ notes: ["2026-04-01,,combustion gas in coolant,some,,"] })?.gas).toBe("positive");
  expect(evidenceOf({ notes: ["2026-04-01,,combustion gas in coolant,none,,"] })?.gas).toBe("negative");
  expect(evidenceOf({ notes: ["2026-04-01,,combustion gas in coolant,40,ppm,"] })?.gas).toBeUndefined();
});

const seenOf = (...notes: readonly string[]) =>
  evidenceOf({ notes: notes.map((note) => `2026-05-03,,${note}`) })?.cylinders.map(({ seen }) => seen);

test("what was seen after the test counts for the cylinders that were named", () => {
  expect(seenOf("valve seen,burnt,,3")).toEqual([undefined, undefined, { borescope: "valve" }, undefined]);
  expect(seenOf("score,heavy,,3")?.[2]).toEqual({ borescope: "bore" });
  expect(seenOf("crosshatch,gone,,3")?.[2]).toEqual({ borescope: "bore" });
  expect(seenOf("crown seen,cracked,,3")?.[2]).toEqual({ borescope: "piston" });
  expect(seenOf("lash,tight,,3")?.[2]).toEqual({ lash: "tight" });
  expect(seenOf("lash,right,,")?.[0]).toEqual({ lash: "right" });
  expect(seenOf("lash,tight,,")?.[2]).toBeUndefined();
  expect(seenOf("lash,0.2,mm,3")?.[2]).toBeUndefined();
});

test("nothing was found inside only where valves and walls were both looked at", () => {
  expect(seenOf("valve seen,good,,3")?.[2]).toBeUndefined();
  expect(seenOf("valve seen,good,,3", "crosshatch,full,,3")?.[2]).toEqual({ borescope: "nothing" });
});

test("a second gauge that reads the lowest cylinder alike, or well, is a finding on it", () => {
  const second = (cells: string) =>
    evidenceOf({
      tests: [
        { ...low, gauge: "red", take: "1" },
        year("2026-05-02", "149 148 110 150", { gauge: "red", take: "2" }),
        year("2026-05-02", cells, { gauge: "blue" }),
      ],
    })?.cylinders.map(({ seen }) => seen?.["second-gauge"]);
  expect(second("151 149 111 152")).toEqual([undefined, undefined, "same", undefined]);
  expect(second("151 149 148 152")).toEqual([undefined, undefined, "normal now", undefined]);
  expect(second("151 149 121 152")).toEqual([undefined, undefined, undefined, undefined]);
});

// Six years level, then a fifth lower for good; and the same fall bit by bit.
const years = (third: readonly number[]): readonly Row[] =>
  third.map((value, i) =>
    year(
      `${String(2015 + i)}-05-02`,
      `150 ${String(150 + (i % 2))} ${String(value)} ${String(150 - (i % 2))}`,
    ),
  );
const step = years([150, 151, 150, 149, 150, 151, 120, 121, 120, 119]);
const onsetsOf = (tests: readonly Row[], services: readonly string[] = []) =>
  evidenceOf({ tests, services })?.cylinders.map(({ onset }) => onset);

test("how a cylinder came down is taken from its history", () => {
  expect(onsetsOf(step)?.[2]).toBe("sudden");
  expect(onsetsOf(years([150, 147, 144, 141, 138, 135, 132, 129, 126, 123]))?.[2]).toBe("gradual");
  expect(onsetsOf(step.slice(0, 2))).toEqual([undefined, undefined, undefined, undefined]);
});

// "Steady" is told against the fellows: of an even cylinder it says nothing of a loss that all of them share
test("that it was always so is told of a cylinder that stands out low, never of an even one", () => {
  expect(onsetsOf(step)?.[0]).toBeUndefined();
  const always = years([128, 127, 128, 129, 128, 127, 128, 128, 129, 128]);
  expect(onsetsOf(always)).toEqual([undefined, undefined, "steady", undefined]);
});

test("a step at work on the cylinder, or after a long stand, is no onset", () => {
  expect(onsetsOf(step, ["2020-11-02,,storage,,,me,5 months"])?.[2]).toBeUndefined();
  expect(onsetsOf(step, ["2020-11-02,,valve lash,3,"])?.[2]).toBeUndefined();
  expect(onsetsOf(step, ["2020-11-02,,valve lash,1,"])?.[2]).toBe("sudden");
  expect(onsetsOf(step, ["2020-11-02,,oil change,,"])?.[2]).toBe("sudden");
});

test("tools are those of gauges.csv and logbook.json", () => {
  expect(evidenceOf({})?.tools).toEqual([]);
  const gauges = "gauge,kind\nred,compression\nblue,compression\ntester,leak-down\n";
  expect(evidenceOf({ gauges, tools: ["borescope"] })?.tools).toEqual([
    "second gauge",
    "leak-down tester",
    "borescope",
  ]);
});

// 40 mm x 40 mm at 20:1: 50.3 ml over 19 is 2.6 ml of chamber, and 2 ml is more than half of it
test.each([
  ["diesel", { ignition: "compression" }],
  ["oil not allowed", { ignition: "unknown" }],
  ["oil not allowed", { wetTest: { allowed: false } }],
  ["oil above half the chamber", { geometry: { bore: "40mm", stroke: "40mm", compressionRatio: 20 } }],
  ["no valves", { porting: "ports", cycle: "two-stroke" }],
  ["air-cooled", { cooling: "air" }],
  ["crank cannot be held", { leakDownTest: { allowed: false } }],
] as const)("%s stands in the way of a test", (obstacle, engine) => {
  expect(evidenceOf({ engine })?.obstacles).toContain(obstacle);
  expect(evidenceOf({})?.obstacles).not.toContain(obstacle);
});

test("a diesel whose maker allows oil may have its oil test", () => {
  const engine = { ignition: "compression", wetTest: { allowed: true } };
  expect(evidenceOf({ engine })?.obstacles).not.toContain("diesel");
});
