// What engine, gauge, how, demo and rules answer under --json is as their schemas say. Contract: design.md §7.

import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { newDesk } from "./desk.ts";
import { engineSchema } from "./engine-schema.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));

test.each([
  ["demo", ["demo", "logbook"]],
  ["engines", ["engine", "list"]],
  ["engines", ["engine", "show", "tractor"]],
  ["gauges", ["gauge", "list"]],
  ["how", ["how", "wet", "pump"]],
  ["how", ["how", "dry", "boat"]],
  ["rules", ["rules", "boat"]],
  ["rules", ["rules"]],
])("%s: sealtrend %j", async (name, line) => {
  const desk = newDesk();
  await desk.type(["demo", "logbook"]);
  expect(misfits(await desk.json(...line), schemaOf(name))).toEqual([]);
});

test.each([
  ["engines", ["engine", "add", "saw", "--cylinders", "1", "--ignition", "unknown"]],
  ["engines", ["engine", "set", "pump", "geometry.bore", "86mm"]],
  ["gauges", ["gauge", "add", "red", "--kind", "compression", "--full-scale", "300psi"]],
])("%s: sealtrend %j, with what was written", async (name, line) => {
  const desk = newDesk();
  await desk.type(["engine", "add", "pump", "--cylinders", "2", "--ignition", "spark"]);
  const document = await desk.json(...line);
  expect([misfits(document, schemaOf(name)), "written" in document]).toEqual([[], true]);
});

test("how without an engine has no engine in its document", async () => {
  const document = await newDesk().json("how");
  expect([misfits(document, schemaOf("how")), "engine" in document]).toEqual([[], false]);
});

test("pressures stand in kPa and shares as fractions, whatever --units says", async () => {
  const desk = newDesk();
  await desk.type([
    "gauge",
    "add",
    "red",
    "--kind",
    "compression",
    "--full-scale",
    "20bar",
    "--class",
    "2.5",
  ]);
  // 20 bar = 2000 kPa; class 2.5 = 0.025 of full scale
  expect((await desk.json("gauge", "list", "--units", "psi")).gauges).toEqual([
    { id: "red", kind: "compression", unit: "bar", fullScale_kPa: 2000, class: 0.025 },
  ]);
  const { rules } = await desk.json("rules", "--units", "psi");
  expect(rules).toContainEqual(expect.objectContaining({ id: "pct15", limit: 0.15, compare: "<=" }));
  // 100 psi x 6.894757 kPa
  expect(rules).toContainEqual(
    expect.objectContaining({ id: "floor100psi", limit_kPa: expect.closeTo(689.4757, 3) as number }),
  );
});

test("the schema of engine.json says what the table of its fields says", () => {
  expect(schemaOf("engine")).toEqual(engineSchema());
});

test("every engine of the demo fits the schema of engine.json", () => {
  const engines = readdirSync(demo, { withFileTypes: true }).filter(
    (entry) => entry.isDirectory() && entry.name !== "generator",
  );
  expect(engines.length).toBeGreaterThan(5);
  for (const { name } of engines) {
    const engine: unknown = JSON.parse(readFileSync(join(demo, name, "engine.json"), "utf8"));
    expect(misfits(engine, schemaOf("engine")), name).toEqual([]);
  }
});
