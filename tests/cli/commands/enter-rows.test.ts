// `enter`: what becomes a row, and in which test it stands. Readings invented; expected cells are what a person would write on the sheet.

import { expect, test } from "vitest";
import { deskWithPump } from "./desk.ts";
import { dry, enter, file, rowsOf } from "./entered.ts";

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
      test: "2026-11-25a",
      date: "2026-11-25",
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
    /^saved {2}pump 2026-11-25a, dry +\(sealtrend undo takes it back\)\n\nCylinder 3 is suspect: 17 % under the others/,
  );
});

test("a second test of the day gets the next letter", async () => {
  const desk = await deskWithPump();
  await enter(desk, ...dry);
  await enter(desk, ...dry);
  expect(rowsOf(desk).map((row) => row.test)).toEqual(["2026-11-25a", "2026-11-25b"]);
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

test("--test latest is the latest test", async () => {
  const desk = await deskWithPump();
  for (const day of ["2026-04-30", "2026-05-02"]) await enter(desk, ...dry, "--date", day);
  expect((await enter(desk, "--test", "latest", "--wet", "155 x x x", "--unit", "psi")).exit).toBe(0);
  expect(rowsOf(desk).at(-1)).toMatchObject({ test: "2026-05-02a", what: "wet" });
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

test("the gauge's unit counts where none was typed, and without either the unit is asked for", async () => {
  const desk = await deskWithPump();
  const open = await enter(desk, "--dry", "150 148 152 149");
  expect(open.exit).toBe(2);
  expect(open.err).toContain("in which unit?");
  await desk.type(["gauge", "add", "red", "--kind", "compression", "--unit", "bar"]);
  expect((await enter(desk, "--dry", "10.1 10.0 10.2 10.1", "--gauge", "red")).exit).toBe(0);
  expect(rowsOf(desk)[0]).toMatchObject({ unit: "bar", gauge: "red" });
});

test("a new gauge named nearly as a known one is questioned once", async () => {
  const desk = await deskWithPump();
  await desk.type(["gauge", "add", "yellow", "--kind", "compression", "--unit", "psi"]);
  const first = await enter(desk, ...dry, "--gauge", "yelow");
  expect(first.err).toContain('gauge "yelow" is not in gauges.csv; if you meant yellow');
  expect((await enter(desk, ...dry, "--gauge", "yelow")).err).toBe("");
  expect((await enter(desk, ...dry, "--gauge", "workshop")).err).toBe("");
});
