// `teardown` on what is recorded, which teardown is meant, and its document. Contract: design.md §4 and §7; handbook/teardown.md
// §3.4 row 3 for the chance of rod bearing 6 and Q5, Q6 for undersizes (computed by this project). Figures invented.

import { expect, test } from "vitest";
import { misfits, schemaOf } from "./fits-schema.ts";
import { type Desk } from "./desk.ts";
import { deskWithSix, limits, measurements, rods, start, thirteen } from "./teardown-desk.ts";

const pin = "pin 1: 2.2483in\n";
const enter = (desk: Desk, day: string, words: readonly string[] = [], input = pin) =>
  desk.type(["teardown", "tractor", "--date", day, ...words], { input });
const numbers = (desk: Desk): readonly string[] => measurements(desk).map((row) => row.split(",")[0] ?? "");

test("figures of the next 90 days go on with the newest teardown, later ones begin the next, said aloud", async () => {
  const desk = await deskWithSix();
  await enter(desk, "2025-03-01");
  await enter(desk, "2025-05-30");
  expect(numbers(desk)).toEqual(["1", "1"]);
  const { err } = await enter(desk, "2025-08-29");
  expect(numbers(desk)).toEqual(["1", "1", "2"]);
  expect(err.replace(/\s+/g, " ")).toContain(
    "teardown 1 was last measured 2025-05-30, 91 days before: this begins teardown 2; to add to the old one: --teardown 1",
  );
});

test("--teardown adds to an earlier one, --new-teardown begins the next on the same day", async () => {
  const desk = await deskWithSix();
  await enter(desk, "2025-03-01");
  await enter(desk, "2025-03-01", ["--new-teardown"]);
  await enter(desk, "2026-03-01", ["--teardown", "1"]);
  expect(numbers(desk)).toEqual(["1", "2", "1"]);
  expect((await enter(desk, "2026-03-01", ["--teardown", "4"])).err.replace(/\s+/g, " ")).toContain(
    "the newest is 2",
  );
});

test("--no-input judges the newest, --teardown an earlier one, --as-of what was there on that day", async () => {
  const desk = await deskWithSix();
  await enter(desk, "2025-03-01", [], "pin 1: 2.2462in\n");
  await enter(desk, "2025-09-01");
  const said = async (...words: readonly string[]): Promise<unknown> =>
    (await desk.json("teardown", "tractor", "--no-input", ...words)).teardown;
  expect(await said()).toBe(2);
  expect(await said("--teardown", "1")).toBe(1);
  expect(await said("--as-of", "2025-06-01")).toBe(1);
  const none = await desk.type(["teardown", "tractor", "--no-input", "--teardown", "3"]);
  expect([none.exit, none.err.includes("one of: 1, 2")]).toEqual([2, true]);
});

test("lines that wait while --no-input judges are told as not read, and nothing of them is saved", async () => {
  const desk = await deskWithSix();
  await enter(desk, "2025-03-01");
  const plain = await desk.type(["teardown", "tractor", "--no-input"]);
  const waiting = await desk.type(["teardown", "tractor", "--no-input"], { input: "pin 2: 2.2483in\n" });
  expect([waiting.exit, waiting.out]).toEqual([0, plain.out]);
  expect(plain.err).toBe("");
  expect(waiting.err.replace(/\s+/g, " ").trim()).toBe(
    "the lines on standard input were not read and nothing was saved: leave --no-input out to enter them",
  );
  expect(measurements(desk)).toHaveLength(1);
});

test("without input what is recorded is judged, and reading never writes", async () => {
  const desk = await deskWithSix();
  await desk.type(["teardown", "tractor"], { input: rods });
  const before = desk.text("logbook/tractor/measurements.csv");
  const shown = await desk.type(["teardown", "tractor"]);
  expect([shown.exit, shown.out.startsWith("Rod bearing 6 is too close to tell")]).toEqual([0, true]);
  expect((await desk.type(["teardown", "tractor", "--no-input"])).out).toBe(shown.out);
  expect(desk.text("logbook/tractor/measurements.csv")).toBe(before);
});

test("a fault in measurements.csv stops what is only read", async () => {
  const desk = await deskWithSix();
  desk.put(
    "logbook/tractor/measurements.csv",
    "teardown,date,part,label,at,quantity,value,unit\n1,2026-11-20,pin,1,front/0,diameter,57.1O,mm\n",
  );
  const { exit, out, err } = await desk.type(["teardown", "tractor", "--no-input"]);
  expect([exit, out]).toEqual([1, ""]);
  expect(err).toContain("measurements.csv:2:");
});

test("the document is as its schema says and holds every verdict, the counts, the undersize and the work", async () => {
  const desk = await deskWithSix();
  const { out } = await desk.type(["teardown", "tractor", ...start, "--json"], {
    input: `${thirteen.join("\n")}\nbore 3: score nail catches\n${rods}`,
  });
  const document = JSON.parse(out) as Record<string, unknown>;
  expect(misfits(document, schemaOf("teardown"))).toEqual([]);
  expect(out).not.toMatch(/NaN|Infinity|undefined|null/);
  expect(document).toMatchObject({
    engine: { id: "tractor" },
    teardown: 1,
    openedAs: "crank-out",
    written: { file: "logbook/tractor/measurements.csv", rows: 59 },
  });
  const items = document.items as Record<string, unknown>[];
  const six = items.find(({ part, label }) => part === "rod bearing" && label === "6");
  expect(six).toMatchObject({ quantity: "thread clearance", standing: "too-close" });
  expect(six?.value_mm).toBeCloseTo(0.0022 * 25.4, 9);
  const [verdict] = six?.verdicts as {
    probability: number;
    verdict: string;
    settlement: { needed_mm: number };
  }[];
  expect(verdict?.verdict).toBe("too-close-to-tell");
  expect(verdict?.probability).toBeCloseTo(0.8849, 4);
  expect(verdict?.settlement.needed_mm).toBeCloseTo(0.000182 * 25.4, 4);
  const [undersize] = document.undersize as { part: string; size_mm: number }[];
  expect(undersize?.part).toBe("pin");
  expect(undersize?.size_mm).toBeCloseTo(0.01 * 25.4, 9);
  expect((document.work as { code: string }[]).map(({ code }) => code)).toContain("grind-crank");
  expect(document.counts).toContainEqual(expect.objectContaining({ part: "main", expected: 7, measured: 7 }));
});

test("oversize, conflicts and findings stand in the document too (sizes: handbook Q2, computed by this project)", async () => {
  const source = "workshop book p. 60, invented";
  const desk = await deskWithSix({
    clearances: [
      { part: "bore", quantity: "diameter", new: [86.5, 86.53], wear: [null, 86.65], unit: "mm", source },
      { part: "bore", quantity: "taper", wear: [null, 0.1], unit: "mm", source },
    ],
    offered: { bore: { unit: "mm", sizes: [0.25, 0.5, 0.75, 1] } },
  });
  const tops = ["86.62", "86.60", "86.71", "86.58", "86.60", "86.58"];
  const lines = tops.map((top, i) => `bore ${String(i + 1)}: ${top} ${top} 86.55 86.55 86.52 86.52`);
  const { out } = await desk.type(["teardown", "tractor", "--json"], {
    input: `mm\nwith bore gauge 0.01\n${lines.join("\n")}\nbore 3: score nail catches\nring gap 1: 5.0..5.5\n`,
  });
  const document = JSON.parse(out) as Record<string, unknown>;
  expect(misfits(document, schemaOf("teardown"))).toEqual([]);
  const { original_mm, answers } = document.oversize as {
    original_mm: number;
    answers: { offset: string; size_mm: number; finished_mm: number; boreTo_mm: number }[];
  };
  expect(original_mm).toBeCloseTo(86.5, 9);
  const sizes = answers.map(({ offset, ...sized }) => [
    offset,
    ...[sized.size_mm, sized.finished_mm, sized.boreTo_mm].map((value) => Number(value.toFixed(6))),
  ]);
  expect(sizes).toEqual([
    ["worst", 0.5, 87, 86.98],
    ["none", 0.25, 86.75, 86.73],
  ]);
  expect(document.findings).toEqual([
    {
      date: "2026-11-25",
      part: "bore",
      label: "3",
      quantity: "score",
      word: "nail catches",
      state: "as found",
    },
  ]);
  expect((document.conflicts as { code: string; meant_mm?: number[] }[])[0]).toMatchObject({
    code: "cannot-be",
    part: "ring",
    label: "1",
  });
});

test("what is not known is named in missing", async () => {
  const desk = await deskWithSix({});
  await desk.type(["teardown", "tractor"], { input: "pin 1: 2.2483in 2.2482in 2.2483in 2.2482in\n" });
  const { missing, items } = await desk.json("teardown", "tractor", "--no-input");
  expect(missing).toContain("items: pin diameter 6");
  expect(missing).toContain("limits.clearances: pin taper");
  expect((items as { verdicts: unknown[] }[]).every(({ verdicts }) => verdicts.length === 0)).toBe(true);
});

test("a saved line among faulty rows has a document of its own", async () => {
  const desk = await deskWithSix(limits);
  desk.put(
    "logbook/tractor/measurements.csv",
    "teardown,date,part,label,at,quantity,value,unit\n1,2026-11-20,pin,1,front/0,diameter,57.1O,mm\n",
  );
  const { exit, out } = await desk.type(["teardown", "tractor", "--json"], { input: pin });
  expect(exit).toBe(1);
  expect(misfits(JSON.parse(out), schemaOf("teardown"))).toEqual([]);
});

test("figures after machining take the place of those as found, and prove the shop's work", async () => {
  const desk = await deskWithSix();
  await desk.type(["teardown", "tractor", ...start], { input: `${thirteen.join("\n")}\n` });
  const again = ["1", "2", "3", "4", "5", "6"].map((label) => `pin ${label}: 2.2385 2.2385 2.2385 2.2384`);
  const { out } = await desk.type(["teardown", "tractor", ...start, "--state", "after machining"], {
    input: `${again.join("\n")}\n`,
  });
  expect(out).toContain("13 of 13 measured");
  expect(out).toMatch(/diameter +in +2\.238[45]/);
  expect(out).not.toContain("2.2441");
});

test("whatever --units says, typed in inches or told in mm, the document is the same", async () => {
  const desk = await deskWithSix();
  await desk.type(["teardown", "tractor"], { input: rods });
  const plain = await desk.json("teardown", "tractor", "--no-input");
  expect(await desk.json("teardown", "tractor", "--no-input", "--units", "metric")).toEqual(plain);
  const { out } = await desk.type(["teardown", "tractor", "--no-input", "--units", "metric"]);
  expect(out).toContain("new 0.025 to 0.064");
});
