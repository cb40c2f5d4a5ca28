// The case worked by hand in the README of the diagnosis: its arithmetic, its numbers from the tables, and the same odds from
// the library.

import { readFileSync } from "node:fs";
import { diagnose, shippedFaults } from "@sealtrend/core/parts";
import { expect, test } from "vitest";

const page = readFileSync(new URL("../../../packages/core/src/diagnosis/README.md", import.meta.url), "utf8");
const rows = [...page.matchAll(/^\| ([a-z-]+) \| (0\.\d+ \| .*) \|$/gm)].map(([, code = "", cells = ""]) => {
  const [before = 0, heardIn = 0, heard = 0, seenIn = 0, product = 0] = cells.split(" | ").map(Number);
  return { code, before, heardIn, heard, seenIn, product };
});
const odds = [...page.matchAll(/(\d+\.\d) to 1 against/g)].map(([, number]) => Number(number));

test("the case worked by hand multiplies right", () => {
  expect(rows.map(({ code }) => code)).toEqual(["exhaust-valve", "tight-lash", "sticking-valve"]);
  for (const { before, heardIn, heard, seenIn, product } of rows) {
    expect(0.8 * heardIn + 0.2 * 0.03).toBeCloseTo(heard, 12);
    expect(before * heard * seenIn).toBeCloseTo(product, 7);
  }
  const [valve, ...others] = rows.map(({ product }) => product);
  expect(others.map((other) => Number(((valve ?? 0) / other).toFixed(1)))).toEqual(odds);
});

test("the case worked by hand takes its numbers from the shipped tables", () => {
  const { causes, findings } = shippedFaults();
  const chance = (finding: "path" | "borescope", word: string, place: number): number | undefined =>
    findings[finding].columns[place]?.chances[findings[finding].classes.indexOf(word)];
  expect(chance("path", "exhaust", 0)).toBe(0.03);
  for (const { code, before, heardIn, seenIn } of rows) {
    const place = causes.findIndex((cause) => cause.code === code);
    expect(causes[place]?.prior).toBe(before);
    expect(chance("path", "exhaust", place)).toBe(heardIn);
    expect(chance("borescope", "valve", place)).toBe(seenIn);
  }
});

test("the library gives the odds that were worked by hand", () => {
  const { causes } = diagnose({
    cylinders: [{ heard: [{ place: "exhaust", faint: false }], seen: { borescope: "valve" } }],
    banks: [[0]],
    sharedGasket: false,
    circumstances: [],
    restrictor: "known",
    signs: {},
    tools: [],
    obstacles: [],
  });
  const chance = (wanted: string): number => causes.find(({ code }) => code === wanted)?.probability ?? 0;
  const [first, ...others] = rows;
  expect(causes[0]?.code).toBe(first?.code);
  for (const { code, product } of others)
    expect(chance("exhaust-valve") / chance(code)).toBeCloseTo((first?.product ?? 0) / product, 1);
});
