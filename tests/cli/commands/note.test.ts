// note: evidence of every kind, its unit attached or apart, and every way to be refused. Kinds, words and units: design, section 3.

import { noteKinds } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { misfits, schemaOf } from "./fits-schema.ts";
import { boat, boatJson, mendPlace, notesHeader } from "./mend-place.ts";

test.each([
  [["--value", "0.4L/1000km"], "0.4,L/1000km"],
  [["--value", "0.4 l/1000 KM"], "0.4,L/1000km"],
  [["--value", "0,4", "--unit", "l/1000km"], "0.4,L/1000km"],
  [["--value", "0.4L/1000km", "--unit", "L/1000km"], "0.4,L/1000km"],
  [["--value", "Some"], "some,"],
])("The value and its unit stand in cells of their own: %j", async (words, cells) => {
  const place = boat();
  const { exit, out } = await place.run(["note", "boat", "--what", "oil use", ...words]);
  expect(exit).toBe(0);
  expect(place.text("boat/notes.csv")).toBe(`${notesHeader}\n2026-11-25,,oil use,${cells},,,\n`);
  expect(out).toContain("saved  boat 2026-11-25, oil use");
});

test("A second note of the same kind shows the one before it", async () => {
  const place = boat();
  const first = await place.run([
    "note",
    "--what",
    "oil use",
    "--value",
    "0.3L/100h",
    "--date",
    "2025-05-10",
    "--meter",
    "600",
  ]);
  expect(first.out).toContain("the same figure in a year shows whether it grows");
  const second = await place.run(["note", "--what", "oil use", "--value", "0.4L/100h"]);
  expect(second.out).toContain("before, 2025-05-10: oil use 0.3 L/100h");
});

test("Every kind of evidence is taken in each of its words and units", async () => {
  const place = boat();
  for (const [what, { words, units }] of Object.entries(noteKinds)) {
    const values = [
      ...words,
      ...units.map((unit) => `1.5${unit}`),
      ...(words.length === 0 ? ["anything at all"] : []),
    ];
    for (const value of values)
      expect((await place.run(["note", "--what", what, "--value", value])).err).toBe("");
  }
  expect((await place.run(["proofread"])).out).toContain("no fault");
});

test("The document of a note is as its schema says", async () => {
  const { json } = await boat().run([
    "note",
    "--what",
    "valve seen",
    "--value",
    "burnt",
    "--cylinders",
    "3",
    "--meter",
    "640",
    "--by",
    "shop",
    "--note",
    "exhaust",
    "--json",
  ]);
  expect(misfits(json(), schemaOf("note"))).toEqual([]);
  expect(json()).toMatchObject({
    schema: "sealtrend/note@1",
    note: { value: "burnt", cylinders: ["3"] },
    written: { file: "logbook/boat/notes.csv" },
  });
});

test.each([
  ["no kind", ["--value", "some"], 'sealtrend note boat --what "oil use"'],
  ["a kind that is not known", ["--what", "oil used", "--value", "some"], "write oil use"],
  ["no value", ["--what", "oil use"], "oil use: how much?"],
  ["a number without a unit", ["--what", "oil use", "--value", "0.4"], "in which unit?"],
  [
    "a unit of something else",
    ["--what", "oil use", "--value", "0.4psi"],
    "a number with one of the units L/1000km",
  ],
  ["two units", ["--what", "oil use", "--value", "0.4L/h", "--unit", "qt/h"], "--value 0.4L/h"],
  ["a word of another kind", ["--what", "smoke", "--value", "blu"], "write blue"],
  [
    "a cylinder that is not there",
    ["--what", "score", "--value", "some", "--cylinders", "9"],
    "expected all, none, or",
  ],
  ["nothing said of a free kind", ["--what", "other fault"], '--note "what was found"'],
  ["a meter with a letter", ["--what", "smoke", "--value", "blue", "--meter", "6x"], "is not a number"],
  ["a day to come", ["--what", "smoke", "--value", "blue", "--date", "2027-01-01"], "lies ahead"],
  ["a text that a spreadsheet would run", ["--what", "other", "--note", "@sum"], "put a word in front of it"],
])("A note with %s is refused, and nothing is written", async (_, words, said) => {
  const place = boat();
  const before = place.picture();
  const { exit, err } = await place.run(["note", "boat", ...words]);
  expect(exit).toBe(2);
  expect(err.replace(/\s+/g, " ")).toContain(said);
  expect(place.picture()).toEqual(before);
});

test("On a terminal the kind, the value and what else is worth knowing are asked", async () => {
  const place = boat();
  const { exit, asked } = await place.run(["note"], ["oil use", "0.4L/h", "", "blue cloud at start"]);
  expect(exit).toBe(0);
  expect(asked).toHaveLength(4);
  expect(place.text("boat/notes.csv")).toContain("2026-11-25,,oil use,0.4,L/h,,,blue cloud at start");
});

test("A decimal goes into a file with decimal commas as that file writes it", async () => {
  const place = mendPlace({
    "boat/engine.json": boatJson,
    "boat/notes.csv": "date;meter;what;value;unit;cylinders;by;note\r\n2024-01-02;1,5;smoke;blue;;;;\r\n",
  });
  expect((await place.run(["note", "--what", "oil use", "--value", "0.4L/h"])).exit).toBe(0);
  expect(place.text("boat/notes.csv")).toMatch(/\r\n2026-11-25;;oil use;0,4;L\/h;;;\r\n$/);
});
