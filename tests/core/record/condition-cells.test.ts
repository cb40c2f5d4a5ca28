import { conditionCell, conditionColumns, conditionKinds, numberColumns } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { read } from "./sample.ts";

const cell = (option: string, typed: string, columns = conditionColumns, assumed?: "psi" | "%") =>
  conditionCell(option, typed, columns, assumed);

describe("a condition as it is typed becomes the cell of the file's column", () => {
  test.each([
    ["altitude", "350m", "altitude_m", "350"],
    // 1 ft = 0.3048 m, exact
    ["altitude", "1000ft", "altitude_m", "304.8"],
    ["station-pressure", "965hPa", "station_pressure_hPa", "965"],
    ["station-pressure", "96.5kPa", "station_pressure_hPa", "965"],
    // conventional inch of mercury 3386.389 Pa (NIST SP 811): 29.92 inHg = 1013.21 hPa
    ["qnh", "29.92inHg", "qnh_hPa", "1013.21"],
    ["air", "-5C", "air_temp_C", "-5"],
    // (72 − 32)·5/9
    ["air", "72F", "air_temp_C", "22.2222"],
    ["speed", "230rpm", "crank_rpm", "230"],
    ["speed", "230", "crank_rpm", "230"],
    ["volts", "10,4", "crank_V", "10.4"],
    ["strokes", "6", "strokes", "6"],
    ["engine-temp", "Warm", "engine_temp", "warm"],
    ["engine-temp", "80C", "engine_temp_C", "80"],
    ["throttle", "open", "throttle", "open"],
    ["plugs", "all", "plugs_out", "all"],
    ["release", "defeated", "release", "defeated"],
    ["regulated", "80psi", "regulated_psi", "80"],
    ["master", "43psi", "master_psi", "43"],
  ])("--%s %s", (option, typed, column, text) => {
    expect(cell(option, typed)).toEqual({ ok: true, column, text });
  });

  test("the column in the unit that was typed is taken before another", () => {
    expect(cell("altitude", "1000ft", ["altitude_m", "altitude_ft"])).toEqual({
      ok: true,
      column: "altitude_ft",
      text: "1000",
    });
  });

  test("a bare supply takes the unit of the readings; a master reading in percent has a column of its own", () => {
    expect(cell("regulated", "80", conditionColumns, "psi")).toMatchObject({
      column: "regulated_psi",
      text: "80",
    });
    expect(cell("master", "43%", ["master_percent"])).toMatchObject({ column: "master_percent", text: "43" });
    expect(cell("master", "43", ["master_percent"], "%")).toMatchObject({
      column: "master_percent",
      text: "43",
    });
  });
});

describe("what is open, wrong or out of reason is refused, with a mend to type", () => {
  test.each([
    ["altitude", "350", "--altitude 350m"],
    ["air", "22", "--air 22C"],
    ["engine-temp", "80", "--engine-temp 80C"],
    ["altitude", "1,200m", "--altitude 1200m or 1.200m"],
    ["altitude", "350psi", "--altitude 350m"],
    // 9000 m is above every road, 9000 ft is 2743 m
    ["altitude", "9000m", "--altitude 9000ft"],
    ["altitude", "9000", "--altitude 9000ft"],
    ["altitude", "90000m", "--altitude 350m"],
    ["station-pressure", "30hPa", "--station-pressure 30inHg"],
    ["station-pressure", "101", "--station-pressure 101kPa"],
    ["station-pressure", "29.9", "--station-pressure 29.9inHg"],
    ["station-pressure", "5hPa", "--station-pressure 965hPa"],
    ["qnh", "1016", "--qnh 1016hPa"],
    ["qnh", "101", "--qnh 1016hPa"],
    ["air", "90", "--air 90F"],
    ["air", "0K", "--air 0C"],
    ["engine-temp", "hot", "--engine-temp warm"],
    ["throttle", "half", "--throttle open"],
    ["strokes", "6.5", "--strokes 6"],
    ["strokes", "0", "--strokes 6"],
    ["strokes", "99", "--strokes 6"],
    ["speed", "fast", "--speed 230rpm"],
    ["regulated", "80", "--regulated 80psi"],
  ])("--%s %s", (option, typed, mend) => {
    expect(cell(option, typed)).toMatchObject({ ok: false, found: `--${option} "${typed}"`, mend });
  });

  test.each(["abc%", "120%", "%"])("--master %s", (typed) => {
    expect(cell("master", typed, ["master_percent"])).toMatchObject({
      ok: false,
      expected: "master reading in percent lost from 0 to 100",
    });
  });

  test("a file without the column says which to add", () => {
    expect(cell("altitude", "350m", ["test"])).toEqual({
      ok: false,
      found: "tests.csv has no column for --altitude",
      expected: "a column altitude_m",
      mend: "add ,altitude_m to the end of the first line of tests.csv",
    });
  });

  test("an option that is none is a mistake of the caller", () => {
    expect(() => cell("humidity", "50%")).toThrow(RangeError);
  });
});

test.each(["9000", "9000m", "-400", "101", "29.92", "1016", "90", "0", "120", ".9"])(
  "a mend for %s is taken when it is typed",
  (typed) => {
    for (const option of ["altitude", "station-pressure", "qnh", "air", "engine-temp"]) {
      const refused = cell(option, typed);
      expect([option, refused.ok]).toEqual([option, false]);
      const mend = refused.ok ? "" : refused.mend.replace(`--${option} `, "");
      expect([option, mend, cell(option, mend).ok]).toEqual([option, mend, true]);
    }
  },
);

test("every example of a condition is taken", () => {
  const columns = [...Object.keys(numberColumns), ...conditionColumns];
  for (const [option, { example }] of Object.entries(conditionKinds))
    expect([option, cell(option, example, columns).ok]).toEqual([option, true]);
});

test("what is typed as a condition is among the conditions of the test that its cell makes", () => {
  const columns = [...Object.keys(numberColumns), ...conditionColumns];
  for (const [option, { key, example }] of Object.entries(conditionKinds)) {
    const made = cell(option, example, columns);
    const [column, text] = made.ok ? [made.column, made.text] : ["", ""];
    const { tests, problems } = read([`A,2026-05-03,,dry,1,,psi,150,149,151,148,${text}`], column);
    expect([option, problems, tests[0]?.conditions[key]]).toEqual([option, [], expect.anything()]);
  }
});
