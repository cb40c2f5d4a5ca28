import { length, readTests, type Test } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { engine, faults, gauges, header, oneTest, read } from "./sample.ts";

/** The cells of the first row of a test: psi to a whole number, fractions lost to three digits, marks as they mean. */
const shown = ({ rows }: Test, row = 0): readonly string[] =>
  (rows[row]?.cells ?? []).map((cell) => {
    if (cell.kind === "not-taken") return "-";
    // exact: 1 psi is 6894.757293… Pa
    const value =
      rows[row]?.holds === "lost" ? cell.value.toFixed(3) : (cell.value / 6894.757293168361).toFixed(2);
    return `${cell.pegged ? ">" : ""}${value}${cell.doubtful ? "?" : ""}`;
  });

describe("a row of readings", () => {
  test("a number, a pegged needle, a doubtful reading, and one that was not taken", () => {
    expect(shown(oneTest(["a,2026-05-03,,dry,,red,psi,131,>300,131?,x"]))).toEqual([
      "131.00",
      ">300.00",
      "131.00?",
      "-",
    ]);
    expect(shown(oneTest(["a,2026-05-03,,dry,,red,psi,,-,?,>290?"]))).toEqual(["-", "-", "-", ">290.00?"]);
  });

  test("the digits that were typed stay beside the value", () => {
    expect(oneTest(["a,2026-05-03,,dry,,red,psi,131.50,x,x,x"]).rows[0]?.cells[0]).toMatchObject({
      text: "131.50",
    });
  });

  test("without a unit the gauge's own counts; with neither it is a fault", () => {
    // 9.1 bar = 910 000 Pa = 131.98 psi
    expect(shown(oneTest(["a,2026-05-03,,dry,,blue,,9.1,x,x,x"]))[0]).toBe("131.98");
    expect(faults(["a,2026-05-03,,dry,,,,131,x,x,x"])).toEqual(["unit-missing@2 ,"]);
    expect(faults(["a,2026-05-03,,dry,,green,,131,x,x,x"])).toEqual(["unit-missing@2 ,"]);
  });

  test("units are taken in their usual spellings; a milli-pascal and a length are refused", () => {
    expect(shown(oneTest(["a,2026-05-03,,dry,,,PSIG,131,x,x,x"]))[0]).toBe("131.00");
    expect(oneTest(["a,2026-05-03,,dry,,,kg/cm2,9,x,x,x"]).rows[0]?.unit).toBe("kgf/cm2");
    expect(faults(["a,2026-05-03,,dry,,,mPa,0.9,x,x,x"])).toEqual(["unit-unknown@2 mPa"]);
    expect(faults(["a,2026-05-03,,dry,,,mm,9,x,x,x"])).toEqual(["unit-unknown@2 mm"]);
  });

  test("a reading above the dial is refused, but for a pegged needle and 2 % for its thickness", () => {
    expect(faults(["a,2026-05-03,,dry,,red,psi,307,x,x,x"])).toEqual(["gauge-over@2 307"]);
    expect(faults(["a,2026-05-03,,dry,,red,psi,306,>310,x,x"])).toEqual([]);
  });

  test("a reading above 20 MPa is no reading", () => {
    expect(faults(["a,2026-05-03,,dry,,,psi,2901,x,x,x"])).toEqual(["number-range@2 2901"]);
    expect(faults(["a,2026-05-03,,dry,,,MPa,-1,x,x,x"])).toEqual(["number-range@2 -1"]);
  });

  test.each([
    ["14O", "letter O"],
    ["74/80", "two readings"],
    ["#REF!", "spreadsheet's error mark"],
    ["1e3", "short form"],
    [">", "is not a number"],
    ["131??", "is not a number"],
    ["131 psi", "unit"],
  ])("the cell %s is refused and the reason said: %s", (cell, reason) => {
    const { problems } = read([`a,2026-05-03,,dry,,red,psi,${cell},x,x,x`]);
    expect(problems.map(({ code, column }) => [code, column])).toEqual([["number-bad", 28]]);
    expect(problems[0]?.found).toContain(reason);
    expect(problems[0]?.found).toContain(cell === "131??" ? '"131?"' : `"${cell}"`);
  });

  test("takes number the repeats; the same take twice on one gauge is a fault, on two gauges it is not", () => {
    expect(
      oneTest(["a,2026-05-03,,dry,2,red,psi,130,x,x,x", "a,2026-05-03,,dry,,red,psi,131,x,x,x"]).rows.map(
        ({ take }) => take,
      ),
    ).toEqual([1, 2]);
    expect(faults(["a,2026-05-03,,dry,1,red,psi,130,x,x,x", "a,2026-05-03,,dry,,red,psi,131,x,x,x"])).toEqual(
      ["row-twice@3 ,"],
    );
    expect(
      oneTest(["a,2026-05-03,,dry,1,red,psi,130,x,x,x", "a,2026-05-03,,dry,1,blue,bar,9.1,x,x,x"]).rows.map(
        ({ gauge }) => gauge,
      ),
    ).toEqual(["blue", "red"]);
    for (const take of ["0", "1.5", "first", "100"])
      expect(faults([`a,2026-05-03,,dry,${take},red,psi,130,x,x,x`])).toEqual([`take-bad@2 ${take}`]);
  });
});

describe("percent", () => {
  test("a percent is what is lost, unless the gauge's dial shows what is held", () => {
    expect(shown(oneTest(["a,2026-05-03,,leak-down,,dial,%,18,5,x,100"]))).toEqual([
      "0.180",
      "0.050",
      "-",
      "1.000",
    ]);
    expect(shown(oneTest(["a,2026-05-03,,leak-down,,,%,18,5,x,100"]))).toEqual([
      "0.180",
      "0.050",
      "-",
      "1.000",
    ]);
    expect(shown(oneTest(["a,2026-05-03,,leak-down,,held,%,82,95,x,0"]))).toEqual([
      "0.180",
      "0.050",
      "-",
      "1.000",
    ]);
  });

  test("a gauge with a percent dial needs no unit in the row", () => {
    expect(shown(oneTest(["a,2026-05-03,,leak-down-oiled,,held,,82,x,x,x"]))[0]).toBe("0.180");
  });

  test("only a leak-down is read in percent, and only from 0 to 100", () => {
    expect(faults(["a,2026-05-03,,dry,,dial,%,18,x,x,x"])).toEqual(["percent-out-of-place@2 %"]);
    expect(faults(["a,2026-05-03,,leak-down,,dial,%,101,-1,x,x"])).toEqual([
      "number-range@2 101",
      "number-range@2 -1",
    ]);
  });
});

describe("a leak-down in pressure", () => {
  const pair = (rows: readonly string[]) => faults(rows, "regulated_psi");

  test("needs its supply, from any row of the test", () => {
    expect(pair(["a,2026-05-03,,leak-down,,tester,psi,74,72,x,x,"])).toEqual(["supply-missing@2 leak-down"]);
    expect(
      pair(["a,2026-05-03,,leak-down,,tester,psi,74,72,x,x,", "a,2026-05-03,,dry,,red,psi,131,x,x,x,80"]),
    ).toEqual([]);
  });

  test("takes a supply of its own for each cylinder; one that is left out is missed", () => {
    expect(
      pair(["a,2026-05-03,,leak-down,,tester,psi,74,72,x,x,", "a,2026-05-03,,regulated,,,psi,80,79,,,"]),
    ).toEqual([]);
    expect(
      pair(["a,2026-05-03,,leak-down,,tester,psi,74,72,x,x,", "a,2026-05-03,,regulated,,,psi,80,,,,"]),
    ).toEqual(["supply-missing@2 leak-down"]);
  });

  test("is at most the supply, and 3 % for two dials that differ", () => {
    expect(pair(["a,2026-05-03,,leak-down,,tester,psi,82.4,83,x,x,80"])).toEqual(["leak-over-supply@2 83"]);
  });

  test("is not blamed for a supply that stands in a row with another fault", () => {
    expect(
      pair(["a,2026-05-03,,leak-down,,tester,psi,74,72,x,x,", "a,2026-05-03,,dry,,red,psi,14O,x,x,x,80"]),
    ).toEqual(["number-bad@3 14O"]);
  });

  test("a supply in percent is refused", () => {
    expect(pair(["a,2026-05-03,,regulated,,,%,80,80,80,80,"])).toEqual(["percent-out-of-place@2 %"]);
    expect(pair(["a,2026-05-03,,regulated,,held,,80,80,80,80,"])).toEqual(["percent-out-of-place@2 ,"]);
  });
});

describe("where air was heard", () => {
  const heard = (cells: string) => oneTest([`a,2026-05-03,,heard,,,,${cells}`]).heard;

  test("a place, faint or not, several joined by +, the neighbour by its label, and none", () => {
    expect(heard("exhaust,crankcase:faint+intake,neighbour:4,none")).toEqual([
      [{ place: "exhaust", faint: false }],
      [
        { place: "crankcase", faint: true },
        { place: "intake", faint: false },
      ],
      [{ place: "neighbour", faint: false, neighbour: "4" }],
      [{ place: "none", faint: false }],
    ]);
  });

  test("other words for the same place, any case, and cells where nobody listened", () => {
    expect(heard("Tailpipe:loud,oil filler,x,")).toEqual([
      [{ place: "exhaust", faint: false }],
      [{ place: "crankcase", faint: false }],
      undefined,
      undefined,
    ]);
  });

  test.each([
    "exaust",
    "exhaust:4",
    "exhaust:weak",
    "none+exhaust",
    "neighbour:9",
    "constructor",
    "+",
    "exhaust+",
  ])("%s is refused", (cell) => {
    expect(faults([`a,2026-05-03,,heard,,,,${cell},x,x,x`])).toEqual([`heard-unknown@2 ${cell}`]);
  });

  test("a near word is suggested for the part that is wrong", () => {
    expect(read(["a,2026-05-03,,heard,,,,exaust+intake,x,x,x"]).problems[0]).toMatchObject({
      found: '"exaust" is no place where air is heard',
      mend: "write exhaust",
    });
  });
});

describe("facts that differ by cylinder", () => {
  test("oil, speed, strokes and order, in the engine's order", () => {
    expect(
      oneTest([
        "a,2026-05-03,,oil,,,,5,,5,x",
        "a,2026-05-03,,speed,,,,230,235,,",
        "a,2026-05-03,,strokes,,,,6,6,7,6",
        "a,2026-05-03,,order,,,,1,3,2,4",
      ]).perCylinder,
    ).toEqual({
      oil: [expect.closeTo(5e-6, 12), undefined, expect.closeTo(5e-6, 12), undefined],
      speed: [230, 235, undefined, undefined],
      strokes: [6, 6, 7, 6],
      order: [1, 3, 2, 4],
    });
  });

  test("each kind stands in one row of a test, as does what was heard", () => {
    expect(faults(["a,2026-05-03,,oil,,,,5,,,", "a,2026-05-03,,oil,,,,,,5,"])).toEqual(["row-twice@3 oil"]);
    expect(faults(["a,2026-05-03,,heard,,,,plug,,,", "a,2026-05-03,,heard,,,,,plug,,"])).toEqual([
      "row-twice@3 heard",
    ]);
  });

  test("out of reason is out of range", () => {
    expect(
      faults([
        "a,2026-05-03,,oil,,,,101,,,",
        "b,2026-05-03,,speed,,,,19,,,",
        "c,2026-05-03,,strokes,,,,61,,,",
        "d,2026-05-03,,order,,,,0,,,",
      ]),
    ).toEqual(["number-range@2 101", "number-range@3 19", "number-range@4 61", "number-range@5 0"]);
  });
});

describe("what a test shares", () => {
  const dry = (id: string, rest: string) => `${id},2026-05-03,,dry,,red,psi,131,130,129,128,${rest}`;
  const wet = (id: string, rest: string) => `${id},2026-05-03,,wet,,red,psi,135,134,133,132,${rest}`;

  test("a condition left blank is taken from any row of the test", () => {
    expect(oneTest([dry("a", ",warm"), wet("a", "230,")], "crank_rpm,engine_temp").conditions).toMatchObject({
      crankSpeed: 230,
      engineTemp: "warm",
    });
  });

  test("two rows that disagree are a fault at the later one, with the line of the earlier", () => {
    const { problems } = read([dry("a", "230"), wet("a", "210")], "crank_rpm");
    expect(problems).toMatchObject([{ code: "test-disagrees", line: 3 }]);
    expect(problems[0]?.found).toBe('test a says crank_rpm "210" here and "230" on line 2');
    expect(faults([dry("a", "warm"), wet("a", "cold")], "engine_temp")).toEqual(["test-disagrees@3 cold"]);
  });

  test("rows that say the same in two units do not disagree", () => {
    // 350 m = 1148.3 ft
    expect(faults([dry("a", "350,"), wet("a", ",1148")], "altitude_m,altitude_ft")).toEqual([]);
  });

  test("one row with two values for one thing is a fault", () => {
    expect(faults([dry("a", "350,1000")], "altitude_m,altitude_ft")).toEqual(["condition-twice@2 1000"]);
  });

  test("two gauges on one warm engine may differ; the first by name speaks for the test, whatever the order", () => {
    const rows = [
      "a,2026-05-03,,dry,,red,psi,131,130,129,128,235",
      "a,2026-05-03,,dry,,blue,bar,9,9,9,9,228",
    ];
    for (const order of [rows, rows.toReversed()])
      expect(oneTest(order, "crank_rpm").conditions.crankSpeed).toBe(228);
  });

  test("a row without a gauge is no second gauge: it has to agree with both", () => {
    const rows = [
      "a,2026-05-03,,dry,,red,psi,131,130,129,128,235",
      "a,2026-05-03,,dry,,blue,bar,9,9,9,9,235",
      "a,2026-05-03,,heard,,,,none,,,,228",
    ];
    for (const order of [rows, rows.toReversed()])
      expect(read(order, "crank_rpm").problems.map(({ code }) => code)).toContain("test-disagrees");
  });

  test("date, meter and who measured are one for a test; notes and reasons are brought together", () => {
    expect(faults([dry("a", "me"), "a,2026-05-04,,wet,,red,psi,1,1,1,1,me"], "by")).toEqual([
      "test-disagrees@3 2026-05-04",
    ]);
    expect(faults([dry("a", "me"), wet("a", "seller")], "by")).toEqual(["test-disagrees@3 seller"]);
    expect(faults(["a,2026-05-03,10,dry,,red,psi,1,1,1,1", "a,2026-05-03,11,wet,,red,psi,1,1,1,1"])).toEqual([
      "test-disagrees@3 11",
    ]);
    const both = oneTest([dry("a", "wrong adapter,windy"), wet("a", ",cold day")], "set_aside,note");
    expect(both).toMatchObject({ setAside: "wrong adapter", notes: ["cold day", "windy"] });
  });

  test("a test needs a name and a date; a date is year-month-day", () => {
    expect(faults([",,,dry,,red,psi,131,130,129,128"])).toEqual(["id-missing@2 ,", "date-missing@2 ,"]);
    expect(faults(["a,2026-02-30,,dry,,red,psi,131,130,129,128"])).toEqual(["date-bad@2 2026-02-30"]);
  });

  test("a barometer that shows the pressure at sea level is refused where the height is known", () => {
    const at = (hPa: string, home?: number) =>
      readTests(
        `${header},station_pressure_hPa\na,2026-05-03,,dry,,red,psi,131,130,129,128,${hPa}\n`,
        "tests.csv",
        engine,
        gauges,
        home === undefined ? undefined : length(home),
      ).problems.map(({ code }) => code);
    // 1013 hPa at 1524 m would be 1217 hPa at sea level; 843 hPa there is the standard
    expect(at("1013", 1_524)).toEqual(["sea-level-barometer"]);
    expect(at("843", 1_524)).toEqual([]);
    expect(at("1013")).toEqual([]);
  });
});

describe("columns", () => {
  test("a cylinder that the engine has and the file has not is a fault of the first line", () => {
    const { problems } = readTests("test,date,what,c1,c2,c3\n", "tests.csv", engine, []);
    expect(problems).toMatchObject([
      { code: "column-missing", line: 1, column: 1, found: 'there is no column "c4"' },
    ]);
  });

  test("a column name in another case is suggested in place", () => {
    const { problems } = readTests("Test,date,what,c1,c2,c3,c4\n", "tests.csv", engine, []);
    expect(problems.map(({ mend }) => mend)).toEqual(["write test in place of Test"]);
  });

  test("a reading in the column of a cylinder that the engine has not is a fault, an empty column is not", () => {
    expect(faults(["a,2026-05-03,,dry,,red,psi,131,130,129,128,127"], "c5")).toEqual([
      "cylinder-unknown@2 127",
    ]);
    expect(faults(["a,2026-05-03,,dry,,red,psi,131,130,129,128,"], "c5")).toEqual([]);
  });

  test("columns that are not known here are left alone, whatever their names", () => {
    expect(
      faults(["a,2026-05-03,,dry,,red,psi,131,130,129,128,1,2,3,4"], "colour,constructor,toString,__proto__"),
    ).toEqual([]);
  });

  test("a kind of row that is not known is a fault, with a near word suggested", () => {
    expect(read(["a,2026-05-03,,drey,,red,psi,131,130,129,128"]).problems[0]).toMatchObject({
      code: "word-unknown",
      mend: "write dry",
    });
    expect(read(["a,2026-05-03,,,,red,psi,131,130,129,128"]).problems[0]).toMatchObject({
      found: "no word in the column what",
    });
  });
});

describe("rows that are not whole", () => {
  test("a last line without its end that lacks cells looks cut off; with its end it is only short", () => {
    const whole = `${header}\na,2026-05-03,,dry,,red,psi,131,130`;
    const codes = (text: string) =>
      readTests(text, "tests.csv", engine, gauges).problems.map(
        ({ code, severity }) => `${severity} ${code}`,
      );
    expect(codes(whole)).toEqual(["error row-cut"]);
    expect(codes(`${whole}\n`)).toEqual(["caution row-short"]);
    expect(codes(`${whole},129,128`)).toEqual([]);
  });

  test("a row with more cells than columns is a fault; separators alone behind the last entry are nothing", () => {
    expect(faults(["a,2026-05-03,,dry,,red,psi,131,130,129,128,5"])).toEqual(["row-long@2 5"]);
    expect(faults(["a,2026-05-03,,dry,,red,psi,131,130,129,128,,,", ",,,,,,,,,,,,,", "   "])).toEqual([]);
  });

  test("a row with a fault is left out, the others are there", () => {
    const { tests, problems } = read([
      "a,2026-05-03,,dry,,red,psi,14O,130,129,128",
      "b,2026-05-04,,dry,,red,psi,131,130,129,128",
    ]);
    expect(tests.map(({ id }) => id)).toEqual(["b"]);
    expect(problems).toHaveLength(1);
  });

  test("all faults of a row are named, not only the first", () => {
    expect(faults(["a,03.05.2026,many,drie,0,red,psy,14O,130,129,128"])).toEqual([
      "date-bad@2 03.05.2026",
      "number-bad@2 many",
      "word-unknown@2 drie",
      "unit-unknown@2 psy",
      "number-bad@2 14O",
    ]);
  });

  test("a note that begins like a spreadsheet formula is kept, and said", () => {
    const { tests, problems } = read(["a,2026-05-03,,dry,,red,psi,131,130,129,128,=1+1"], "note");
    expect(tests[0]?.notes).toEqual(["=1+1"]);
    expect(problems).toMatchObject([{ code: "text-formula", severity: "caution" }]);
  });
});
