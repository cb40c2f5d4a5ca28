// `enter`: what is saved, what is refused, what is asked. Readings invented; expected cells are what a person would
// write on the sheet.

import { expect, test } from "vitest";
import { type Desk, deskWithPump, newDesk } from "./desk.ts";

const file = "logbook/pump/tests.csv";

/** Rows of tests.csv as objects, blanks left out. */
const rowsOf = (desk: Desk, name = file): Record<string, string>[] => {
  const [head = "", ...lines] = desk.text(name).trimEnd().split("\n");
  const names = head.split(",");
  return lines.map((line) =>
    Object.fromEntries(
      line
        .split(",")
        .map((cell, i) => [names[i] ?? "", cell] as const)
        .filter(([, cell]) => cell !== ""),
    ),
  );
};

const enter = (desk: Desk, ...words: string[]) => desk.type(["enter", "pump", ...words]);
const dry = ["--dry", "150 148 152 149", "--unit", "psi"];

test("readings become one row, as on the sheet, and their meaning is on the screen at once", async () => {
  const desk = await deskWithPump();
  const { exit, out, err } = await enter(
    desk,
    "--dry",
    "126 125 105 127",
    "--unit",
    "psi",
    "--altitude",
    "350m",
  );
  expect({ exit, err }).toEqual({ exit: 0, err: "" });
  expect(rowsOf(desk)).toEqual([
    {
      test: "2026-05-03a",
      date: "2026-05-03",
      what: "dry",
      take: "1",
      unit: "psi",
      c1: "126",
      c2: "125",
      c3: "105",
      c4: "127",
      altitude_m: "350",
    },
  ]);
  expect(out).toMatch(
    /^saved {2}pump 2026-05-03a, dry +\(sealtrend undo takes it back\)\n\nCylinder 3 is suspect: 17 % under the others/,
  );
});

test("a second test of the day gets the next letter", async () => {
  const desk = await deskWithPump();
  await enter(desk, ...dry);
  await enter(desk, ...dry);
  expect(rowsOf(desk).map((row) => row.test)).toEqual(["2026-05-03a", "2026-05-03b"]);
});

test("unquoted readings are taken, and a reading option given twice means repeats", async () => {
  const desk = await deskWithPump();
  const { exit } = await desk.type(
    "enter pump --dry 150 148 152 149 --dry 151 147 152 150 --wet 155 x x 150 --unit psi".split(" "),
  );
  expect(exit).toBe(0);
  expect(rowsOf(desk).map(({ what, take, c1 }) => [what, take, c1])).toEqual([
    ["dry", "1", "150"],
    ["dry", "2", "151"],
    ["wet", "1", "155"],
  ]);
});

test("every kind of reading, what was heard and the oil have their rows in one test", async () => {
  const desk = await deskWithPump();
  const kinds = [
    "dry",
    "wet",
    "first-stroke",
    "running",
    "snap-throttle",
    "leak-down",
    "leak-down-oiled",
    "leak-down-lower",
  ];
  const lines = kinds.flatMap((what) => [
    `--${what}`,
    what.startsWith("leak") ? "74 73 72 75" : "150 148 152 149",
  ]);
  const facts = ["--heard", "none exhaust:faint intake+crankcase neighbour:3", "--oil", "5ml x 5 x"];
  const { exit, err } = await enter(desk, ...lines, ...facts, "--unit", "psi", "--regulated", "80psi");
  expect({ exit, err }).toEqual({ exit: 0, err: "" });
  const rows = rowsOf(desk);
  expect(rows.map(({ what }) => what)).toEqual([...kinds, "heard", "oil"]);
  expect(new Set(rows.map((row) => row.test)).size).toBe(1);
  expect(rows.at(-2)).toMatchObject({ c2: "exhaust:faint", c3: "intake+crankcase", c4: "neighbour:3" });
  expect(rows.at(-1)).toMatchObject({ c1: "5", c2: "x" });
  expect(rows[0]).toMatchObject({ regulated_psi: "80" });
});

test.each([
  [["--altitude", "350m"], { altitude_m: "350" }],
  [["--altitude", "1148ft"], { altitude_m: "349.91" }],
  [["--station-pressure", "965hPa"], { station_pressure_hPa: "965" }],
  [["--station-pressure", "96.5kPa"], { station_pressure_hPa: "965" }],
  [["--qnh", "30inHg"], { qnh_hPa: "1015.92" }],
  [["--air", "22C"], { air_temp_C: "22" }],
  [["--air", "-5C"], { air_temp_C: "-5" }],
  [["--air", "50F"], { air_temp_C: "10" }],
  [["--speed", "230rpm"], { crank_rpm: "230" }],
  [["--speed", "230"], { crank_rpm: "230" }],
  [["--volts", "10.4"], { crank_V: "10.4" }],
  [["--strokes", "6"], { strokes: "6" }],
  [["--engine-temp", "warm"], { engine_temp: "warm" }],
  [["--engine-temp", "85C"], { engine_temp_C: "85" }],
  [["--throttle", "open"], { throttle: "open" }],
  [["--plugs", "all"], { plugs_out: "all" }],
  [["--release", "defeated"], { release: "defeated" }],
  [["--meter", "1412"], { meter: "1412" }],
  [["--by", "shop"], { by: "shop" }],
  [["--note", "by hand"], { note: "by hand" }],
  [["--date", "2026-04-30"], { date: "2026-04-30", test: "2026-04-30a" }],
])("%j stands in its own column, in the unit of the file", async (words, cells) => {
  const desk = await deskWithPump();
  const { exit, err } = await enter(desk, ...dry, ...words);
  expect({ exit, err }).toEqual({ exit: 0, err: "" });
  expect(rowsOf(desk)[0]).toMatchObject(cells);
});

test("a file with columns in other units gets its conditions in those", async () => {
  const desk = await deskWithPump();
  const head =
    "test,date,what,take,gauge,unit,c1,c2,c3,c4,altitude_ft,station_pressure_inHg,air_temp_F,engine_temp_F,qnh_inHg,by,note,meter";
  desk.put(file, `${head}\n`);
  await enter(desk, ...dry, "--altitude", "304.8m", "--air", "10C", "--station-pressure", "1000hPa");
  // 304.8 m = 1000 ft and 10 degC = 50 degF exactly; 1000 hPa = 29.53 inHg (conventional, to 0.01)
  const [row] = rowsOf(desk);
  expect(row).toMatchObject({ altitude_ft: "1000", air_temp_F: "50" });
  expect(Number(row?.station_pressure_inHg)).toBeCloseTo(29.53, 2);
});

test("a condition the file has no column for is refused, with the column to add", async () => {
  const desk = await deskWithPump();
  desk.put(file, "test,date,what,take,gauge,unit,c1,c2,c3,c4,by,note,meter\n");
  const { exit, err } = await enter(desk, ...dry, "--strokes", "6");
  expect(exit).toBe(2);
  expect(err).toContain("strokes");
  expect(rowsOf(desk)).toEqual([]);
});

test("--same-test and --test add takes to a test that is there", async () => {
  const desk = await deskWithPump();
  await enter(desk, ...dry, "--date", "2026-04-30");
  await enter(desk, ...dry, "--same-test");
  await enter(desk, ...dry, "--test", "2026-04-30a", "--wet", "155 x x x");
  expect(rowsOf(desk).map(({ test: id, what, take }) => `${id ?? ""} ${what ?? ""} ${take ?? ""}`)).toEqual([
    "2026-04-30a dry 1",
    "2026-04-30a dry 2",
    "2026-04-30a dry 3",
    "2026-04-30a wet 1",
  ]);
});

test("two gauges on one engine count their takes apart", async () => {
  const desk = await deskWithPump();
  await enter(desk, ...dry, "--gauge", "red");
  await enter(desk, ...dry, "--gauge", "blue", "--same-test");
  await enter(desk, ...dry, "--gauge", "red", "--same-test");
  expect(rowsOf(desk).map(({ gauge, take }) => [gauge, take])).toEqual([
    ["red", "1"],
    ["blue", "1"],
    ["red", "2"],
  ]);
});

test("pairs of a leak-down leave the cylinder side in the row and the supply with it", async () => {
  const desk = await deskWithPump();
  await enter(desk, "--leak-down", "74/80 72/80 61/80 75/80", "--unit", "psi");
  expect(rowsOf(desk)).toMatchObject([
    { what: "leak-down", unit: "psi", c1: "74", c3: "61", regulated_psi: "80" },
  ]);
  const { cylinders } = (await desk.json("show", "pump")) as { cylinders: { leakDown: { lost: number } }[] };
  expect(cylinders.map(({ leakDown }) => leakDown.lost)).toEqual(
    [6, 8, 19, 5].map((less): unknown => expect.closeTo(less / 80, 12)),
  );
});

test("pairs with several supplies keep each cylinder its own", async () => {
  const desk = await deskWithPump();
  const { out } = await enter(desk, "--leak-down", "74/80 72/80 x 75/82", "--unit", "psi");
  expect(rowsOf(desk)).toMatchObject([
    { what: "leak-down", c1: "74", c3: "x" },
    { what: "regulated", unit: "psi", c1: "80", c3: "x", c4: "82" },
  ]);
  expect(out).toMatch(/^saved {2}pump 2026-05-03a, leak-down /);
  const { cylinders } = (await desk.json("show", "pump")) as { cylinders: { leakDown?: { lost: number } }[] };
  expect(cylinders[3]?.leakDown?.lost).toBeCloseTo(7 / 82, 12);
});

test("a leak-down in percent is taken as percent lost, --differential is another name for it", async () => {
  const desk = await deskWithPump();
  const { out } = await enter(desk, "--differential", "8 9 24 7", "--unit", "%");
  expect(rowsOf(desk)).toMatchObject([{ what: "leak-down", unit: "%", c3: "24" }]);
  expect(out).toContain("24 % lost in the leak-down");
});

test("a dial that shows percent held is read as such", async () => {
  const desk = await deskWithPump();
  await desk.type(["gauge", "add", "holder", "--kind", "leak-down", "--dial", "percent-held"]);
  await enter(desk, "--leak-down", "92 91 76 93", "--gauge", "holder");
  const { cylinders } = (await desk.json("show", "pump")) as { cylinders: { leakDown: { lost: number } }[] };
  expect(cylinders[2]?.leakDown.lost).toBeCloseTo(0.24, 12);
});

test("the gauge's unit counts where none was typed, and without either the unit is asked for", async () => {
  const desk = await deskWithPump();
  const open = await enter(desk, "--dry", "150 148 152 149");
  expect(open.exit).toBe(2);
  expect(open.err).toContain("in which unit?");
  await desk.type(["gauge", "add", "red", "--kind", "compression", "--unit", "bar"]);
  expect((await enter(desk, "--dry", "10.1 10.0 10.2 10.1", "--gauge", "red")).exit).toBe(0);
  expect(rowsOf(desk)[0]).toMatchObject({ unit: "bar", gauge: "red" });
});

test("the supply of a leak-down tells the unit of the leak-down, never of a cranking reading", async () => {
  const desk = await deskWithPump();
  const { exit, err } = await enter(desk, "--dry", "150 148 152 149", "--regulated", "80psi");
  expect(exit).toBe(2);
  expect(err).toContain("in which unit?");
  expect((await enter(desk, "--leak-down", "74 72 61 75", "--regulated", "80psi")).exit).toBe(0);
});

test("a tester stands beside its leak-down only, and a gauge of the wrong kind is refused", async () => {
  const desk = await deskWithPump();
  await desk.type(["gauge", "add", "leaky", "--kind", "leak-down", "--unit", "psi"]);
  await enter(desk, ...dry, "--leak-down", "74/80 72/80 61/80 75/80", "--gauge", "leaky");
  expect(rowsOf(desk).map(({ what, gauge }) => [what, gauge])).toEqual([
    ["dry", undefined],
    ["leak-down", "leaky"],
  ]);
  const wrong = await enter(desk, ...dry, "--gauge", "leaky");
  expect(wrong.exit).toBe(2);
  expect(wrong.err).toContain("is a leak-down tester, but the readings are dry");
});

test.each([
  ["too few readings", ["--dry", "150 148 152", "--unit", "psi"], "3 readings"],
  ["too many readings", ["--dry", "150 148 152 149 150", "--unit", "psi"], "5 readings"],
  ["a letter among digits", ["--dry", "150 14O 152 149", "--unit", "psi"], "14O"],
  ["a reading above all gauges", ["--dry", "150 148 152 99999", "--unit", "psi"], "99999"],
  ["a reading below 0", ["--dry", "150 148 -5 149", "--unit", "psi"], "-5"],
  ["percent where a pressure belongs", ["--dry", "150 148 152 149", "--unit", "%"], "percent"],
  ["a leak above its supply", ["--leak-down", "74/80 72/80 95/80 75/80", "--unit", "psi"], "95"],
  ["a leak-down without its supply", ["--leak-down", "74 72 61 75", "--unit", "psi"], "suppl"],
  ["pairs in percent", ["--leak-down", "74/80 72/80 61/80 75/80", "--unit", "%"], "not percent"],
  [
    "the supply twice",
    ["--leak-down", "74/80 72/80 61/80 75/80", "--unit", "psi", "--regulated", "90psi"],
    "--regulated too",
  ],
  ["a place that is none", ["--heard", "exhaust nowhere none none"], "nowhere"],
  ["too few places", ["--heard", "exhaust none"], "2 places for 4 cylinders"],
  ["a condition without its unit", [...dry, "--altitude", "350"], "350"],
  ["a condition out of all bounds", [...dry, "--station-pressure", "96.5hPa"], "96.5"],
  ["a day that is none", [...dry, "--date", "2026-02-30"], "2026-02-30"],
  ["a day to come", [...dry, "--date", "2026-05-04"], "lies ahead"],
  ["a test that is not there", [...dry, "--test", "2026-01-01a"], "no test"],
  ["no test to add to", [...dry, "--same-test"], "no test to add to"],
  ["two tests at once", [...dry, "--same-test", "--test", "2026-01-01a"], "together"],
  ["a day for a test that has one", [...dry, "--test", "2026-01-01a", "--date", "2026-01-01"], "--date"],
  ["fields of a new engine without --new", [...dry, "--cylinders", "4"], "--new"],
  ["no readings at all", [], "no readings given"],
])("%s is refused with a fault, and nothing is written", async (_, words, said) => {
  const desk = await deskWithPump();
  const before = desk.text(file);
  const { exit, out, err } = await enter(desk, ...words);
  expect(exit).toBe(2);
  expect(out).toBe("");
  expect(err).toContain(said);
  expect(desk.text(file)).toBe(before);
});

test("several faults are all named at once", async () => {
  const desk = await deskWithPump();
  const { err } = await enter(
    desk,
    "--dry",
    "150 148",
    "--wet",
    "1 2 3 4 5",
    "--unit",
    "psi",
    "--altitude",
    "high",
  );
  for (const word of ["--dry", "--wet", "--altitude"]) expect(err).toContain(word);
});

test("a condition that disagrees with the test it is added to is refused with both values", async () => {
  const desk = await deskWithPump();
  await enter(desk, ...dry, "--speed", "150rpm");
  const { exit, err } = await enter(desk, ...dry, "--speed", "240rpm", "--same-test");
  expect(exit).toBe(2);
  expect(err).toContain('"240"');
  expect(err).toContain('"150"');
  expect(err).toContain('not saved: --dry "150 148 152 149"');
});

test("faults in older rows do not lose a new reading", async () => {
  const desk = await deskWithPump();
  await enter(desk, ...dry);
  desk.put(file, desk.text(file).replace("148", "14O"));
  const { exit, out, err } = await enter(desk, "--dry", "151 149 150 148", "--unit", "psi");
  expect(exit).toBe(1);
  expect(out).toMatch(/^saved {2}pump 2026-05-03b/);
  expect(err).toContain('"14O"');
  expect(rowsOf(desk).at(-1)).toMatchObject({ test: "2026-05-03b", c1: "151" });
});

test("the first write makes the logbook of this user and says where", async () => {
  const desk = newDesk();
  const { exit, err } = await desk.type([
    "enter",
    "baler",
    "--new",
    "--cylinders",
    "2",
    "--ignition",
    "spark",
    "--dry",
    "118 121",
    "--unit",
    "psi",
  ]);
  expect(exit).toBe(0);
  expect(err).toContain(`your logbook is ${desk.folder}`);
  expect((await desk.type(["show", "baler"])).out).toContain("Both are even");
});

test("an engine can be begun with labels of one's own and without an ignition", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["enter", "twin", "--new", "--cylinders", "L R", "--dry", "118 121", "--unit", "psi"]);
  expect(JSON.parse(desk.text("logbook/twin/engine.json"))).toMatchObject({
    cylinders: ["L", "R"],
    ignition: "unknown",
  });
  expect(desk.text("logbook/twin/tests.csv").split("\n")[0]).toContain(",cL,cR,");
});

test("a new engine needs a name that is free and its cylinders", async () => {
  const desk = await deskWithPump();
  expect((await desk.type(["enter", "--new", "--cylinders", "2", ...dry])).err).toContain("has no name");
  expect((await desk.type(["enter", "baler", "--new", ...dry])).err).toContain("how many cylinders");
  expect((await desk.type(["enter", "pump", "--new", "--cylinders", "4", ...dry])).exit).toBe(2);
  expect((await desk.type(["enter", "a/b", "--new", "--cylinders", "4", ...dry])).exit).toBe(2);
});

test("nothing is ever written into the demo", async () => {
  const desk = await deskWithPump();
  desk.put("logbook/logbook.json", '{ "schema": "sealtrend/logbook@1", "demo": true }\n');
  const before = desk.text(file);
  const { exit, err } = await enter(desk, ...dry);
  expect(exit).toBe(2);
  expect(err).toContain("the demo");
  expect(desk.text(file)).toBe(before);
});

test("a new gauge named nearly as a known one is questioned once", async () => {
  const desk = await deskWithPump();
  await desk.type(["gauge", "add", "yellow", "--kind", "compression", "--unit", "psi"]);
  const first = await enter(desk, ...dry, "--gauge", "yelow");
  expect(first.err).toContain('gauge "yelow" is not in gauges.csv; if you meant yellow');
  expect((await enter(desk, ...dry, "--gauge", "yelow")).err).toBe("");
  expect((await enter(desk, ...dry, "--gauge", "workshop")).err).toBe("");
});

test("a reading that cannot be saved is printed back as it can be typed again", async () => {
  const desk = newDesk();
  desk.put("wall", "a file, no folder");
  const { exit, out, err } = await desk.type([
    "enter",
    "baler",
    "--new",
    "--cylinders",
    "2",
    "--dry",
    "118 121",
    "--unit",
    "psi",
    "--logbook",
    "wall/logbook",
  ]);
  expect(exit).toBe(3);
  expect(out).toBe("");
  expect(err).toContain('not saved: --dry "118 121" --unit "psi"');
});

const answers = (...lines: string[]) => ({ answers: lines });

test("on a terminal everything is asked in turn, and the spread shows as it grows", async () => {
  const desk = await deskWithPump();
  const { exit, out, asked } = await desk.type(
    ["enter", "pump"],
    answers("red", "psi", "150", "148", "152", "131?", "warm", "6", "230rpm", "350m", "open", ""),
  );
  expect(exit).toBe(0);
  expect(asked.slice(0, 3)).toEqual([
    "gauge (a name for it; Enter = not recorded): ",
    "unit (psi, kPa, bar, MPa, kgf/cm2): ",
    "cylinder 1: ",
  ]);
  expect(out).toContain("  1:150 2:148   lowest/highest 0.99\n");
  expect(out).toContain("  1:150 2:148 3:152 4:131?   lowest/highest 0.86\n");
  expect(rowsOf(desk)).toMatchObject([
    {
      gauge: "red",
      unit: "psi",
      c4: "131?",
      engine_temp: "warm",
      strokes: "6",
      crank_rpm: "230",
      altitude_m: "350",
      throttle: "open",
    },
  ]);
});

test("a wrong answer is asked again, of a cylinder, a unit and a condition alike", async () => {
  const desk = await deskWithPump();
  const { exit, out, asked } = await desk.type(
    ["enter", "pump", "--gauge", "red"],
    answers(
      "pounds",
      "psi",
      "150",
      "l48",
      "148",
      "152",
      "x",
      "hot",
      "warm",
      "many",
      "6",
      "",
      "",
      "shut",
      "open",
      "lots",
      "1412",
    ),
  );
  expect(exit).toBe(0);
  expect(asked).toHaveLength(17);
  expect(out).toContain("one of psi, kPa");
  expect(out).toContain("a number such as 131");
  expect(out).toContain("expected warm, part-warm, cold");
  expect(rowsOf(desk)).toMatchObject([
    { c2: "148", c4: "x", engine_temp: "warm", throttle: "open", meter: "1412" },
  ]);
});

test("b goes back one, as often as wanted, and no further than the first question", async () => {
  const desk = await deskWithPump();
  const { asked } = await desk.type(
    ["enter", "pump", "--gauge", "red", "--unit", "psi"],
    answers("b", "105", "b", "150", "148", "152", "149", "cold", "b", "warm", "", "", "", "", ""),
  );
  expect(asked.slice(0, 4)).toEqual(["cylinder 1: ", "cylinder 1: ", "cylinder 2: ", "cylinder 1: "]);
  expect(rowsOf(desk)).toMatchObject([{ c1: "150", c2: "148", engine_temp: "warm" }]);
});

test("q and the end of input leave without saving, and give back what was typed", async () => {
  for (const last of [["q"], []]) {
    const desk = await deskWithPump();
    const { exit, err } = await desk.type(["enter", "pump"], answers("red", "psi", "150", "148", ...last));
    expect(exit).toBe(2);
    expect(err).toContain("nothing was saved");
    expect(err).toContain("typed so far: 150 148");
    expect(rowsOf(desk)).toEqual([]);
  }
});

test("a gauge named nearly as a known one is asked about once, and its unit is then not asked for", async () => {
  const desk = await deskWithPump();
  await desk.type(["gauge", "add", "yellow", "--kind", "compression", "--unit", "psi"]);
  const { out, asked } = await desk.type(
    ["enter", "pump"],
    answers("yelow", "yellow", "150", "148", "152", "149", "", "", "", "", "", ""),
  );
  expect(out).toContain("did you mean yellow?");
  expect(asked[0]).toBe("gauge (yellow; Enter = not recorded): ");
  expect(asked[2]).toBe("cylinder 1: ");
  expect(rowsOf(desk)).toMatchObject([{ gauge: "yellow", unit: "psi" }]);
});

test.each([1, 28])("an engine of %i cylinders is asked through", async (count) => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "big", "--cylinders", String(count), "--ignition", "compression"]);
  const readings = Array.from({ length: count }, (_, i) => String(400 + (i % 3)));
  const { exit } = await desk.type(["enter", "big"], answers("", "psi", ...readings, "", "", "", "", ""));
  expect(exit).toBe(0);
  const shown = await desk.type(["show", "big"]);
  expect(shown.exit).toBe(0);
  for (const line of shown.out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
});

test("answers that together make a fault are given back, not lost", async () => {
  const desk = await deskWithPump();
  const { exit, err } = await desk.type(
    ["enter", "pump", "--gauge", "red", "--unit", "psi"],
    answers("150", "148", "99999", "149", "", "", "", "", "", ""),
  );
  expect(exit).toBe(2);
  expect(err).toContain('not saved: --dry "150 148 99999 149"');
});

test("--no-input never asks, on a terminal either", async () => {
  const desk = await deskWithPump();
  const { exit, asked } = await desk.type(["enter", "pump", "--no-input"], answers("red"));
  expect(exit).toBe(2);
  expect(asked).toEqual([]);
});
