import { noteKinds, noteNames, readNotes } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { engine, marked } from "./sample.ts";

const header = "date,meter,what,value,unit,cylinders,by,note\n";
const read = (rows: string) => readNotes(`${header}${rows}\n`, "notes.csv", engine);
const faults = (rows: string) => marked(read(rows).problems, `${header}${rows}\n`);
const kinds = noteNames.map((name) => [name, noteKinds[name]] as const);

/** The kinds of evidence as the contract lists them (design.md section 3). */
const listed =
  "oil use, blow-by, oil pressure hot, filter debris, oil analysis, coolant loss, combustion gas in coolant, smoke, knock, piston slap, miss, hard start, crosshatch, score, valve seen, crown seen, lash, gauge proved, other fault, other";

test("every kind of evidence of the contract is known, and no other", () => {
  expect(noteNames.join(", ")).toBe(listed);
});

describe("every kind", () => {
  test.each(kinds)("%s takes each of its words, in any case", (what, { words }) => {
    for (const word of words)
      expect(read(`2026-05-03,,${what.toUpperCase()},${word.toUpperCase()},,2,me,`)).toEqual({
        notes: [{ date: "2026-05-03", what, value: word, cylinders: ["2"], by: "me" }],
        problems: [],
      });
  });

  test.each(kinds)("%s takes a number in each of its units, and keeps the digits", (what, { units }) => {
    for (const unit of units)
      expect(read(`2026-05-03,,${what},"0,40",${unit.toLowerCase()},,,`)).toEqual({
        notes: [{ date: "2026-05-03", what, value: "0,40", unit, cylinders: [] }],
        problems: [],
      });
  });

  test.each(kinds)("%s may stand without a value", (what) => {
    expect(read(`2026-05-03,,${what},,,,,`).problems).toEqual([]);
  });

  test.each(kinds.filter(([, { words, units }]) => words.length + units.length > 0))(
    "%s refuses another word, a number without a unit, and a unit that is not its own",
    (what) => {
      for (const value of ["lots,", "5,", "5,furlong"])
        expect(faults(`2026-05-03,,${what},${value},,,`)).toEqual([
          `note-value@2 ${value.split(",")[0] ?? ""}`,
        ]);
    },
  );
});

test("other takes any text", () => {
  expect(read('2026-05-03,,other,"painted blue, twice",coats,,,').notes).toMatchObject([
    { value: "painted blue, twice", unit: "coats" },
  ]);
});

test("a number without its unit is told which unit to write, a near word is suggested", () => {
  expect(read("2026-05-03,,oil use,0.4,,,,").problems[0]?.mend).toBe("give it in a unit such as L/1000km");
  expect(read("2026-05-03,,smoke,bleu,,,,").problems[0]?.mend).toBe("write blue");
});

test("a figure that can be read two ways is refused, and so is one below nothing", () => {
  expect(faults('2026-05-03,,oil use,"1,234",L/h,,,')).toEqual(['number-two-ways@2 "1,23']);
  expect(faults("2026-05-03,,oil use,1.234,L/h,,,")).toEqual([]);
  expect(faults("2026-05-03,,oil use,-1,L/h,,,")).toEqual(["number-range@2 -1"]);
});

test("notes come by date", () => {
  expect(
    read("2026-05-03,,miss,some,,,,\n2024-05-03,,miss,none,,,,").notes.map(({ value }) => value),
  ).toEqual(["none", "some"]);
});

test("all faults of a row are named, and the row is left out", () => {
  expect(faults("3.5.2026,many,smog,,,9,,")).toEqual([
    "date-bad@2 3.5.2026",
    "word-unknown@2 smog",
    "number-bad@2 many",
    "cylinders-bad@2 9",
  ]);
});
