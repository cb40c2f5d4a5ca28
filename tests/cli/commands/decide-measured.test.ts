// `decide` on an engine of which something was measured: evidence with its figure, and the limits it is held to.

import { cpSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { cases, ours } from "./decide-desk.ts";
import { newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";
import { numbersLost } from "./numbers.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));

/** The logbook of the cases with limits and a measured bore in `healthy`; invented. */
const measuredDesk = () => {
  const desk = newDesk();
  cpSync(cases, join(desk.folder, "logbook"), { recursive: true });
  const engine = JSON.parse(readFileSync(join(cases, "healthy", "engine.json"), "utf8")) as {
    limits?: Record<string, unknown>;
  };
  const clearances = [
    { part: "bore", quantity: "taper", wear: [null, 0.1], unit: "mm", source: "manual p. 62, invented" },
    { part: "rod bearing", quantity: "clearance", wear: [null, 0.09], unit: "mm" },
  ];
  desk.put(
    "logbook/healthy/engine.json",
    JSON.stringify({ ...engine, limits: { ...engine.limits, clearances } }),
  );
  const row = (at: string, value: string): string =>
    `1,2026-11-22,bore,3,${at},diameter,${value},mm,bore-gauge,0.01,me,cleaned,\n`;
  desk.put(
    "logbook/healthy/measurements.csv",
    `teardown,date,part,label,at,quantity,value,unit,instrument,resolution,by,state,note\n${row("top/thrust", "86.72")}${row("top/axial", "86.60")}${row("bottom/thrust", "86.53")}${row("bottom/axial", "86.52")}`,
  );
  return desk;
};

test("what was measured is evidence with its figure and its limit, and the limits are named before measuring", async () => {
  const desk = measuredDesk();
  const line = ["decide", "healthy", "--opened", "pistons-in", "--as-of", "2026-11-25"];
  const text = (await desk.type(line)).out.replace(/\s+/g, " ");
  // 86.72 - 86.53 = 0.19 along the thrust, above 0.10
  expect(text).toMatch(/for wear bore 3 taper 0\.19 mm, limit 0\.10 mm \(teardown 1, 2026-11-22\)/);
  expect(text).toContain(
    "held to bore taper up to 0.1 mm (wear); rod bearing clearance up to 0.09 mm (wear)",
  );
  const document = await desk.json(...line);
  expect(misfits(document, schemaOf("decide"))).toEqual([]);
  const measureNow = document.measureNow as { limits: Record<string, unknown>[] }[];
  expect(measureNow.flatMap(({ limits }) => limits)).toEqual([
    // bore 3 once more, and the bores that nobody measured
    expect.objectContaining({ part: "bore", quantity: "taper", kind: "wear", high_mm: 0.1 }),
    expect.objectContaining({ part: "bore", quantity: "taper", kind: "wear", high_mm: 0.1 }),
    expect.objectContaining({ part: "rod bearing", quantity: "clearance", kind: "wear", high_mm: 0.09 }),
  ]);
  for (const detail of [[], ["--why"]]) {
    const { out } = await desk.type([...line, ...detail], { width: 200 });
    expect(numbersLost(out.replace(ours, " "), document)).toEqual([]);
  }
});

test("what was measured and is too close to tell is named before what is left to measure", async () => {
  const { out } = await newDesk().type(["decide", "pump", "--opened", "crank-out", "--logbook", demo]);
  // 0.102 mm by gauging thread, up to 0.11 mm may stay
  expect(out.replace(/\s+/g, " ")).toMatch(
    /unsettled bearings: too close to tell: rod bearing 2 [a-z ]*clearance 0\.102 mm, limit 0\.11 mm/,
  );
});

test("a ring that was measured lately means the pistons were out: asked about where less was said to be open", async () => {
  const desk = measuredDesk();
  const rows = desk.text("logbook/healthy/measurements.csv");
  const gap = "1,2026-11-22,ring,3,1/bottom,end gap,0.35..0.40,mm,feeler,0.05,me,cleaned,\n";
  desk.put("logbook/healthy/measurements.csv", rows + gap);
  const asked = async (opened: string, day: string): Promise<string> =>
    (await desk.type(["decide", "healthy", "--opened", opened, "--as-of", day])).err.replace(/\s+/g, " ");
  expect(await asked("pistons-in", "2026-11-25")).toContain(
    "teardown 1 measured parts that only come out with the pistons: if they are out still, --opened pistons-out",
  );
  expect(await asked("pistons-out", "2026-11-25")).not.toContain("if they are out still");
  expect(await asked("pistons-in", "2027-05-01")).not.toContain("if they are out still");
});
