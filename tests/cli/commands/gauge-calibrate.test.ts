// gauge calibrate with known holes. Contract: design.md §4; the row of gauges.csv §3.

import { expect, test } from "vitest";
import { deskWithPump } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";
import { calibrate, cellOf, deskWithGauges, speeds } from "./gauge-desk.ts";

test("a known hole is kept in the gauge's own row, and undo takes it back", async () => {
  const desk = await deskWithGauges();
  const before = desk.text("logbook/gauges.csv");
  const { exit, out, err } = await desk.type([...calibrate, "cheapo", "--hole", "1.0mm", "--reads", "55psi"]);
  expect([exit, err]).toEqual([0, ""]);
  expect(out).toBe(
    "kept  cheapo: 1.0 mm: 55 psi                      (sealtrend undo takes it back)\n\n" +
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
    "Fed with 80 psi, the restrictor of cheapo acts as a hole of 1.02 mm ± 0.03 mm\n" +
      "(one standard uncertainty), made like the one read. Its bore is 1.016 mm: it\n" +
      "passes 100 % of what such a hole of its bore would.\n",
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

test.each([
  [
    "a bigger hole that reads higher",
    ["1.0mm:55psi"],
    "1.25mm:66psi",
    "1.0mm:55psi and 1.25mm:66psi do not go together: the larger hole lost no more",
  ],
  [
    "a reading above the supply",
    ["1.0mm:55psi", "--regulated", "80psi"],
    "1.25mm:85psi",
    "1.25mm:85psi does not lie below the supply of 80 psi",
  ],
  ["a hole that lost all", ["1.0mm:55psi"], "0.8mm:0psi", "0.8mm:0psi lost all"],
  [
    "percent beside a pressure",
    ["1.0mm:55psi"],
    "0.8mm:20%",
    "0.8mm:20% and 1.0mm:55psi: one in percent, one in pressure",
  ],
])("%s is refused with the holes named, and nothing is kept", async (_, before, hole, found) => {
  const desk = await deskWithGauges();
  await desk.type([...calibrate, "cheapo", "--hole", ...before]);
  const file = desk.text("logbook/gauges.csv");
  const { exit, out, err } = await desk.type([...calibrate, "cheapo", "--hole", hole]);
  expect([exit, out, err.split("\n    expected")[0]?.replace(/\n/g, " ")]).toEqual([2, "", found]);
  expect(desk.text("logbook/gauges.csv")).toBe(file);
});

test("a pressure on a dial that shows percent is refused", async () => {
  const desk = await deskWithGauges();
  await desk.type(["gauge", "add", "pct", "--kind", "leak-down", "--dial", "percent-lost"]);
  const { exit, err } = await desk.type([...calibrate, "pct", "--hole", "1.0mm", "--reads", "55psi"]);
  expect([exit, err.split("\n")[0]]).toEqual([2, "1.0mm:55psi is a pressure, and the dial shows percent"]);
});

test("holes and what they read are said as typed", async () => {
  const desk = await deskWithGauges();
  await desk.type(["gauge", "add", "held", "--kind", "leak-down", "--dial", "percent-held"]);
  const said = async (gauge: string, hole: string, reads: string) =>
    (await desk.type([...calibrate, gauge, "--hole", hole, "--reads", reads])).out.split(/ {3,}|\n/)[0];
  expect(await said("cheapo", "0.031in", "5bar")).toBe("kept  cheapo: 0.031 in: 5 bar");
  expect(await said("held", "1.0mm", "80%")).toBe("kept  held: 1.0 mm: 80 % held");
  expect((await desk.type(["gauge", "list"])).out.replace(/\s+/g, " ")).toContain(
    "holes read 0.031 in: 5 bar",
  );
});

test("another supply than the tester is set to is refused: older holes and tests rest on it", async () => {
  const desk = await deskWithGauges();
  await desk.type([...calibrate, "cheapo", "--hole", "1.0mm:66psi", "--regulated", "80psi"]);
  const file = desk.text("logbook/gauges.csv");
  const { exit, err } = await desk.type([
    ...calibrate,
    "cheapo",
    "--hole",
    "1.5mm:45psi",
    "--regulated",
    "90psi",
  ]);
  expect([exit, err.split("\n    expected")[0]?.replace(/\n/g, " ")]).toEqual([
    2,
    "cheapo is set to 80 psi in logbook/gauges.csv, and --regulated says 90psi",
  ]);
  expect(desk.text("logbook/gauges.csv")).toBe(file);
  const same = await desk.type([...calibrate, "cheapo", "--hole", "1.5mm:39psi", "--regulated", "80"]);
  expect([same.exit, cellOf(desk, "cheapo", "regulated")]).toEqual([0, "80"]);
});

test("a supply that is told after the first holes counts for them too, and that is said", async () => {
  const desk = await deskWithGauges();
  await desk.type([...calibrate, "cheapo", "--hole", "1.0mm:66psi"]);
  const { out } = await desk.type([...calibrate, "cheapo", "--hole", "1.25mm:55psi", "--regulated", "80psi"]);
  expect(out.replace(/\s+/g, " ")).toContain(
    "The holes kept before (1.0 mm: 66 psi) are taken as read at that supply too.",
  );
});

test("a supply out of reason is refused", async () => {
  const desk = await deskWithGauges();
  for (const [supply, found] of [
    ["80bar", '"80bar" is out of range for regulated in bar'],
    ["-5psi", '--regulated "-5psi"'],
  ] as const)
    expect(
      (await desk.type([...calibrate, "cheapo", "--hole", "1.0mm:55psi", "--regulated", supply])).err.split(
        "\n",
      )[0],
    ).toBe(found);
});

test("columns that gauges.csv lacks are added, and said", async () => {
  const desk = await deskWithPump();
  desk.put("logbook/gauges.csv", "gauge,kind,unit\ncheapo,leak-down,psi\n");
  const { exit, err } = await desk.type([...calibrate, "cheapo", "--hole", "1.0mm:55psi"]);
  expect([exit, err.replace(/\n/g, " ")]).toEqual([
    0,
    "logbook/gauges.csv got a column it lacked, at the end of its lines: known_holes ",
  ]);
});

test("a broken cell of holes says what to write in it, which mends it", async () => {
  const desk = await deskWithPump();
  const broken = "gauge,kind,unit,known_holes\ncheapo,leak-down,psi,1.0mm 55psi\n";
  desk.put("logbook/gauges.csv", broken);
  const { exit, err } = await desk.type([...calibrate, "cheapo", "--hole", "1.25mm:50psi"]);
  expect([exit, err]).toEqual([1, expect.stringContaining("write 1.0mm:55psi if that is meant")]);
  desk.put("logbook/gauges.csv", broken.replace("1.0mm 55psi", "1.0mm:55psi"));
  expect(await desk.type([...calibrate, "cheapo", "--hole", "1.25mm:50psi"])).toMatchObject({ exit: 0 });
});

test("several holes count by how sure each is, and --why says how much", async () => {
  const desk = await deskWithGauges("--full-scale", "100psi", "--class", "1.6", "--division", "1psi");
  const line = [
    ...calibrate,
    "cheapo",
    "--hole",
    "0.8mm:72psi 1.0mm:62.5psi 1.25mm:49.5psi",
    "--regulated",
    "80psi",
  ];
  const { out } = await desk.type([...line, "--why"]);
  expect(out).toMatch(
    /1\.25 mm hole \/ restrictor \d\.\d{3} by effective area: acts as 1\.\d{3} ± 0\.0\d{2} mm,\n?\s*counts \d+ %/,
  );
  const { calibration } = (await desk.json(...line)) as {
    calibration: {
      u_actsAs_mm: number;
      actsAs_mm: number;
      holesAre: string;
      holes: { u_actsAs_mm: number; actsAs_mm: number; weight: number }[];
    };
  };
  const { holes, u_actsAs_mm: u, actsAs_mm: d } = calibration;
  expect(u / d).toBeLessThanOrEqual(
    Math.min(...holes.map((one) => one.u_actsAs_mm / one.actsAs_mm)) * (1 + 1e-9),
  );
  expect(calibration.holesAre).toBe("together");
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
    [...calibrate, "cheapo", "--hole", "0.9mm:70psi"],
    [...calibrate, "cheapo", "--hole", "0.9mm:70.5psi", "--regulated", "80psi"],
    speeds,
  ])
    expect(misfits(await desk.json(...line), schemaOf("gauges"))).toEqual([]);
});
