// What a command receives from the words typed. The rows are the traps measured in handbook/tooling.md B.2 and the
// promises of the contract, design.md §4.

import { expect, test } from "vitest";
import { type } from "./sample.ts";

const rows: readonly (readonly [string, readonly string[], readonly string[], object])[] = [
  ["a value that begins with - is kept", ["--temp", "-5C"], [], { temp: "-5C" }],
  ["a value that begins with - is kept after =", ["--temp=-5C"], [], { temp: "-5C" }],
  ["a note may begin with a dash and a letter", ["--note", "-loose plug"], [], { note: "-loose plug" }],
  ["a note may begin with two dashes after =", ["--note=--x"], [], { note: "--x" }],
  ["a note keeps its own quotes", ["--note", '"hot"'], [], { note: '"hot"' }],
  ["a note keeps single quotes and equals signs", ["--note='a=b'"], [], { note: "'a=b'" }],
  ["a note keeps line ends and blanks", ["--note", " two\nlines "], [], { note: " two\nlines " }],
  ["a note named like a flag's value stays text", ["--note", "true"], [], { note: "true" }],
  ["unquoted readings are taken", ["--dry", "152", "150", "149"], [], { dry: ["152 150 149"] }],
  ["quoted readings are taken", ["--dry", "152 150 149"], [], { dry: ["152 150 149"] }],
  ["readings are taken after =", ["--dry=152"], [], { dry: ["152"] }],
  ["readings go on after =", ["--dry=152", "150"], [], { dry: ["152 150"] }],
  [
    "a reading option given twice means repeats",
    ["--dry", "152 150", "--dry", "151", "149"],
    [],
    { dry: ["152 150", "151 149"] },
  ],
  [
    "cells not taken, pegged or doubtful belong to the readings",
    ["--dry", "x", ">300", "131?", "-", "-5", "?"],
    [],
    { dry: ["x >300 131? - -5 ?"] },
  ],
  [
    "decimal commas and fractions belong to the readings",
    ["--leak-down", "74/80", "10,5", ".5"],
    [],
    { "leak-down": ["74/80 10,5 .5"] },
  ],
  [
    "places where air is heard belong to the readings",
    ["--heard", "none", "exhaust:faint", "intake+plug", "tractor"],
    ["tractor"],
    { heard: ["none exhaust:faint intake+plug"] },
  ],
  [
    "names with their values belong to a list",
    ["--heard", "work.reRing=620", "day=10", "tractor"],
    ["tractor"],
    { heard: ["work.reRing=620 day=10"] },
  ],
  [
    "a mistyped reading that begins with a digit belongs to the readings",
    ["--dry", "152", "14O"],
    [],
    { dry: ["152 14O"] },
  ],
  [
    "the engine may stand before the readings",
    ["tractor", "--dry", "152", "150"],
    ["tractor"],
    { dry: ["152 150"] },
  ],
  [
    "the engine may stand after the readings",
    ["--dry", "152", "150", "tractor"],
    ["tractor"],
    { dry: ["152 150"] },
  ],
  [
    "a short option ends the readings only where the command has it",
    ["--dry", "152", "-5C", "--temp", "1C"],
    [],
    { dry: ["152 -5C"], temp: "1C" },
  ],
  ["an alias is the option itself", ["--differential", "74/80"], [], { "leak-down": ["74/80"] }],
  ["-- ends the options", ["--temp", "5C", "--", "--dry"], ["--dry"], { temp: "5C" }],
  ["a lone dash is a word", ["-"], ["-"], {}],
  ["a number that begins with - is a word", ["-5C"], ["-5C"], {}],
  ["an id is text", ["007", "--note", "1e3"], ["007"], { note: "1e3" }],
  ["a hexadecimal number is text", ["0x10", "--note", "0x10"], ["0x10"], { note: "0x10" }],
  ["a big number is text", ["--note", "900719925474099312345"], [], { note: "900719925474099312345" }],
  [
    "--no-color and --no-input are flags",
    ["--no-color", "--no-input"],
    [],
    { "no-color": true, "no-input": true },
  ],
  [
    "a flag takes no word",
    ["--why", "tractor", "--same-test", "--ascii"],
    ["tractor"],
    { why: true, "same-test": true, ascii: true },
  ],
  ["true after a flag is a word", ["--why", "true"], ["true"], { why: true }],
  [
    "names of a JavaScript object are words",
    ["__proto__", "--note", "__proto__"],
    ["__proto__"],
    { note: "__proto__" },
  ],
  ["a word of yargs is a word", ["completion"], ["completion"], {}],
];

test.each(rows)("%s", async (_, words, positionals, options) => {
  expect((await type("enter", ...words)).received).toEqual({ command: "enter", positionals, options });
});

test("options may stand before the command, and between its two words", async () => {
  const wanted = { command: "engine add", positionals: ["pump"], options: { cylinders: "4", logbook: "-x" } };
  expect((await type("--logbook", "-x", "--cylinders", "4", "engine", "add", "pump")).received).toEqual(
    wanted,
  );
  expect((await type("engine", "--logbook", "-x", "add", "--cylinders=4", "pump")).received).toEqual(wanted);
});

test("a list before the command ends at the command", async () => {
  expect((await type("--dry", "152", "150", "enter", "tractor")).received).toEqual({
    command: "enter",
    positionals: ["tractor"],
    options: { dry: ["152 150"] },
  });
});

test("--json is heard anywhere", async () => {
  for (const line of ["--json show pump", "show --json pump", "show pump --json"])
    expect(JSON.parse((await type(...line.split(" "))).out)).toMatchObject({
      positionals: ["pump"],
      options: { json: true },
    });
});

test("after -- or = the word --json is a value", async () => {
  expect((await type("show", "--", "--json")).received?.positionals).toEqual(["--json"]);
  expect((await type("enter", "--note=--json")).out).toContain('"note":"--json"');
});

test("a short option takes its value after a blank or =", async () => {
  for (const words of [["-o", "a b.html"], ["-o=a b.html"], ["--output", "a b.html"]])
    expect((await type("page", ...words)).received?.options).toEqual({ output: "a b.html" });
});

test("an object's prototype is left alone", async () => {
  await type("enter", "--__proto__.polluted", "1", "--__proto__=2", "--constructor.prototype.polluted=1");
  expect(Object.keys(Object.prototype)).toEqual([]);
  expect("polluted" in {}).toBe(false);
});
