// The map of `import` as a file: laid down, edited, used, and never written over.

import { expect, test } from "vitest";
import { deskWith, rowsOf } from "./import-desk.ts";

test("a map that is not there is laid down for editing, and then used", async () => {
  const desk = deskWith("two-header-rows.csv");
  const laid = await desk.type(["import", "two-header-rows.csv", "--map", "old-map.json"]);
  expect([laid.exit, laid.out]).toEqual([0, expect.stringContaining("old-map.json")]);
  const map = desk.text("old-map.json");
  expect(JSON.parse(map)).toMatchObject({ schema: "sealtrend/import-map@1" });
  desk.put(
    "old-map.json",
    map.replace('"engine": "old-loader"', '"engine": "loader"').replace('"unknown"', '"compression"'),
  );
  const used = await desk.type(["import", "two-header-rows.csv", "--map", "old-map.json", "--write"]);
  expect([used.exit, used.err.includes("fault")]).toEqual([0, false]);
  expect(rowsOf(desk, "loader")).toHaveLength(2);
  expect(JSON.parse(desk.text("data/sealtrend/loader/engine.json"))).toMatchObject({
    name: "Old loader",
    ignition: "compression",
  });
});

test("an engine that the map gives no name stays out, and that is no fault", async () => {
  const desk = deskWith("two-header-rows.csv");
  await desk.type(["import", "two-header-rows.csv", "--map", "old-map.json"]);
  desk.put("old-map.json", desk.text("old-map.json").replace('"engine": "sawmill"', '"engine": ""'));
  const { exit, out } = await desk.type(["import", "two-header-rows.csv", "--map", "old-map.json"]);
  expect([exit, out]).toEqual([0, expect.stringContaining("Would add 16 readings of 2 engines")]);
});

test("the guess is laid down with its open questions too, and an option settles one over the map", async () => {
  const desk = deskWith("open-questions.csv");
  const line = ["import", "open-questions.csv", "--map", "open.json"];
  expect((await desk.type(line)).exit).toBe(2);
  const before = desk.text("open.json");
  const missing = await desk.type([...line, "--dates", "dmy", "--what", "dry"]);
  expect([missing.exit, missing.err]).toEqual([1, expect.stringContaining("open.json")]);
  const settled = await desk.type([...line, "--dates", "dmy", "--what", "dry", "--unit", "psi"]);
  expect([settled.exit, settled.out]).toEqual([0, expect.stringContaining("Would add 8 readings of boat")]);
  expect(desk.text("open.json")).toBe(before);
});

test("a map with faults is refused with each of them, and nothing is read by it", async () => {
  const desk = deskWith("one-engine.csv");
  desk.put("bad.json", '{ "schema": "sealtrend/import-map@1", "firstRow": "two" }\n');
  const { exit, out, err } = await desk.type(["import", "one-engine.csv", "--map", "bad.json"]);
  expect([exit, out]).toEqual([1, ""]);
  expect(err).toContain("bad.json:1:");
  expect(desk.text("bad.json")).toContain('"two"');
});

test("a map cannot be laid down where there is no folder, nor under --engine another used", async () => {
  const desk = deskWith("one-engine.csv");
  const line = ["import", "one-engine.csv", "--unit", "psi", "--what", "dry", "--engine"];
  expect((await desk.type([...line, "tractor", "--map", "none/map.json"])).exit).toBe(3);
  expect(desk.has("none")).toBe(false);
  expect((await desk.type([...line, "tractor", "--map", "map.json"])).exit).toBe(0);
  expect((await desk.type([...line, "tractor", "--map", "map.json"])).exit).toBe(0);
  const other = await desk.type([...line, "van", "--map", "map.json"]);
  expect([other.exit, other.err]).toEqual([2, expect.stringContaining("--engine with a map that is there")]);
});

test("what is new is made as one is told: name, cylinders, ignition", async () => {
  const desk = deskWith("one-engine.csv");
  const line = [
    "import",
    "one-engine.csv",
    "--unit",
    "psi",
    "--what",
    "dry",
    "--engine",
    "tractor",
    "--write",
  ];
  expect((await desk.type([...line, "--ignition", "diesel"])).exit).toBe(0);
  expect(JSON.parse(desk.text("data/sealtrend/tractor/engine.json"))).toMatchObject({
    cylinders: ["1", "2", "3", "4"],
    ignition: "compression",
  });
});

test("how new engines fire is laid down as it was typed", async () => {
  const desk = deskWith("two-header-rows.csv");
  await desk.type(["import", "two-header-rows.csv", "--map", "old-map.json", "--ignition", "compression"]);
  expect(desk.text("old-map.json")).toContain('"compression"');
  expect(desk.text("old-map.json")).not.toContain('"unknown"');
});

test("an engine that is recorded otherwise than the map says it fires is told, and stays", async () => {
  const desk = deskWith();
  desk.put("pump.csv", "Machine,Date,Cyl 1 (psi),Cyl 2 (psi)\npump,2026-05-03,118,119\n");
  const line = ["import", "pump.csv", "--what", "dry"];
  await desk.type([...line, "--ignition", "spark", "--write"]);
  desk.put("pump.csv", "Machine,Date,Cyl 1 (psi),Cyl 2 (psi)\npump,2026-06-03,117,119\n");
  const { exit, out, err } = await desk.type([...line, "--ignition", "compression", "--write"]);
  expect([exit, `${out}${err}`.replaceAll(/\s+/g, " ")]).toEqual([
    0,
    expect.stringContaining("pump is recorded with ignition spark; --ignition says compression"),
  ]);
  expect(JSON.parse(desk.text("data/sealtrend/pump/engine.json"))).toMatchObject({ ignition: "spark" });
});
