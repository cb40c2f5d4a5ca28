// Leak-down limits as their makers print them. Values: handbook/leakdown.md A, B and check values 22 to 26, each seen in an
// excerpt of the source that the rule names.

import { describe, expect, test } from "vitest";
import { gaugePressure, length, toSi } from "../../../packages/core/src/quantity/index.ts";
import {
  judgeLeakRules,
  judgeRule,
  shippedRules,
  type EngineFacts,
  type Rule,
  type RuleReading,
  type TesterFacts,
} from "../../../packages/core/src/rules/index.ts";
import { engine, shipped } from "./rule-readings.ts";

/** What is lost, as the sources print it, without any doubt of the dials. */
const lost = (...parts: readonly number[]): readonly RuleReading[] =>
  parts.map((part, i) => ({
    label: String(i + 1),
    state: "taken",
    held: 1 - part,
    ownUncertainty: 0,
    commonUncertainty: 0,
  }));
const of80 = (...psi: readonly number[]): readonly RuleReading[] => lost(...psi.map((read) => 1 - read / 80));
const verdict = (id: string, readings: readonly RuleReading[]): string =>
  judgeRule(shipped(id), readings).verdict;

describe("as printed", () => {
  test("Lycoming IO-390-D: 70/80 satisfies, 61 is worn, 60 is repeated at once", () => {
    expect(verdict("lycoming-70", of80(72, 72, 74, 75))).toBe("met");
    expect(verdict("lycoming-70", of80(70))).toBe("met");
    expect([verdict("lycoming-70", of80(61)), verdict("lycoming-60", of80(61))]).toEqual(["not-met", "met"]);
    expect(verdict("lycoming-60", of80(60))).toBe("not-met");
  });

  test.each([
    [5, "met", "met"],
    [6, "not-met", "met"],
    [14, "not-met", "met"],
    [15, "not-met", "not-met"], // in both printed rows: the stricter
  ])("Lycoming IO-390-D: a spread of %d psi", (spread, within5, below15) => {
    const readings = of80(75, 75 - spread);
    expect([verdict("lycoming-spread-5", readings), verdict("lycoming-spread-15", readings)]).toEqual([
      within5,
      below15,
    ]);
  });

  test("AC 43.13-1B: 61/80 is not suspect, 59/80 is, and 60/80 is exactly 25 %, not in excess", () => {
    expect([61, 60, 59].map((read) => verdict("ac25-small", of80(read)))).toEqual(["met", "met", "not-met"]);
  });

  test("Sea-Doo bands: 15, 16, 25, 26, 40, 41 %", () => {
    const band = (part: number): readonly string[] =>
      ["seadoo-15", "seadoo-25", "seadoo-40"].filter((id) => verdict(id, lost(part)) === "met");
    expect([0.15, 0.16, 0.25, 0.26, 0.4, 0.41].map((part) => band(part).length)).toEqual([3, 2, 2, 1, 1, 0]);
  });

  test("Saturn: 20 % and 5 points between cylinders are the most", () => {
    expect(verdict("saturn-20", lost(0.2))).toBe("met");
    expect(verdict("saturn-20", lost(0.21))).toBe("not-met");
    expect(verdict("saturn-spread-5", lost(0.1, 0.15))).toBe("met");
    expect(verdict("saturn-spread-5", lost(0.1, 0.16))).toBe("not-met");
  });

  test.each([
    ["chrysler-25", 60 / 80],
    ["rotax914-25", 4.5 / 6],
    ["rotax915-45", 44 / 80],
  ])("%s is met at its limit", (id, held) => {
    expect(verdict(id, lost(1 - held))).toBe("met");
    expect(verdict(id, lost(1 - held + 0.01))).toBe("not-met");
  });
});

test("the dials' doubt makes a loss near the limit near: 60/80 with 1.86 points (handbook H.3 #1)", () => {
  const doubted = (held: number): readonly RuleReading[] =>
    lost(1 - held).map((one) => ({ ...one, commonUncertainty: 1.19 / 60, ownUncertainty: 0 }));
  const finding = judgeRule(shipped("car25"), doubted(0.75));
  expect(finding.verdict).toBe("near");
  expect(judgeRule(shipped("car25"), doubted(0.7)).verdict).toBe("not-met");
  expect(judgeRule(shipped("car25"), doubted(0.8)).verdict).toBe("met");
});

describe("in force", () => {
  const judged = (facts: Partial<EngineFacts>, tester: TesterFacts, sheet: readonly Rule[] = shippedRules) =>
    judgeLeakRules(sheet, { readings: lost(0.1, 0.3), engine: engine(facts), tester }).map(
      ({ id, verdict: word, tester: match }) => [id, word, match],
    );
  const psi80 = gaugePressure(toSi(80, "psi"));
  const small = { use: "aircraft", geometry: { bore: length(toSi(4.4, "in")) } } as const;
  const large = { use: "aircraft", geometry: { bore: length(toSi(5.125, "in")) } } as const;
  const fortieth = { restrictor: length(toSi(0.04, "in")), supply: psi80 };

  test("the maker's own figure goes first and alone; it is held as read", () => {
    const limits = { leakDownLimits: { lost: 0.35, source: "manual p. 12" } };
    expect(judged({ ...limits, ...small }, fortieth)).toEqual([["maker-leak-down", "met", "as-read"]]);
  });

  test("a limit printed without a tester is held as read, on road engines only", () => {
    expect(judged({}, {})).toEqual([["car25", "not-met", "as-read"]]);
    expect(judged({ use: "farm" }, {})).toEqual([]);
    expect(judged({ ignition: "compression" }, {})).toEqual([]);
  });

  test("the aviation rule asks for its restrictor by bore, 0.040 in below 5 in and 0.060 in from there", () => {
    expect(judged(small, fortieth)).toEqual([["ac25-small", "not-met", "matches"]]);
    expect(judged(large, fortieth)).toEqual([["ac25-large", "cannot-tell", "another"]]);
    expect(judged(large, { ...fortieth, restrictor: length(toSi(0.06, "in")) })).toEqual([
      ["ac25-large", "not-met", "matches"],
    ]);
    expect(judged({ use: "aircraft" }, fortieth)).toEqual([]);
  });

  test("1 mm is taken for 0.040 in, another supply is not, and what is not known is not judged", () => {
    expect(judged(small, { ...fortieth, restrictor: length(0.001) })).toEqual([
      ["ac25-small", "not-met", "matches"],
    ]);
    expect(judged(small, { ...fortieth, supply: gaugePressure(toSi(100, "psi")) })).toEqual([
      ["ac25-small", "cannot-tell", "another"],
    ]);
    expect(judged(small, { supply: psi80 })).toEqual([["ac25-small", "cannot-tell", "unknown"]]);
  });

  test("no band of the trade and no limit of one maker is ever judged", () => {
    const listed = shippedRules.filter(
      ({ family, applies }) => family === "leak-down" && applies.kind !== "comparison",
    );
    expect(listed.map(({ id }) => id)).toEqual(["ac25-small", "ac25-large", "car25"]);
  });
});
