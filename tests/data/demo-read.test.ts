import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

import { type EngineRecord, readEngineRecord, readGauges, readLogbook } from "@sealtrend/core";
import { expect, test } from "vitest";

const demo = fileURLToPath(new URL("../../data/demo/", import.meta.url));
const named = (file: string) => ({ file, text: readFileSync(demo + file, "utf8") });
const { logbook, problems: ofLogbook } = readLogbook(named("logbook.json").text, "logbook.json");
const { gauges, problems: ofGauges } = readGauges(named("gauges.csv").text, "gauges.csv");

const read = (id: string) =>
  readEngineRecord(
    {
      id,
      engine: named(`${id}/engine.json`),
      tests: named(`${id}/tests.csv`),
      services: named(`${id}/services.csv`),
      notes: named(`${id}/notes.csv`),
      ...(id === "pump" ? { measurements: named("pump/measurements.csv") } : {}),
    },
    gauges,
    logbook,
  );
const recordOf = (id: string): EngineRecord => {
  const { record } = read(id);
  if (record === undefined) throw new Error(`no record of ${id}`);
  return record;
};

test("The demo logbook and its gauges are read without a fault", () => {
  expect(ofLogbook).toEqual([]);
  expect(ofGauges).toEqual([]);
  expect(logbook.demo).toBe(true);
  expect(gauges.map(({ id }) => id)).toEqual(["red", "blue", "long", "tester"]);
});

// Number of tests: the scenario in data/demo/README.md and its generator.
test.each([
  ["tractor", 10],
  ["van", 11],
  ["boat", 11],
  ["mill", 11],
  ["pump", 4],
  ["ultralight", 6],
])("Every entry of the %s is read: %i tests, no fault, nothing lost", (id, tests) => {
  const { record, problems } = read(id);
  expect(problems).toEqual([]);
  expect(record?.tests).toHaveLength(tests);
});

test("The last test of the tractor holds three repeats, first strokes, and oil in 3 and a control", () => {
  const last = recordOf("tractor").tests.at(-1);
  expect(last?.rows.map(({ what, take }) => `${what} ${String(take)}`)).toEqual([
    "dry 1",
    "dry 2",
    "dry 3",
    "first-stroke 1",
    "wet 1",
  ]);
  const oil = last?.perCylinder.oil?.map((volume) =>
    volume === undefined ? "none" : `${(volume * 1e6).toFixed(0)} ml`,
  );
  expect(oil).toEqual(["5 ml", "none", "5 ml", "none"]);
});

test("The spoilt test of the van is set aside with its reason", () => {
  expect(
    recordOf("van")
      .tests.filter(({ setAside }) => setAside !== undefined)
      .map(({ id, setAside }) => [id, setAside]),
  ).toEqual([["2021-05-08a", "throttle was found half shut afterwards"]]);
});

test("The mill generator takes its height from the logbook", () => {
  expect(recordOf("mill").tests.at(-1)?.conditions).toMatchObject({ altitude: 420, altitudeFrom: "logbook" });
});

test("The valve job at the mill starts cylinder 2 anew and no other", () => {
  expect(recordOf("mill").services.map(({ what, newBaseline }) => [what, newBaseline])).toEqual([
    ["valve job", ["2"]],
  ]);
});

test("The pump was taken apart and measured whole: every cylinder, journal and valve", () => {
  const { engine, measurements } = recordOf("pump");
  const labels = (part: string, quantity: string): string => {
    const named = measurements.filter((one) => one.part === part && one.quantity === quantity);
    return [...new Set(named.map(({ label = "" }) => label))].join(" ");
  };
  expect(labels("bore", "diameter")).toBe("1 2");
  expect(labels("ring", "end gap")).toBe("1 2");
  expect(labels("main", "diameter")).toBe("1 2 3");
  expect(labels("pin", "diameter")).toBe("1 2");
  expect(labels("rod bearing", "thread clearance")).toBe("1 2");
  expect(labels("guide", "bore")).toBe("1in 1ex 2in 2ex");
  expect(engine.layout).toEqual({ mains: 3, pins: 2, numberedFrom: "front" });
  expect(engine.clearances.length).toBeGreaterThan(20);
  expect(engine.clearances.every(({ source }) => source?.includes("invented"))).toBe(true);
  expect(Object.keys(engine.offered)).toEqual(["bore", "main", "pin"]);
});
