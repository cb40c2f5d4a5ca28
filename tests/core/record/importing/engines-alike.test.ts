// A name in a sheet that is nearly an engine's: asked about, never made a new engine in silence. Readings invented.

import { describe, expect, test } from "vitest";
import { guessed } from "./imported-sheet.ts";

const sheet = (...names: readonly string[]): string =>
  [
    "engine,date,what,unit,c1,c2",
    ...names.map((name, i) => `${name},2026-05-0${String(i + 1)},dry,psi,150,148`),
    "",
  ].join("\n");
const cylinders = ["1", "2"];
interface Known {
  readonly known: readonly {
    readonly id: string;
    readonly name?: string;
    readonly cylinders: readonly string[];
  }[];
}
const inLogbook = (...ids: readonly string[]): Known => ({ known: ids.map((id) => ({ id, cylinders })) });
const asked = (text: string, known: Known): readonly string[] =>
  guessed(text, known).open.map(({ text: said }) => said);
const engines = (text: string, known: Known): readonly string[] =>
  guessed(text, known).map.engines.map(({ engine }) => engine);

describe("a name that is an engine's of the logbook but for", () => {
  test.each([
    ["blanks", "Baler 2"],
    ["hyphens", "baler-2"],
    ["capitals and both", "BALER - 2"],
    ["a letter that is another", "bafer2"],
    ["a letter too much", "balerr2"],
    ["a letter too few", "Baer2"],
  ])("%s is asked about with that engine", (_, name) => {
    const question = `"${name}" in A2 may be baler2 or an engine of its own`;
    expect(asked(sheet(name), inLogbook("baler2"))).toEqual([question]);
    // where the sheet has that engine too
    expect(asked(sheet(name, "baler2"), inLogbook("baler2"))).toEqual([question]);
  });

  test.each([
    ["its number", "baler 3", "baler-2"],
    ["a word of one letter", "pump b", "pump-a"],
    ["two letters", "taker2", "baler2"],
    ["one letter of three", "saw", "raw"],
  ])("%s is another, where the sheet has that engine too", (_, name, known) => {
    expect(asked(sheet(name, known), inLogbook(known))).toEqual([]);
  });

  test("nothing, or its capitals and blanks alone, is that engine", () => {
    const known = inLogbook("baler-2");
    expect(asked(sheet("baler-2", "Baler  2"), known)).toEqual([]);
    expect(engines(sheet("Baler  2"), known)).toEqual(["baler-2"]);
  });
});

test("each spelling is asked about with the engine of the logbook, not with what another would be new", () => {
  expect(asked(sheet("Baler 2", "BALER 2", "baler-2"), inLogbook("baler2"))).toEqual([
    '"Baler 2" in A2 may be baler2 or an engine of its own',
    '"baler-2" in A4 may be baler2 or an engine of its own',
  ]);
});

test("a question names two things: of two spellings that are both new, each as it stands", () => {
  expect(asked(sheet("Baler 2", "baler-2"), inLogbook())).toEqual([
    '"baler-2" in A3 may be "Baler 2", baler-2, or an engine of its own',
  ]);
});

test("an engine that has a name is called by it", () => {
  const known = [{ id: "old-red", name: "Baler 2", cylinders }];
  expect(asked(sheet("Baler-2"), { known })).toEqual([
    '"Baler-2" in A2 may be "Baler 2", old-red, or an engine of its own',
  ]);
});
