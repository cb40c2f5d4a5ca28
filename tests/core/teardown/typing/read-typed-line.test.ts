import { describe, expect, test } from "vitest";
import { told, typed } from "./sample.ts";

const lines = (...text: string[]) => typed(...text).measurements.map(told);

describe("a line of figures stands in a fixed order", () => {
  test("a bore from the top down, across the crank first (handbook teardown.md 1.3)", () => {
    expect(lines("mm", "bore 3: 86.62 86.58 86.56 86.55 86.53 86.52")).toEqual([
      "bore 3 top/thrust diameter 86.62 mm",
      "bore 3 top/axial diameter 86.58 mm",
      "bore 3 middle/thrust diameter 86.56 mm",
      "bore 3 middle/axial diameter 86.55 mm",
      "bore 3 bottom/thrust diameter 86.53 mm",
      "bore 3 bottom/axial diameter 86.52 mm",
    ]);
  });

  test("a main from the front, 0 before 90 (handbook teardown.md 1.3); six take in its middle", () => {
    expect(lines("in", "main 4: 2.4986 2.4984 2.4985 2.4983")).toEqual([
      "main 4 front/0 diameter 2.4986 in",
      "main 4 front/90 diameter 2.4984 in",
      "main 4 rear/0 diameter 2.4985 in",
      "main 4 rear/90 diameter 2.4983 in",
    ]);
    expect(typed("in", "pin 1: 2 2 2.1 2.1 2 2").measurements.map(({ at }) => at)).toEqual(
      ["front/0", "front/90", "middle/0", "middle/90", "rear/0", "rear/90"], // prettier-ignore
    );
  });

  test.each([
    ["rod bearing 2: 0.0022", ["rod bearing 2 thread clearance 0.0022 in"]],
    [
      "rod bearing 2: .0022 .0020",
      ["rod bearing 2 front thread clearance 0.0022 in", "rod bearing 2 rear thread clearance 0.002 in"],
    ],
    [
      "main bearing 2: 0.0022 0.0020 0.0021",
      [
        "main bearing 2 front thread clearance 0.0022 in",
        "main bearing 2 middle thread clearance 0.002 in",
        "main bearing 2 rear thread clearance 0.0021 in",
      ],
    ],
    ["rod bearing 2 front: 0.0022", ["rod bearing 2 front thread clearance 0.0022 in"]],
    ["rod bearing 2 middle 90: 0.0022", ["rod bearing 2 middle/90 thread clearance 0.0022 in"]],
    [
      "main bearing 4 bore: 2.5006 2.5005",
      ["main bearing 4 front bore 2.5006 in", "main bearing 4 rear bore 2.5005 in"],
    ],
    [
      "bore 3 bottom: 3.411 3.410",
      ["bore 3 bottom/thrust diameter 3.411 in", "bore 3 bottom/axial diameter 3.41 in"],
    ],
    ["bore 3 bottom: 3.411", ["bore 3 bottom diameter 3.411 in"]],
    ["bore 3 top/axial: 3.411", ["bore 3 top/axial diameter 3.411 in"]],
    ["bore 3 unworn: 3.406", ["bore 3 unworn diameter 3.406 in"]],
    [
      "bore 3 unworn: 3.406 3.4062",
      ["bore 3 unworn/thrust diameter 3.406 in", "bore 3 unworn/axial diameter 3.4062 in"],
    ],
    ["bore 3 ridge: 2th", ["bore 3 ridge 2 thou"]],
    ["piston 3 at 11mm: 3.4038", ["piston 3 11 diameter 3.4038 in"]],
    ["piston 3 11mm: 3.4038", ["piston 3 11 diameter 3.4038 in"]],
    ["spring 3in load 36mm: 60lbf", ["spring 3in 36 load 60 lbf"]],
    ["piston 3: 3.4038", ["piston 3 diameter 3.4038 in"]],
    [
      "ring 3: .014...016 .012...014",
      ["ring 3 1 end gap 0.014..0.016 in", "ring 3 2 end gap 0.012..0.014 in"],
    ],
    [
      "ring gap 3 bottom: .014 .012 .020",
      [
        "ring 3 1/bottom end gap 0.014 in",
        "ring 3 2/bottom end gap 0.012 in",
        "ring 3 oil/bottom end gap 0.02 in",
      ],
    ],
    [
      "ring gap 3 oil: .014 .012 .010",
      [
        "ring 3 oil/top end gap 0.014 in",
        "ring 3 oil/middle end gap 0.012 in",
        "ring 3 oil/bottom end gap 0.01 in",
      ],
    ],
    ["ring side 3: .002 .0015", ["ring 3 1 side clearance 0.002 in", "ring 3 2 side clearance 0.0015 in"]],
    [
      "ring 3 side clearance 1: .002 .002 .0025 .002",
      [
        "ring 3 1/0 side clearance 0.002 in",
        "ring 3 1/90 side clearance 0.002 in",
        "ring 3 1/180 side clearance 0.0025 in",
        "ring 3 1/270 side clearance 0.002 in",
      ],
    ],
    ["rod side 2: .008", ["rod 2 side clearance 0.008 in"]],
    ["end play: .006", ["crank end play 0.006 in"]],
    ["crank end play: .006", ["crank end play 0.006 in"]],
    ["runout 3: .001", ["crank 3 runout 0.001 in"]],
    [
      "housing main 4: 2.6376 2.6375 2.6376",
      [
        "housing 4 main/45 bore 2.6376 in",
        "housing 4 main/90 bore 2.6375 in",
        "housing 4 main/135 bore 2.6376 in",
      ],
    ],
    ["guide 3 IN: .315", ["guide 3in top/thrust bore 0.315 in"]],
    [
      "stem 3ex middle: .3138 .3139",
      ["stem 3ex middle/thrust diameter 0.3138 in", "stem 3ex middle/axial diameter 0.3139 in"],
    ],
    ["seat 3ex: 1/16", ["seat 3ex width 0.0625 in"]],
    ["seat 3ex runout: .001", ["seat 3ex runout 0.001 in"]],
    ["valve 3ex: 3/64", ["valve 3ex margin 0.046875 in"]],
    ["spring 3in outer: 1-7/8", ["spring 3in outer free length 1.875 in"]],
    ["spring 3in load at 1.5: 60lbf", ["spring 3in 38.1 load 60 lbf"]],
    ["spring 3in inner load at 36mm: 250N", ["spring 3in inner/36 load 250 N"]],
    ["chamber 3: 42.5cc", ["chamber 3 volume 42.5 cm3"]],
    ["crown 3: 5ml", ["crown 3 volume 5 ml"]],
  ])("%s", (line, expected) => {
    expect(lines("in", line)).toEqual(expected);
  });

  test("a straightedge by steps, or by one place, or over the whole line", () => {
    expect(lines("mm", "head long1 at 75: 0 .02 .04")).toEqual([
      "head long1/0 gap 0 mm",
      "head long1/75 gap 0.02 mm",
      "head long1/150 gap 0.04 mm",
    ]);
    expect(lines("mm", "at 3in", "deck left between 1-2: 0 <.02")).toEqual([
      "deck left between 1-2/0 gap 0 mm",
      "deck left between 1-2/76.2 gap 0..0.02 mm",
    ]);
    expect(lines("mm", "head diagonal1 at 240: <0.04")).toEqual(["head diagonal1/240 gap 0..0.04 mm"]);
    expect(lines("mm", "head long1/40: <0.04")).toEqual(["head long1/40 gap 0..0.04 mm"]);
    expect(lines("mm", "head left long1 at 40mm: 0.04")).toEqual(["head left long1/40 gap 0.04 mm"]);
    expect(lines("mm", "head 2 long1 40mm: 0.04")).toEqual(["head 2 long1/40 gap 0.04 mm"]);
    expect(lines("in", "head long1/40: .002 .003")).toEqual([
      "head long1/0 gap 0.002 in",
      "head long1/40 gap 0.003 in",
    ]);
    expect(lines("mm", "at 75", "head diagonal1: 0.04")).toEqual(["head diagonal1 gap 0.04 mm"]);
  });

  test("fewer figures are taken as they come, and - or x is none", () => {
    expect(lines("mm", "bore 3: 86.62 - 86.56 x")).toEqual([
      "bore 3 top/thrust diameter 86.62 mm",
      "bore 3 middle/thrust diameter 86.56 mm",
    ]);
    expect(lines("mm", "bore 3: - - - - - -")).toEqual([]);
  });

  test("a stroke joins readings of one place", () => {
    expect(lines("mm", "bore 3: 86.62/86.63/86.62 86.58")).toEqual([
      "bore 3 top/thrust diameter 86.62 mm",
      "bore 3 top/thrust diameter 86.63 mm",
      "bore 3 top/thrust diameter 86.62 mm",
      "bore 3 top/axial diameter 86.58 mm",
    ]);
  });
});

describe("units", () => {
  test("the unit last chosen holds, one behind a figure for that figure alone", () => {
    expect(lines("mm", "bore 3: 86.62 3.41in 86,56", "in", "bore 4: 3.41")).toEqual([
      "bore 3 top/thrust diameter 86.62 mm",
      "bore 3 top/axial diameter 3.41 in",
      "bore 3 middle/thrust diameter 86.56 mm",
      "bore 4 top/thrust diameter 3.41 in",
    ]);
  });

  test("one that stands apart holds for the bare figures before it", () => {
    expect(lines("in", "bore 3: 86.62 86.58 mm 3.41 in")).toEqual([
      "bore 3 top/thrust diameter 86.62 mm",
      "bore 3 top/axial diameter 86.58 mm",
      "bore 3 middle/thrust diameter 3.41 in",
    ]);
  });

  test("one at the end of joined readings holds for all of them", () => {
    expect(lines("mm", "end play: 6/6.5th")).toEqual(["crank end play 6 thou", "crank end play 6.5 thou"]);
    expect(lines("in", "end play: 0.15..0.20mm")).toEqual(["crank end play 0.15..0.2 mm"]);
  });

  test("tenths are stored as inches, thousandths as typed, a fraction as typed", () => {
    const { measurements } = typed(
      "tenths",
      "rod bearing 2: 22",
      "th",
      "rod side 2: 8.5",
      "valve 3in: 3-7/16in",
    );
    expect(measurements.map(({ written }) => `${written.value} ${written.unit}`)).toEqual([
      "0.0022 in",
      "8.5 thou",
      "3-7/16 in",
    ]);
  });

  test("a stroke between whole thousandths is no fraction", () => {
    expect(lines("th", "end play: 7/8")).toEqual(["crank end play 7 thou", "crank end play 8 thou"]);
    expect(lines("in", "valve 3in: 7/8")).toEqual(["valve 3in margin 0.875 in"]);
  });
});

describe("a sign", () => {
  test("counts from the size set, to the last digit, and the row says what it was set to", () => {
    const { measurements } = typed("mm", "set 86.50", "bore 3: +.12 +.08 -0,02 86.53");
    expect(measurements.map(({ written }) => written.value)).toEqual(["86.62", "86.58", "86.48", "86.53"]);
    expect(measurements.map(({ note }) => note)).toEqual([
      "set at 86.50 mm",
      "set at 86.50 mm",
      "set at 86.50 mm",
      undefined,
    ]);
  });

  test("may be in thousandths or tenths of the inch that was set", () => {
    const { measurements } = typed("in", "set 3-7/16", "th", "bore 3: +2.5 +25tenths ; ring travel");
    expect(measurements.map(({ written }) => `${written.value} ${written.unit}`)).toEqual([
      "3.4400 in",
      "3.4400 in",
    ]);
    expect(measurements[0]?.note).toBe("set at 3.4375 in; ring travel");
  });

  test("no unit chosen: the unit of the size set", () => {
    expect(lines("set 86.50mm", "bore 3: +.12")).toEqual(["bore 3 top/thrust diameter 86.62 mm"]);
  });
});

describe("what was seen", () => {
  test("is told in the words of its part, several with commas between", () => {
    expect(lines("bore 3: crosshatch full, score nail catches")).toEqual([
      "bore 3 crosshatch full",
      "bore 3 score nail catches",
    ]);
    expect(lines("main bearing 4 lower: One-sided")).toEqual(["main bearing 4 lower appearance one-sided"]);
    expect(lines("bore 3 top crosshatch: none")).toEqual(["bore 3 top crosshatch none"]);
    expect(lines("pin 2 rear: scored")).toEqual(["pin 2 rear appearance scored"]);
  });

  test("a crack with its place, its length and how it was found, in any order", () => {
    expect(lines("crack head: between 2 and 3 exhaust, 12mm, dye")).toEqual([
      "crack head between 2 and 3 exhaust found by dye",
      "crack head between 2 and 3 exhaust length 12 mm",
    ]);
    expect(lines("crack block: seen, main web 3")).toEqual(["crack block main web 3 found by seen"]);
  });
});

test("comments and blank lines are nothing; a note stays with the line", () => {
  expect(typed("", "   ", "# bores", "  # again").measurements).toEqual([]);
  const [one, two] = typed("mm", "bore 3: 86.62 # again", "bore 3: 86.62 ; photo # 3").measurements;
  expect(one?.note).toBeUndefined();
  expect(two?.note).toBe("photo # 3");
});

test("each measurement knows what was typed and where", () => {
  const [, second] = typed("mm", "bore 3: 86.62 86,58").measurements;
  expect(second).toMatchObject({ typed: "86,58", column: 15, written: { value: "86.58", unit: "mm" } });
});
