// The texts below were read through, one by one: what is marked, what was found, what to type.

import { describe, expect, test } from "vitest";
import { faults } from "./sample.ts";

const one = (...lines: string[]) => {
  const [first] = faults(...lines);
  return first === undefined ? "" : `${first.marked ?? ""} | ${first.found} | ${first.mend}`;
};

describe("a fault marks what is wrong and says what to type", () => {
  test.each([
    ["bre 3: 86.62", 'bre | no line begins with "bre" | write bore'],
    ["bore3: 86.62", 'bore3 | no line begins with "bore3" | write bore 3'],
    ["86.62 86.58", '86.62 | "86.62" stands without its part | write the part first: bore 3: 86.62'],
    ["bore 3 86.62 86.58", '3 | no colon behind "bore 3" | write bore 3: 86.62 86.58'],
    ["bore 3 top", '3 | no colon behind "bore 3" | write bore 3 top: and the figures behind it'],
    ["bore 3", '3 | no colon behind "bore 3" | write bore 3: and the figures behind it'],
    ["bore 3:", 'bore 3 | nothing stands behind "bore 3:" | write bore 3: and the figures behind it'],
    ["bore: 86.62", "bore | no label for bore diameter | write such as bore 1: and what was measured"],
    [
      "bore 9: 86.62",
      '9 | bore diameter: the label "9" names nothing of this engine | write 1, or the one that is meant',
    ],
    ["bore 3 topp: 86.62", 'topp | bore diameter: "topp" is no place on it | write such as top'],
    [
      "bore 3 top middle: 86.62",
      'bore 3 top middle | bore diameter: "top/middle" is no place on it | write such as top/thrust',
    ],
    [
      "bore 3 top: crosshatch gone",
      'crosshatch gone | bore crosshatch "gone" is not a word known here | write none',
    ],
    ["bore 3: none", 'none | bore "none" is not a word known here | write one of these words'],
    [
      "bore 3: crosshach full",
      'crosshach full | bore "crosshach full" is not a word known here | write crosshatch full',
    ],
    [
      "bore 3: 1 2 3 4 5 6 7",
      "7 | 7 figures for bore 3 | give one figure a place; join readings of one place with a stroke: 86.62/86.63",
    ],
    [
      "end play: 0.1 0.2",
      "0.2 | 2 figures for crank | give one figure a place; join readings of one place with a stroke: 86.62/86.63",
    ],
    ["crank: 0.1", 'crank | "crank" does not say which figure | write end play: 0.1, or runout 3: 0.1'],
    ["main x: 57.1", 'x | main diameter: the label "x" names nothing of this engine | write 1, 2, 3 …'],
    [
      "guide 3: 8.02",
      '3 | guide bore: the label "3" names nothing of this engine | write 1in for the intake valve of cylinder 1, 1ex for its exhaust valve',
    ],
    ["housing 3: 67.02", "housing 3 | housing bore does not say where | write such as main/90"],
    ["head: 0.02", "head | head gap does not say where | write such as long1/40"],
    ["head lng1: 0.02", 'lng1 | head gap: "lng1" is no place on it | write such as long1'],
    [
      "head long1: 0 .02 .04",
      "0 .02 .04 | several gaps along one line, and not how far apart | write head long1 at 75mm: 0 .02 .04",
    ],
    ["head long1 at: 0 .02", 'at | "at" is no distance along the part | write such as at 75mm'],
    ["head long1 at noon: 0 .02", 'noon | "noon" is no distance along the part | write such as at 75mm'],
    [
      "bore 3: +.12",
      '+.12 | "+.12" has a sign, and no size was set | write .12, or the size of the setting first, on a line of its own: set 86.50',
    ],
    [
      "bore 3: 86.6O",
      '86.6O | bore diameter "86.6O": a letter O stands where a zero may belong | write 86.60',
    ],
    [
      "bore 3: 86..6..2",
      '86..6..2 | bore diameter "86..6..2": more than one decimal mark | write it with one decimal mark and no thousands mark',
    ],
    [
      "bore 3: 86.62ft",
      '86.62ft | the unit "ft" is not known here | write the unit that stands on the dial, if it is one of these',
    ],
    [
      "bore 3: 86.62ml",
      '86.62ml | the unit "ml" is not known here | write the unit that stands on the dial, if it is one of these',
    ],
    [
      "bore 3: 1,234um",
      '1,234um | "1,234" can be read two ways: 1.234 or 1234 | write 1234 for the large one, 1.2340 for the small one',
    ],
    [
      "bore 3: 3-7/16mm",
      '3-7/16mm | bore diameter "3-7/16mm": not a fraction of an inch | write it in decimals, or as 3-7/16 with the unit in',
    ],
    [
      "bore 3: 3-7/17in",
      '3-7/17in | bore diameter "3-7/17in": not a fraction of an inch | write it in decimals, or as 3-7/16 with the unit in',
    ],
    [
      "ring 3: 0.35-0.40",
      '0.35-0.40 | "0.35-0.40" are two figures with a dash between | write 0.35..0.40 for the leaf that goes and the one that stops, 0.35/0.40 for two readings',
    ],
    [
      "ring 3: 0.40..0.35",
      '0.40..0.35 | ring end gap "0.40..0.35": the leaf that goes must be thinner than the one that stops | write the leaf that goes first: 0.35..0.40',
    ],
    [
      "bore 3: 0.1234567",
      '0.1234567 | "0.1234567" has more decimals than are stored | write it as the instrument shows it',
    ],
    ["bore 3: 86.62; worn", 'worn | "worn" is no figure | write a blank before the semicolon: ; worn'],
    [
      "bore 3: 86.62 ; =SUM(A1)",
      "=SUM(A1) | note begins like a spreadsheet formula | put a word in front of it",
    ],
    [
      "chamber 3: 42.5",
      '42.5 | no unit for "42.5" | write ml (or cm3) on a line of its own first, or here: 42.5ml',
    ],
    [
      "chamber 3: 1..2ml",
      '1..2ml | chamber volume "1..2ml": only a length lies between two feelers | write one figure',
    ],
    [
      "crack head: between 2 and 3",
      "between 2 and 3 | a crack, and not how it was found | write crack head: between 2 and 3, seen",
    ],
    [
      "crack head: dye, 12furlong",
      '12furlong | the unit "furlong" is not known here | write the unit that stands on the dial, if it is one of these',
    ],
    ["head long1 lng2/40: 0.02", 'lng2 | head gap: "lng2" is no place on it | write such as long2'],
    ["head cover long1: 0.02", 'cover | head gap: "cover" is no place on it | write such as long1/40'],
    ["crack haed: seen", 'haed | crack found by: the label "haed" names nothing of this engine | write head'],
    ["pin 2: 57.1 57.1 57.1 57.1 57.1", "57.1 | 5 figures for pin 2 | put - at a place that was not taken"],
    [
      "rod bearing 1: 0.05 thread",
      'thread | "thread" is an instrument, not a figure | write it on a line of its own before this one: with thread',
    ],
    [
      "bore 1: 86.52 86.53 bore gauge",
      'bore gauge | "bore gauge" is an instrument, not a figure | write it on a line of its own before this one: with bore gauge',
    ],
    ["rod bearing 2 at 0.04", '2 | no colon behind "rod bearing 2" | write rod bearing 2: 0.04'],
    ["piston 3 at 11mm 86.45", '11mm | no colon behind "piston 3 at 11mm" | write piston 3 at 11mm: 86.45'],
    ["bore 3 top 86.62 86.60", 'top | no colon behind "bore 3 top" | write bore 3 top: 86.62 86.60'],
    [
      "bore 3 instead",
      'instead | no colon behind "bore 3 instead" | write bore 3 instead: and the figures behind it',
    ],
    ["bore 3 crosshatch full", '3 | no colon behind "bore 3" | write bore 3: crosshatch full'],
    [
      "with bore guage 0.01mm",
      'bore guage | instrument "bore guage" is not a word known here | write bore gauge',
    ],
    ["with wibble", 'wibble | instrument "wibble" is not a word known here | write one of these words'],
    [
      "with bore gauge -0.01",
      '-0.01 | with "-0.01" is not understood | write such as: with micrometer 0.0001in',
    ],
    ["set", 'set | nothing stands behind "set" | write such as: set 86.50mm'],
    ["set 86.50..86.60", '86.50..86.60 | set "86.50..86.60" is not understood | write such as: set 86.50mm'],
    ["with", 'with | nothing stands behind "with" | write such as: with bore gauge 0.01mm'],
    [
      "with bore gauge 86.50",
      '86.50 | with "86.50" is not understood | write such as: with micrometer 0.0001in',
    ],
    ["state dirty", 'dirty | state "dirty" is not a word known here | write one of these words'],
    ["by", 'by | nothing stands behind "by" | write such as: by Ann'],
    ["by =me", "=me | by begins like a spreadsheet formula | put a word in front of it"],
    ["teardown two", 'two | teardown "two" is not understood | write such as: teardown 1'],
    [
      "date 02.03.2026",
      '02.03.2026 | the date "02.03.2026" is not written year-month-day | write 2026-03-02',
    ],
    ["date", "date | no date | write the day as year-month-day"],
    ["at wall", 'wall | at "wall" is not understood | write such as: at 75mm'],
    [
      "unit furlong",
      'furlong | the unit "furlong" is not known here | write the unit that stands on the dial, if it is one of these',
    ],
    ["mm ; metric", 'metric | mm "metric" is not understood | write such as: mm'],
  ])("%s", (line, expected) => {
    expect(one("mm", line)).toBe(expected);
  });
});

test("a figure without a unit is refused until one was chosen", () => {
  expect(one("bore 3: 86.62")).toBe(
    '86.62 | no unit for "86.62" | write mm (or in) on a line of its own first, or here: 86.62mm',
  );
  expect(one("head long1 at 75: 0 .02")).toBe(
    '0 | no unit for "0" | write mm (or in) on a line of its own first, or here: 0mm',
  );
});

test("a bare deviation is refused where the size set is of the other kind of unit", () => {
  expect(one("set 3.4375in", "mm", "bore 3: +.12")).toBe(
    '+.12 | "+.12" can be in the unit last chosen or in the unit of the set size | write +.12mm or +.12in',
  );
  expect(one("set 0.1mm", "bore 3: -.12")).toBe(
    '-.12 | "-.12" from the set size is less than nothing | check the set size and the unit, or write set off',
  );
  expect(one("set 86.5mm", "ring 3: +.1..+.2")).toContain("is not one plain figure");
});

test("every figure of a line that is wrong is named, with its place", () => {
  expect(faults("mm", "bore 3: 86.6O 86.58 8l6").map(({ column, marked }) => [column, marked])).toEqual([
    [9, "86.6O"],
    [21, "8l6"],
  ]);
});
