// Tables of causes of the user's own: the sheets of a folder in place of the shipped ones. Contract: data/faults/README.md.

import { readFileSync } from "node:fs";
import { faultSheets, shippedFaults } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { Stop } from "../../../packages/cli/src/command.ts";
import { readFaultTables } from "../../../packages/cli/src/commands/fault-tables.ts";
import { nodeWorld } from "../../../packages/cli/src/logbook/world.ts";
import { faultText } from "../../../packages/cli/src/render/faults.ts";
import { fakeIo } from "../fake-io.ts";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const shipped = (name: string): string =>
  readFileSync(new URL(`../../../data/faults/${name}`, import.meta.url), "utf8");

const read = (desk: Desk, dir: string) => readFaultTables(nodeWorld(fakeIo({ cwd: desk.folder })), dir, 80);

/** The exit code and the faults of a refusal. */
const refusal = (desk: Desk, dir: string): readonly [number, string] => {
  try {
    read(desk, dir);
  } catch (error) {
    if (error instanceof Stop) return [error.exit, faultText(error.faults, 80)];
    throw error;
  }
  throw new Error("nothing was refused");
};

test("one sheet of a folder takes the place of the shipped one, and the rest is said to be as shipped", () => {
  const desk = newDesk();
  desk.put(
    "mine/words.csv",
    "word,least,status,source\nlikely,0.5,judgement,own\nnot likely,0,judgement,own\n",
  );
  const { faults, aside } = read(desk, "mine");
  expect(faults.words).toEqual([
    { least: 0.5, word: "likely" },
    { least: 0, word: "not likely" },
  ]);
  expect({ ...faults, words: [] }).toEqual({ ...shippedFaults(), words: [] });
  expect(aside).toBe("causes by the tables in mine: words.csv; the other 29 as shipped\n");
});

test("a copy of every shipped sheet changes nothing", () => {
  const desk = newDesk();
  for (const name of faultSheets) desk.put(`mine/${name}`, shipped(name));
  const { faults, from, aside } = read(desk, "mine");
  expect(faults).toEqual(shippedFaults());
  expect(from).toEqual(faultSheets);
  expect(aside).toBe("causes by the tables in mine: all 30 sheets\n");
});

test("every slip is told with the path of its sheet, and nothing is used", () => {
  const desk = newDesk();
  desk.put(
    "mine/words.csv",
    "word,least,status,source\nlikely,0.5,judgement,own\nunlikely,0.1,judgement,own\n",
  );
  desk.put("mine/signs.csv", shipped("signs.csv").replace("miss,0.08", "miss,8"));
  expect(refusal(desk, "mine")).toEqual([
    1,
    expect.stringMatching(
      /^mine\/signs\.csv:\d+:6 "8" is out of range[^]*mine\/words\.csv:3:10 the last word begins/,
    ),
  ]);
});

test("where most sheets are the user's own, those that are not are named", () => {
  const desk = newDesk();
  for (const name of faultSheets) if (name !== "words.csv") desk.put(`mine/${name}`, shipped(name));
  expect(read(desk, "mine").aside).toBe(
    "causes by the tables in mine: all sheets but words.csv, as shipped\n",
  );
});

test("a new cause is one fault, at its row, that says which sheets to copy and from where", () => {
  const desk = newDesk();
  const row = "porous-casting,porous casting,top,0.001,judgement,own\n";
  desk.put("mine/causes.csv", shipped("causes.csv") + row);
  const [exit, text] = refusal(desk, "mine");
  expect(exit).toBe(1);
  expect(text).toMatch(/^mine\/causes\.csv:\d+:1 the cause "porous-casting" has no row in 20 sheets/);
  expect(text).not.toContain("(as shipped)");
  expect(text.replace(/\s+/g, " ")).toMatch(/first copy the sheets that your folder lacks from \S+faults\//);
});

test("a row left out is told, with where the shipped sheets stand", () => {
  const desk = newDesk();
  desk.put("mine/tests.csv", shipped("tests.csv").replace(/^wet,.*\n/m, ""));
  const { aside } = read(desk, "mine");
  expect(aside).toMatch(/^mine\/tests\.csv:\d+:1 caution: no row for "wet" in the column code/);
  expect(aside.replace(/\s+/g, " ")).toMatch(
    /copy the row from the shipped tests\.csv \(it is in \S+faults\/\)/,
  );
});

test("the document names the sheets that are the user's own, and has no such key without them", async () => {
  const desk = newDesk();
  await desk.type(["engine", "add", "pump", "--cylinders", "2", "--ignition", "spark", "--no-input"]);
  await desk.type(["enter", "pump", "--dry", "150 120", "--unit", "psi", "--no-input"]);
  desk.put("mine/words.csv", shipped("words.csv"));
  const own = await desk.json("show", "pump", "--faults", "mine");
  expect(own.faults).toEqual({ from: ["words.csv"] });
  expect(misfits(own, schemaOf("show"))).toEqual([]);
  expect(await desk.json("show", "pump")).not.toHaveProperty("faults");
});

test("a sheet whose name is misspelt is told, not passed over", () => {
  const desk = newDesk();
  desk.put("mine/words.csv", shipped("words.csv"));
  desk.put("mine/setings.csv", shipped("settings.csv"));
  const { aside } = read(desk, "mine");
  expect(aside).toContain('caution: the sheet "setings.csv" is not read');
  expect(aside).toContain("name it settings.csv");
});

test("a folder without a sheet says where the shipped ones stand", () => {
  const desk = newDesk();
  desk.put("mine/notes.txt", "none");
  const [exit, text] = refusal(desk, "mine");
  expect(exit).toBe(2);
  expect(text).toContain("none of the sheets of causes and chances is in mine");
  expect(text.replace(/\s+/g, "")).toMatch(/copythesheetsthatyouwanttochangefrom.*faults\/intoit/);
});

test("a folder that is not there, and a file in its place, are told plainly", () => {
  const desk = newDesk();
  expect(refusal(desk, "nowhere")).toEqual([
    3,
    "there is no folder nowhere\n    expected a folder with sheets of causes and chances in it\n    look at its spelling\n",
  ]);
  desk.put("mine/causes.csv", shipped("causes.csv"));
  const [exit, text] = refusal(desk, "mine/causes.csv");
  expect(exit).toBe(3);
  expect(text).toContain("mine/causes.csv is not a folder");
  expect(text).toContain("name the folder it is in: --faults mine");
});
