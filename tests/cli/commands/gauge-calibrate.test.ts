// gauge calibrate: known holes and two cranking speeds. Contract: design.md §4; the row of gauges.csv §3.

import { expect, test } from "vitest";
import { type Desk, deskWithPump } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const calibrate = ["gauge", "calibrate"] as const;

const deskWithGauges = async (...more: readonly string[]): Promise<Desk> => {
  const desk = await deskWithPump();
  await desk.type(["gauge", "add", "cheapo", "--kind", "leak-down", "--unit", "psi", ...more]);
  await desk.type(["gauge", "add", "red", "--kind", "compression", "--unit", "psi"]);
  return desk;
};

const cellOf = (desk: Desk, gauge: string, column: string): string | undefined => {
  const [header = "", ...rows] = desk.text("logbook/gauges.csv").split("\n");
  const row = rows.find((line) => line.startsWith(`${gauge},`)) ?? "";
  return row.split(",")[header.split(",").indexOf(column)];
};

test("a known hole is kept in the gauge's own row, and undo takes it back", async () => {
  const desk = await deskWithGauges();
  const before = desk.text("logbook/gauges.csv");
  const { exit, out, err } = await desk.type([...calibrate, "cheapo", "--hole", "1.0mm", "--reads", "55psi"]);
  expect([exit, err]).toEqual([0, ""]);
  expect(out).toBe(
    "kept  cheapo: 1 mm: 55 psi                        (sealtrend undo takes it back)\n\n" +
      "One hole marks one point. Say the supply it was set to (--regulated 80psi) and\n" +
      "it tells what the restrictor acts as; or read a second hole, larger or smaller:\n" +
      "a reading between two holes has an equal hole.\n",
  );
  expect(cellOf(desk, "cheapo", "known_holes")).toBe("1.0mm:55psi");
  await desk.type(["undo"]);
  expect(desk.text("logbook/gauges.csv")).toBe(before);
});

test.each([
  ["pairs of options", ["--hole", "1.0mm", "--hole", "0.8 mm", "--reads", "66psi", "--reads", "74 psi"]],
  ["lists", ["--hole", "1.0mm", "0.8mm", "--reads", "66", "74"]],
  ["pairs with a colon", ["--hole", "1.0mm:66psi 0.8mm:74 psi"]],
])("several holes come as %s; a bare reading stands in the unit of the dial", async (_, words) => {
  const desk = await deskWithGauges();
  expect(await desk.type([...calibrate, "cheapo", ...words])).toMatchObject({ exit: 0, err: "" });
  expect(cellOf(desk, "cheapo", "known_holes")).toBe("1.0mm:66psi 0.8mm:74psi");
});

test("further holes stand behind the older ones; a hole read again takes the place of its older reading", async () => {
  const desk = await deskWithGauges();
  await desk.type([...calibrate, "cheapo", "--hole", "1.0mm:66psi 0.8mm:74psi"]);
  const { out } = await desk.type([...calibrate, "cheapo", "--hole", "1mm:65psi", "1.25mm:52psi"]);
  expect(cellOf(desk, "cheapo", "known_holes")).toBe("0.8mm:74psi 1mm:65psi 1.25mm:52psi");
  expect(out).toContain(
    "A reading between these has an equal hole now (0.8 mm: 74 psi; 1.25 mm: 52 psi);\nbeyond them nothing can be said.\n",
  );
});

test("with its supply known a hole tells what the restrictor acts as, beside the bore it is said to have", async () => {
  const desk = await deskWithGauges("--restrictor", "1.016mm");
  // computed: a hole equal to the restrictor reads 61.8 of 80 psi at sea level
  const { out } = await desk.type([
    ...calibrate,
    "cheapo",
    "--hole",
    "1.016mm:61.8psi",
    "--regulated",
    "80psi",
    "--altitude",
    "0m",
    "--why",
  ]);
  expect(out).toContain(
    "Fed with 80 psi, the restrictor of cheapo acts as a hole of 1.02 mm (± 0.03),\n" +
      "made like the one read. Its bore is 1.016 mm: it passes 100 % of what such a\n" +
      "hole of its bore would.\n",
  );
  expect(out).toContain("the\nrestrictor has 0.82; only their ratio was measured.");
  expect(cellOf(desk, "cheapo", "regulated")).toBe("80");
});

test("a dial in percent takes percent, and a logbook in another dialect stays in it", async () => {
  const desk = await deskWithPump();
  const before = "gauge;kind;unit;dial;class_percent;mine\r\nbillig;leak-down;%;percent-lost;1,6;x\r\n";
  desk.put("logbook/gauges.csv", before);
  expect(await desk.type([...calibrate, "billig", "--hole", "0,8mm", "--reads", "7,5"])).toMatchObject({
    exit: 0,
  });
  expect(desk.text("logbook/gauges.csv")).toBe(
    "gauge;kind;unit;dial;class_percent;mine;known_holes\r\nbillig;leak-down;%;percent-lost;1,6;x;0.8mm:7.5%\r\n",
  );
});

const speeds = [
  ...calibrate,
  "red",
  "--engine",
  "pump",
  "--slow",
  "180rpm",
  "--slow-reads",
  "171 172 172",
  "--fast",
  "260rpm",
  "--fast-reads",
  "190 191 190",
  "--altitude",
  "0m",
  "--date",
  "2026-05-03",
] as const;

interface Curve {
  readonly gauge: string;
  readonly P0: string;
  readonly u_ln: number;
  readonly source: string;
}
const curvesIn = (desk: Desk): readonly Curve[] =>
  (JSON.parse(desk.text("logbook/pump/engine.json")) as { crankingCurve: Curve[] }).crankingCurve;

test("two speeds keep what the engine would read without losses, for this gauge, in engine.json", async () => {
  const desk = await deskWithGauges();
  const before = desk.text("logbook/pump/engine.json");
  const { exit, out } = await desk.type(speeds);
  // means 171.67 and 190.33 psi: s 180/sqrt(171.67) = 13.738, 260/sqrt(190.33) = 18.846; (80/5.108)^2 = 245.3 psi
  // = 1691 kPa; at 0 m the factor to reference air is 1
  expect([exit, out.split("\n")[2]]).toEqual([
    0,
    "Without any loss pump would read 245 psi on red at sea level (± 4 %).",
  ]);
  const [curve, more] = curvesIn(desk);
  expect([curve?.gauge, curve?.source, more]).toEqual(["red", "two speeds, 2026-05-03", undefined]);
  expect(Number.parseFloat(curve?.P0 ?? "")).toBeCloseTo(1691, -1);
  expect(desk.text("logbook/pump/engine.json").startsWith(before.trimEnd().replace(/\s*\}$/, ""))).toBe(true);
});

test("a later calibration of the same gauge takes the place of its older one; that of another gauge stays", async () => {
  const desk = await deskWithGauges();
  await desk.type([
    "engine",
    "set",
    "pump",
    "crankingCurve",
    '[{ "gauge": "blue", "P0": "1700kPa", "u_ln": 0.05 }, { "gauge": "red", "P0": "1500kPa", "u_ln": 0.05 }]',
  ]);
  expect(await desk.type(speeds)).toMatchObject({ exit: 0 });
  expect(curvesIn(desk).map(({ gauge, P0 }) => [gauge, P0 === "1500kPa"])).toEqual([
    ["blue", false],
    ["red", false],
  ]);
});

test("speeds that lie too close, or readings that do not rise, are refused with the reason, and nothing is kept", async () => {
  const desk = await deskWithGauges();
  const before = desk.text("logbook/pump/engine.json");
  const close = speeds.map((word) => (word === "260rpm" ? "200rpm" : word));
  const flat = speeds.map((word) => (word === "190 191 190" ? "171 172 172" : word));
  const said = [await desk.type(close), await desk.type(flat)];
  expect(said.map(({ exit, err }) => [exit, err.split("\n")[0]])).toEqual([
    [1, "180 and 200 rpm lie too close: the second should be 1.25 times the first"],
    [1, "the reading did not rise from 180 to 260 rpm, as every loss makes it"],
  ]);
  expect(desk.text("logbook/pump/engine.json")).toBe(before);
});

test.each([
  [[...calibrate, "cheapo"], "nothing to calibrate by"],
  [[...calibrate, "cheapo", "--hole", "1.0mm"], "1 of --hole and 0 of --reads"],
  [[...calibrate, "cheapo", "--hole", "1.0mm", "--reads", "bad"], '"1.0mm:bad" is no hole with what it read'],
  [[...calibrate, "cheapo", "--hole", "1.0", "--reads", "55psi"], '"1.0:55psi" is no hole with what it read'],
  [[...calibrate, "red", "--hole", "1.0mm", "--reads", "55psi"], "red is a compression gauge"],
  [[...calibrate, "cheapo", ...speeds.slice(3)], "cheapo is a leak-down tester"],
  [[...calibrate, "chepo", "--hole", "1.0mm", "--reads", "55psi"], 'there is no gauge "chepo" in logbook'],
  [[...speeds, "--hole", "1.0mm", "--reads", "55psi"], "known holes and two speeds in one command"],
  [[...calibrate, "red", "--slow", "180rpm", "--slow-reads", "171", "--fast", "260rpm"], "no --fast-reads"],
  [[...calibrate, "red", "--slow", "180rpm", "--slow-reads", "171"], "no --fast"],
  [[...calibrate, "red", "--slow", "180psi", "--slow-reads", "171"], '--slow "180psi"'],
  [[...calibrate, "cheapo", "--hole", "1.0mm:55psi", "--regulated", "80mm"], '--regulated "80mm"'],
  [[...calibrate, "cheapo", "--hole", "1.0mm:55psi", "--altitude", "80"], '--altitude "80"'],
])("%j is refused: %s", async (line, found) => {
  const desk = await deskWithGauges();
  const before = desk.text("logbook/gauges.csv");
  const { exit, err } = await desk.type(line);
  expect([exit, err.split("\n")[0]]).toEqual([2, found]);
  expect(desk.text("logbook/gauges.csv")).toBe(before);
});

test("nothing is kept in the demo", async () => {
  const desk = await deskWithPump();
  await desk.type(["demo"]);
  const line = [...calibrate, "tester", "--hole", "1.0mm", "--reads", "55psi", "--logbook", "sealtrend-demo"];
  expect(await desk.type(line)).toMatchObject({ exit: 2 });
});

test("the documents are as their schema says", async () => {
  const desk = await deskWithGauges();
  for (const line of [
    [...calibrate, "cheapo", "--hole", "1.0mm:66psi"],
    [...calibrate, "cheapo", "--hole", "0.8mm:74psi"],
    [...calibrate, "cheapo", "--hole", "0.9mm:40psi"],
    [...calibrate, "cheapo", "--hole", "0.9mm:70psi", "--regulated", "80psi"],
    speeds,
  ])
    expect(misfits(await desk.json(...line), schemaOf("gauges"))).toEqual([]);
});
