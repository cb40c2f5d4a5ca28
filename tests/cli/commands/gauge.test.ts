// gauge add and list. Contract: design.md §3 (gauges.csv).

import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";

const add = ["gauge", "add"] as const;
const red = [
  ...add,
  "red",
  "--kind",
  "compression",
  "--unit",
  "psi",
  "--full-scale",
  "300psi",
  "--class",
  "2.5",
  "--division",
  "5",
] as const;

const lastRow = (text: string): string => text.trimEnd().split(/\r?\n/).at(-1) ?? "";

test("a gauge is appended to gauges.csv", async () => {
  const desk = await deskWithPump();
  const { exit, out, err } = await desk.type(red);
  expect([exit, err]).toEqual([0, ""]);
  expect(out).toBe(
    "added  gauge red: compression, 300 psi, class 2.5 %, steps of 5 psi\n" +
      `${" ".repeat(50)}(sealtrend undo takes it back)\n`,
  );
  expect(lastRow(desk.text("logbook/gauges.csv"))).toBe("red,compression,psi,300,2.5,5,,,,,,,,,,,,,,,,,");
});

test("the first gauge begins the logbook and says where it is", async () => {
  const desk = newDesk();
  const { exit, err } = await desk.type(red);
  expect([exit, err]).toEqual([0, `your logbook is ${desk.folder}/data/sealtrend\n`]);
  expect(desk.names("data/sealtrend")).toEqual(["gauges.csv", "logbook.json"]);
});

test("the row is written in the dialect of the file, and no other byte changes", async () => {
  const desk = await deskWithPump();
  const before = "note;gauge;kind;unit;full_scale;class_percent;mine\r\nmeine;blau;compression;bar;20;1,6;x";
  desk.put("logbook/gauges.csv", before);
  await desk.type([...add, "lang", "--kind", "compression", "--full-scale", "60bar", "--class", "1.6"]);
  expect(desk.text("logbook/gauges.csv")).toBe(`${before}\r\n;lang;compression;bar;60;1,6;\r\n`);
});

test("figures in another unit are turned into that of the dial", async () => {
  const desk = await deskWithPump();
  await desk.type([
    ...add,
    "tester",
    "--kind",
    "leak-down",
    "--unit",
    "kPa",
    "--full-scale",
    "100psi",
    "--dial",
    "pressure",
    "--restrictor",
    "0.040in",
  ]);
  // 100 psi = 689.476 kPa (the pound and the inch of 1959); 0.040 in x 25.4 = 1.016 mm
  expect(lastRow(desk.text("logbook/gauges.csv"))).toBe(
    "tester,leak-down,kPa,689.476,,,,,,1.016,,,,,pressure,,,,,,,,",
  );
});

test("a restrictor that is not known is said so, never guessed", async () => {
  const desk = await deskWithPump();
  await desk.type([
    ...add,
    "tester",
    "--kind",
    "leak-down",
    "--dial",
    "percent-lost",
    "--restrictor",
    "unknown",
  ]);
  expect(lastRow(desk.text("logbook/gauges.csv"))).toContain(",unknown,");
  const { out } = await desk.type(["gauge", "list"]);
  expect(out.split("\n")[1]).toBe(
    "tester  leak-down      -      -     -  restrictor not known, dial percent-lost",
  );
});

test.each([
  [["--full-scale", "300"], '--full-scale "300": in which unit?'],
  [["--full-scale", "300mm"], '--full-scale "300mm"'],
  [["--unit", "psi", "--full-scale", "-3psi"], '--full-scale "-3psi"'],
  [["--class", "40"], '--class "40"'],
  [["--unit", "psi", "--full-scale", "300", "--division", "300"], "steps of 300 psi on a scale of 300 psi"],
  [["--unit", "psi", "--full-scale", "100", "--division", "500"], "steps of 500 psi on a scale of 100 psi"],
  [
    ["--unit", "psi", "--full-scale", "100", "--reads-high", "40"],
    "a gauge that reads 40 psi too high on a scale of 100 psi",
  ],
  [
    ["--unit", "psi", "--full-scale", "300", "--reads-high", "400psi"],
    '"400" is out of range for reads_high in psi',
  ],
  [["--restrictor", "1.0mm"], "--restrictor with --kind compression"],
  [["--dial", "pressure"], "--dial with --kind compression"],
])("a figure that does not fit is refused: %j", async (more, found) => {
  const desk = await deskWithPump();
  const before = desk.text("logbook/gauges.csv");
  const { exit, err } = await desk.type([...add, "red", "--kind", "compression", ...more]);
  expect([exit, err.split("\n")[0]]).toEqual([2, found]);
  expect(desk.text("logbook/gauges.csv")).toBe(before);
});

test("a restrictor without its unit is refused", async () => {
  const desk = await deskWithPump();
  const { exit, err } = await desk.type([...add, "tester", "--kind", "leak-down", "--restrictor", "1.0"]);
  expect([exit, err.split("\n")[0]]).toEqual([2, '--restrictor "1.0"']);
});

test("a kind is needed, and asked on a terminal", async () => {
  const desk = await deskWithPump();
  const { exit, err } = await desk.type([...add, "red"]);
  expect([exit, err.split("\n")[0]]).toEqual([2, "what does red measure?"]);
  expect(await desk.type([...add, "red"], { answers: ["compression"] })).toMatchObject({ exit: 0 });
});

test("a kind that is none is refused even when it was asked", async () => {
  const desk = await deskWithPump();
  expect(await desk.type([...add, "red"], { answers: ["oil"] })).toMatchObject({ exit: 2 });
});

test.each(["=cmd", "1.5", "a,b", "x".repeat(41)])("the name %s is refused", async (name) => {
  const desk = await deskWithPump();
  expect(await desk.type([...add, name, "--kind", "compression"])).toMatchObject({ exit: 2 });
});

test("a name that is taken is refused; a near one is questioned once", async () => {
  const desk = await deskWithPump();
  await desk.type(red);
  const again = await desk.type(red);
  expect([again.exit, again.err.split("\n")[0]]).toEqual([2, 'there is already a gauge "red" in logbook']);
  const near = await desk.type([...add, "rad", "--kind", "compression"]);
  expect([near.exit, near.err]).toEqual([
    0,
    "rad is named nearly like red, which is there already; if they are one:\nsealtrend undo\n",
  ]);
  const no = await desk.type([...add, "redd", "--kind", "compression"], { answers: ["no"] });
  expect([no.exit, no.asked]).toEqual([2, ["red is there already: is redd another gauge? (yes or no) "]]);
  expect(await desk.type([...add, "redd", "--kind", "compression"], { answers: ["yes"] })).toMatchObject({
    exit: 0,
    err: "",
  });
});

test("a column that the file lacks is added, and said", async () => {
  const desk = await deskWithPump();
  desk.put("logbook/gauges.csv", "gauge,kind\n");
  const { exit, err } = await desk.type(red);
  expect([exit, err]).toEqual([0, expect.stringContaining("logbook/gauges.csv got columns it lacked")]);
  expect(desk.text("logbook/gauges.csv")).toBe(
    "gauge,kind,unit,full_scale,class_percent,division\nred,compression,psi,300,2.5,5\n",
  );
});

test("the list has a line a gauge", async () => {
  const desk = newDesk();
  await desk.type(["demo"]);
  const { out } = await desk.type(["gauge", "list"]);
  expect(out).toBe(
    "gauge   kind           scale  class     step  more\n" +
      "red     compression  300 psi  2.5 %    5 psi  hose 4 cm3; screw-in hose\n" +
      "blue    compression  250 psi  1.6 %    2 psi  hose 3 cm3; second scale in bar\n" +
      "                                              and kPa\n" +
      "long    compression   60 bar  1.6 %  0.5 bar  hose 1 cm3; for diesels, with the\n" +
      "                                              dummy injector\n" +
      "tester  leak-down    100 psi  1.6 %    1 psi  restrictor 1 mm coned, 6.35 mm\n" +
      "                                              long, dial pressure, set to 80\n" +
      "                                              psi, dials agree; two dials\n",
  );
});

test("a logbook without a gauge says how to add one", async () => {
  const desk = await deskWithPump();
  expect(await desk.type(["gauge", "list"])).toMatchObject({
    exit: 0,
    out: expect.stringContaining("No gauge in logbook yet.") as string,
  });
});

const rowByColumn = (text: string): Readonly<Record<string, string>> => {
  const [header = "", ...rows] = text.trimEnd().split("\n");
  const cells = (rows.at(-1) ?? "").split(",");
  return Object.fromEntries(
    header
      .split(",")
      .flatMap((name, i) => (cells[i] === undefined || cells[i] === "" ? [] : [[name, cells[i]]])),
  );
};

test("everything that a tester may say of itself has an option, and stands in the list", async () => {
  const desk = await deskWithPump();
  const { exit, out } = await desk.type([
    ...add,
    "tester",
    ...["--kind", "leak-down", "--unit", "psi", "--full-scale", "100", "--dial", "pressure"],
    ...["--restrictor", "0.040in", "--restrictor-tolerance", "0.001in", "--restrictor-length", "0.25in"],
    ...[
      "--profile",
      "coned",
      "--cd",
      "0.87",
      "--regulated",
      "80",
      "--matched",
      "yes",
      "--reads-high",
      "-1psi",
    ],
  ]);
  expect([exit, out.replace(/\s+/g, " ")]).toEqual([
    0,
    "added gauge tester: leak-down, 100 psi, reads 1 psi low, restrictor 1.016 mm ±0.0254 mm coned, 6.35 mm long, Cd 0.87, dial " +
      "pressure, set to 80 psi, dials agree (sealtrend undo takes it back) ",
  ]);
  // 1 in = 25.4 mm
  expect(rowByColumn(desk.text("logbook/gauges.csv"))).toEqual({
    gauge: "tester",
    kind: "leak-down",
    unit: "psi",
    full_scale: "100",
    reads_high: "-1",
    restrictor_mm: "1.016",
    restrictor_length_mm: "6.35",
    profile: "coned",
    restrictor_cd: "0.87",
    regulated: "80",
    dial: "pressure",
    matched: "yes",
    restrictor_tol_mm: "0.0254",
  });
  expect((await desk.type(["gauge", "list"])).out).toContain("set to 80 psi");
});

test("a compression gauge says where its valve sits, what its hose holds and how high it reads", async () => {
  const desk = await deskWithPump();
  await desk.type([...red, "--valve-end", "plug", "--hose", "8cm3", "--reads-high", "20kPa"]);
  // 20 kPa = 2.90075 psi (the pound and the inch of 1959)
  expect(rowByColumn(desk.text("logbook/gauges.csv"))).toMatchObject({
    valve_end: "plug",
    hose_cm3: "8",
    reads_high: "2.90075",
  });
  const [gauge] = (await desk.json("gauge", "list")).gauges as Record<string, unknown>[];
  expect(gauge).toMatchObject({ valveEnd: "plug", hose_cm3: expect.closeTo(8, 9) as number });
});

test("the supply of a dial in percent keeps the unit it was typed in", async () => {
  const desk = await deskWithPump();
  await desk.type([...add, "tester", "--kind", "leak-down", "--dial", "percent-lost", "--regulated", "6bar"]);
  expect(rowByColumn(desk.text("logbook/gauges.csv"))).toMatchObject({ regulated: "6bar" });
});

test.each([
  [["--kind", "compression", "--matched", "yes"], "--matched with --kind compression"],
  [["--kind", "leak-down", "--hose", "8cm3"], "--hose with --kind leak-down"],
  [["--kind", "compression", "--hose", "8"], '--hose "8"'],
  [["--kind", "compression", "--hose", "2L"], '--hose "2L"'],
  [["--kind", "compression", "--reads-high", "3"], '--reads-high "3": in which unit?'],
  [["--kind", "leak-down", "--cd", "1.2"], '--cd "1.2"'],
  [
    ["--kind", "leak-down", "--full-scale", "100psi", "--regulated", "200psi"],
    "a supply of 200 psi on a dial that ends at 100 psi",
  ],
  [
    ["--kind", "leak-down", "--dial", "percent-lost", "--regulated", "80bar"],
    '"80bar" is out of range for regulated in bar',
  ],
  [
    ["--kind", "leak-down", "--restrictor", "unknown", "--restrictor-tolerance", "0.02mm"],
    "the bore is known to 0.02 mm, and no bore is given",
  ],
  [
    ["--kind", "leak-down", "--restrictor", "1.0mm", "--restrictor-tolerance", "0.6mm"],
    '--restrictor-tolerance "0.6mm"',
  ],
  [["--kind", "leak-down", "--restrictor-length", "6.35"], '--restrictor-length "6.35"'],
  [["--kind", "leak-down", "--dial", "percent-lost", "--regulated", "6"], '--regulated "6": in which unit?'],
])("%j does not fit: %s", async (more, found) => {
  const desk = await deskWithPump();
  const { exit, err } = await desk.type([...add, "red", ...more]);
  expect([exit, err.split("\n")[0]]).toEqual([2, found]);
});

test("what a gauge reads too high is put right on the screen, under what was read", async () => {
  const desk = await deskWithPump();
  await desk.type([...red, "--reads-high", "3psi"]);
  const { out } = await desk.type([
    ...["enter", "pump", "--dry", "153 151 152 150", "--gauge", "red", "--altitude", "0m"],
  ]);
  // each less 3 psi
  expect(out).toMatch(/^read +psi +153 +151 +152 +150$/m);
  expect(out).toMatch(/^gauge put right +psi +150 +148 +149 +147 +\(it reads 3 psi high\)$/m);
  const { correction, cylinders } = (await desk.json("show", "pump")) as {
    correction: { readsHigh_kPa: number };
    cylinders: { dry: { read_kPa: number[]; value_kPa: number } }[];
  };
  // 153 psi = 1054.90 kPa, 150 psi = 1034.21 kPa, 3 psi = 20.684 kPa
  expect(correction.readsHigh_kPa).toBeCloseTo(20.684, 3);
  expect(cylinders[0]?.dry.read_kPa[0]).toBeCloseTo(1054.9, 1);
  expect(cylinders[0]?.dry.value_kPa).toBeCloseTo(1034.21, 2);
});
