// One name of an engine in several spellings: one engine, unless the sheet says that they are two. Readings invented.

import { guessImportMap, parseSheet, readImportMap } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { guessed, imported, inShort } from "./imported-sheet.ts";

const head = "engine,ignition,date,what,unit,c1,c2,c3,c4";
const sheet = (...rows: readonly string[]): string => [head, ...rows, ""].join("\n");
const enginesOf = (text: string) =>
  guessed(text).map.engines.map(({ sheet: name, engine }) => [name, engine]);

test("spellings that nothing keeps apart are one engine", () => {
  const text = sheet(
    "Red Dozer,spark,2026-05-03,dry,psi,150,148,152,149",
    "RED  dozer,,2026-06-03,dry,psi,150,148,152,149",
  );
  const { map, open } = guessed(text);
  expect([open, map.engines]).toEqual([
    [],
    [{ sheet: "Red Dozer", engine: "red-dozer", cylinders: ["1", "2", "3", "4"], ignition: "spark" }],
  ]);
  expect(imported(text, map).tests.map(({ engine }) => engine)).toEqual(["red-dozer", "red-dozer"]);
});

describe("spellings with other cylinders or ignition are asked about, never joined in silence", () => {
  const text = sheet(
    "Red Dozer,spark,2026-05-03,dry,psi,150,148,,",
    "red dozer,spark,2026-05-03,dry,psi,150,148,152,149",
    "Red  Dozer,compression,2026-05-03,dry,psi,400,410,,",
  );

  test("each has an engine of its own in the map, and a question", () => {
    expect(enginesOf(text)).toEqual([
      ["Red Dozer", "red-dozer"],
      ["red dozer", "red-dozer-2"],
      ["Red  Dozer", "red-dozer-3"],
    ]);
    expect(guessed(text).open.map(({ code, text: said }) => [code, said])).toEqual([
      [
        "engine-name",
        '"red dozer" in A3 (4 cylinders, spark) may be red-dozer (2 cylinders, spark) or an engine of its own',
      ],
      [
        "engine-name",
        '"Red  Dozer" in A4 (2 cylinders, compression) may be red-dozer (2 cylinders, spark) or an engine of its own',
      ],
    ]);
  });

  test("the map as it is laid down keeps them apart to the letter; edited, it joins them", () => {
    const { map } = guessed(text);
    expect(imported(text, map).tests.map(inShort)).toEqual([
      "red-dozer 2026-05-03: dry 1 psi 150,148",
      "red-dozer-2 2026-05-03: dry 1 psi 150,148,152,149",
      "red-dozer-3 2026-05-03: dry 1 psi 400,410",
    ]);
    const engines = map.engines.map((one) => ({ ...one, engine: "red-dozer", ignition: "spark" as const }));
    expect(imported(text, { ...map, engines }).tests.map(inShort)).toEqual([
      "red-dozer 2026-05-03: dry 1 psi 150,148,x,x / dry 2 psi 150,148,152,149 / dry 3 psi 400,410,x,x",
    ]);
  });

  test("in a logbook that has them under these names they are known", () => {
    const known = guessed(text).map.engines.map(({ sheet: name, engine, cylinders }) => ({
      id: engine,
      name,
      cylinders,
    }));
    const { map, open } = guessed(text, { known });
    expect([open, map.engines.map(({ engine }) => engine)]).toEqual([
      [],
      ["red-dozer", "red-dozer-2", "red-dozer-3"],
    ]);
  });

  test("one that is in the logbook takes the first that has as many cylinders", () => {
    const known = [{ id: "red-dozer", name: "Dozer", cylinders: ["1", "2", "3", "4"] }];
    const { map, open } = guessed(text, { known });
    expect(map.engines.map(({ sheet: name, engine }) => [name, engine])).toEqual([
      ["Red Dozer", "red-dozer-2"],
      ["red dozer", "red-dozer"],
      ["Red  Dozer", "red-dozer-3"],
    ]);
    expect(open).toHaveLength(2);
  });
});

test("a map may not say two ignitions of one engine, nor two engines of one name to the letter", () => {
  const { map } = guessed(sheet("Baler,spark,2026-05-03,dry,psi,150,148,152,149"));
  const [one] = map.engines;
  const faults = (...engines: readonly object[]) => {
    const read = readImportMap(JSON.stringify({ ...map, engines }), "map.json");
    return read.ok ? [] : read.problems.map(({ found, expected }) => [found, expected]);
  };
  expect(faults(one ?? {}, { ...one, sheet: "BALER" })).toEqual([]);
  expect(faults(one ?? {}, { ...one, sheet: "BALER", ignition: "compression" })).toEqual([
    ['engines[1].ignition is "compression"', '"spark", as another name of baler has it'],
  ]);
  expect(faults(one ?? {}, { ...one, sheet: "BALER", engine: "baler-2" })).toEqual([]);
  expect(faults(one ?? {}, { ...one, engine: "baler-2" })).toEqual([
    ['engines[1].sheet is "Baler"', "each name of the sheet once"],
  ]);
});

test("rows of one name that say two ignitions are asked about", () => {
  const text = sheet(
    "Baler,spark,2026-05-03,dry,psi,150,148,152,149",
    "Baler,compression,2026-06-03,dry,psi,150,148,152,149",
  );
  const { map, open } = guessed(text);
  expect(open.map(({ text: said }) => said)).toEqual(['the rows of "Baler" in A2 say spark and compression']);
  expect(map.engines.map(({ ignition }) => ignition)).toEqual(["unknown"]);
});

test("an ignition in degrees says nothing of how an engine fires", () => {
  const text = sheet("Baler,12,2026-05-03,dry,psi,150,148,152,149");
  const { map } = guessed(text);
  expect([map.ignition, map.engines[0]?.ignition]).toEqual([undefined, "unknown"]);
});

test("a map that a person wrote fills the ignition that it leaves open from the column", () => {
  const text = sheet("Baler,compression,2026-05-03,dry,psi,400,405,410,400");
  const { map } = guessed(text);
  const engines = [{ sheet: "Baler", engine: "baler", cylinders: [] }];
  expect(imported(text, { ...map, engines }).engines).toEqual([
    { sheet: "Baler", engine: "baler", cylinders: ["1", "2", "3", "4"], ignition: "compression" },
  ]);
});

describe("what is set aside", () => {
  const rows = [
    "Baler,2026-05-03a,2026-05-03,dry,psi,150,148,,wrong adapter",
    "Baler,2026-05-03a,2026-05-03,wet,psi,160,158,,",
    "Baler,2026-05-03b,2026-05-03,dry,psi,151,149,,",
  ];
  const columns = "engine,test,date,what,unit,c1,c2,by,set_aside";
  const asides = (text: string) =>
    imported(text, guessed(text).map).tests.map(({ setAside, rows: own }) => [
      setAside,
      own.map(({ what }) => what).join(),
    ]);

  test("is the whole of the test that the names say, and no more", () => {
    expect(asides([columns, ...rows, ""].join("\n"))).toEqual([
      ["wrong adapter", "dry,wet"],
      [undefined, "dry"],
    ]);
  });

  test("is only the row that says it, where nothing names the tests", () => {
    const bare = [columns, ...rows].map((row) => row.split(",").toSpliced(1, 1).join(","));
    expect(asides([...bare, ""].join("\n"))).toEqual([
      ["wrong adapter", "dry"],
      [undefined, "wet,dry"],
    ]);
  });
});

test("a column under test that has kinds is no column of names", () => {
  const text = "engine,test,date,unit,1,2\nBaler,dry,2026-05-03,psi,150,148\n";
  const { map } = guessImportMap(parseSheet(text, "sheet.csv").sheet);
  expect([map.test, map.what]).toEqual([undefined, { column: "B" }]);
});
