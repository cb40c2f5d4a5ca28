// What a reading names itself, its unit or its supply, goes before what is said of the whole sheet. Figures invented.

import { describe, expect, test } from "vitest";
import { guessed, imported, inShort, leftInShort, openCodes } from "./imported-sheet.ts";

const ways = ({ open }: ReturnType<typeof guessed>, code: string): readonly string[] =>
  open.filter((one) => one.code === code).flatMap(({ readings }) => readings.map(({ text }) => text));

describe("the unit", () => {
  const mixed = "Engine,Date,C1,C2\nmixer,2019-04-02,151 psi,150 psi\nmixer,2021-04-02,10.4 bar,10.1 bar\n";

  test("cells that all name theirs leave nothing open, and the map needs none", () => {
    const guess = guessed(mixed, { what: "dry" });
    expect(openCodes(guess)).toEqual([]);
    expect(guess.map.unit).toBeUndefined();
    const { tests, counts } = imported(mixed, guess.map);
    expect(tests.map(inShort)).toEqual([
      "mixer 2019-04-02: dry 1 psi 151,150",
      "mixer 2021-04-02: dry 1 bar 10.4,10.1",
    ]);
    expect(counts.ownUnits).toEqual([
      { unit: "psi", readings: 2 },
      { unit: "bar", readings: 2 },
    ]);
  });

  test("one that is typed fills the rest, and how many name their own is counted", () => {
    const sheet = `${mixed}mixer,2023-04-02,1040,1010\n`;
    expect(openCodes(guessed(sheet, { what: "dry" }))).toEqual(["unit"]);
    const result = imported(sheet, guessed(sheet, { what: "dry", unit: "kPa" }).map);
    expect(result.tests.map(inShort)[2]).toBe("mixer 2023-04-02: dry 1 kPa 1040,1010");
    expect(result.left).toEqual([]);
    expect(result.counts.ownUnits.map(({ readings }) => readings)).toEqual([2, 2]);
  });

  test("a map without one keeps out the reading that names none", () => {
    const sheet = `${mixed}mixer,2023-04-02,1040,1010 kPa\n`;
    const { tests, ...rest } = imported(sheet, guessed(mixed, { what: "dry" }).map);
    expect(leftInShort({ tests, ...rest })).toEqual(["fault C4 unit-missing 1"]);
    expect(tests.map(inShort)[2]).toBe("mixer 2023-04-02: dry 1 kPa x,1010");
  });

  test("a percent sign in the kind sets the unit of its row, whatever was typed", () => {
    const sheet = "Date,Test,1,2\n2022-06-01,Compression,140,141\n2022-06-01,Leak %,7,9\n";
    const { map } = guessed(sheet, { engine: "saw-mill", unit: "psi" });
    expect(imported(sheet, map).tests.map(inShort)).toEqual([
      "saw-mill 2022-06-01: dry 1 psi 140,141 / leak-down 1 % 7,9",
    ]);
  });

  test("a percent sign in the cells does too; the kind says whether they are lost or held", () => {
    const sheet = (kind: string): string =>
      `Date,Test,1,2\n2022-06-01,Compression,140,141\n2022-06-01,${kind},93%,91%\n`;
    const hints = { engine: "saw-mill", unit: "psi" };
    const of = (kind: string): string | undefined =>
      imported(sheet(kind), guessed(sheet(kind), hints).map).tests.map(inShort)[0];
    expect(of("Leakdown % held")).toContain("leak-down 1 % 7,9");
    expect(of("Leakdown % lost")).toContain("leak-down 1 % 93,91");
    expect(openCodes(guessed(sheet("Leakdown"), hints))).toEqual(["percent"]);
    expect(openCodes(guessed(sheet("Leakdown % held"), hints))).toEqual([]);
  });

  test("a cell or a kind that contradicts the column of units is a fault", () => {
    const sheet = "Date,Test,Unit,1,2\n2022-06-01,dry,psi,140,9.8 bar\n2022-06-02,Leak %,psi,7,9\n";
    expect(leftInShort(imported(sheet, guessed(sheet, { engine: "saw-mill" }).map))).toEqual([
      "fault E2 import-unit 1",
      "fault D3 import-unit 1",
      "fault E3 import-unit 1",
    ]);
  });

  test("percent beside a pressure kind stay out", () => {
    const sheet = "Date,1,2\n2022-06-01,140,9%\n";
    const { map } = guessed(sheet, { engine: "saw-mill", unit: "psi", what: "dry" });
    expect(leftInShort(imported(sheet, map))).toEqual(["fault C2 percent-out-of-place 1"]);
  });

  test("the question names the cell without one, as a sentence", () => {
    const [question] = guessed("Date,1,2\n2022-06-01,140,141\n", { engine: "saw-mill", what: "dry" }).open;
    expect(question?.text).toBe('nothing says in which unit "140" in B2 was read');
  });
});

describe("the supply", () => {
  const pairs = "Date,1,2\n2022-06-01,76/80,71/80\n2023-06-01,75/80,62/80\n";

  test("figures held of one supply throughout are a leak-down", () => {
    const guess = guessed(pairs, { engine: "glider", unit: "psi" });
    expect(openCodes(guess)).toEqual([]);
    expect(guess.map.what).toEqual({ fixed: "leak-down" });
    expect(imported(pairs, guess.map).counts.ownSupplies).toBe(4);
  });

  test("of pairs with different supplies, dry and wet are not offered", () => {
    const guess = guessed(pairs.replace("62/80", "88/100"), { engine: "glider", unit: "psi" });
    expect(ways(guess, "what")).toEqual(["leak-down", "leak-down-oiled"]);
  });

  test("one in the title is taken, and is not the unit of the readings", () => {
    const sheet = (title: string): string => `${title},,\nDate,1,2\n2022-06-01,7,9\n`;
    const percent = guessed(sheet("Leak-down % at 80 psi"), { engine: "glider" });
    expect(percent.map).toMatchObject({
      unit: { fixed: "%" },
      conditions: { regulated_psi: { fixed: "80" } },
    });
    expect(openCodes(guessed(sheet("Leakdown at 80 psi"), { engine: "glider" }))).toEqual(["unit"]);
  });
});
