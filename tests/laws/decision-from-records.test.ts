// Laws of the way from records to a decision. Engines drawn at random, all invented.

import fc from "fast-check";
import { expect, test } from "vitest";
import { asOpen, decided, numbersIn, openEngine } from "../core/assess/deciding-records.ts";
import type { Row } from "../core/assess/records.ts";

const words = [
  "oil use,none",
  "oil pressure hot,proved low",
  "filter debris,chunks",
  "knock,heavy",
  "coolant loss,some",
  "valve seen,burnt",
  "crosshatch,full",
  "score,none",
  "other fault,cracked bellhousing",
].map((what, i) => `2026-05-${String(10 + i)},,${what},,`);

test("the order of the notes makes no difference", () => {
  const first = decided({ ...openEngine, notes: words }, asOpen);
  fc.assert(
    fc.property(fc.shuffledSubarray(words, { minLength: words.length }), (notes) => {
      const { evidence, decision } = decided({ ...openEngine, notes }, asOpen);
      expect(evidence).toEqual(first.evidence);
      expect(decision).toEqual(first.decision);
    }),
    { numRuns: 10 },
  );
});

const reading = fc.integer({ min: 0, max: 190 });
const drawn = fc.array(fc.tuple(reading, reading, reading), { minLength: 0, maxLength: 7 }).map((tests) =>
  tests.map((cells, i): Row => ({
    test: `${String(2020 + i)}-05-01a`,
    cells: cells.join(" "),
    gauge: "red",
  })),
);
const opened = fc.constantFrom(
  undefined,
  "head-off",
  "bottom-open",
  "pistons-in",
  "pistons-out",
  "crank-out",
);

test("whatever was read, no number of the answer is none, and every line is a row or named as not seen", () => {
  fc.assert(
    fc.property(drawn, opened, fc.subarray(words), (tests, state, notes) => {
      const { decision, evidence, notSeen, wear, nextTest } = decided(
        { cylinders: 3, tests, notes },
        state === undefined ? {} : { opened: state },
      );
      for (const number of numbersIn({ decision, wear, nextTest })) expect(Number.isNaN(number)).toBe(false);
      const told = new Set([...evidence, ...notSeen].map(({ line }) => line));
      for (const line of ["leak-down", "blow-by", "measured"] as const) expect(told.has(line)).toBe(true);
      for (const { probability } of wear) {
        expect(probability).toBeGreaterThanOrEqual(0);
        expect(probability).toBeLessThanOrEqual(1);
      }
    }),
    { numRuns: 40 },
  );
});

test("no repair follows from cranking alone", () => {
  fc.assert(
    fc.property(drawn, (tests) => {
      expect(decided({ cylinders: 3, tests }).decision.need).toBeUndefined();
    }),
    { numRuns: 30 },
  );
});

test("the longer it is kept, the likelier its limit is passed", () => {
  const chanceIn = (years: number) =>
    decided(openEngine, { ...asOpen, ownership: { kind: "years", years } }).decision.chance?.probability ?? 0;
  const chances = [1, 2, 5, 8, 12, 20].map(chanceIn);
  expect(chances.toSorted((a, b) => a - b)).toEqual(chances);
});
