// `enter`: what is refused, and that nothing is lost. Readings invented; expected cells are what a person would write on the sheet.

import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";
import { dry, enter, file, rowsOf } from "./entered.ts";

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
  ["a day that is none", [...dry, "--date", "2026-02-30"], "    --date YYYY-MM-DD, the day of the test\n"],
  ["a day written otherwise", [...dry, "--date", "12.5.2026"], "    --date 2026-05-12\n"],
  [
    "a day that can be read two ways",
    [...dry, "--date", "3/5/2026"],
    "--date 2026-05-03 or --date 2026-03-05",
  ],
  ["a year beyond all logbooks", [...dry, "--date", "1850-05-01"], "outside the years 1900 to 2100"],
  ["a letter for a one", ["--dry", "150 l48 152 149", "--unit", "psi"], "write 148;"],
  [
    "a number that lost its last digit to a letter",
    ["--dry", "150 8l 152 149", "--unit", "psi"],
    "write 81;",
  ],
  ["two units in one line", ["--dry", "150psi 148kPa 152psi 149psi"], "two units"],
  ["a neighbour that is not there", ["--heard", "neighbour:9 none none none"], 'no cylinder "9"'],
  ["a note that a spreadsheet would run", [...dry, "--note", "=1+1"], "put a word in front of it"],
  ["a name that a spreadsheet would run", [...dry, "--by", "@me"], "put a word in front of it"],
  ["a note that steers the screen", [...dry, "--note", "a\u001b[2J"], "holds a character that is no letter"],
  ["a day to come", [...dry, "--date", "2026-11-26"], "lies ahead"],
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
  expect(out).toMatch(/^saved {2}pump 2026-11-25b/);
  expect(err).toContain('"14O"');
  expect(rowsOf(desk).at(-1)).toMatchObject({ test: "2026-11-25b", c1: "151" });
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
