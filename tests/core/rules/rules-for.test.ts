import { expect, test } from "vitest";
import { gaugePressure } from "../../../packages/core/src/quantity/index.ts";
import {
  appliesTo,
  judgeRules,
  rulesFor,
  shippedRules,
  type EngineFacts,
} from "../../../packages/core/src/rules/index.ts";
import { readApplies } from "../../../packages/core/src/rules/applies.ts";
import { engine, readings } from "./rule-readings.ts";

const ids = (facts: Partial<EngineFacts>): readonly string[] =>
  rulesFor(engine(facts), shippedRules).map(({ id }) => id);

const cases: readonly (readonly [string, Partial<EngineFacts>, readonly string[]])[] = [
  ["a car engine", {}, ["ratio75", "floor100psi", "car25"]],
  ["a tractor on petrol", { use: "farm" }, ["ratio75"]],
  ["a diesel pump", { use: "stationary", ignition: "compression" }, ["ratio80"]],
  ["an engine of which the ignition is not known", { ignition: "unknown" }, ["ratio75"]],
  ["a boat, inboard or outboard", { use: "boat" }, ["ratio75", "pct15"]],
  ["a two-stroke outboard", { use: "boat", cycle: "two-stroke" }, ["pct15"]],
  ["a motorcycle", { use: "motorcycle" }, ["pct10"]],
  ["an aircraft engine", { use: "aircraft" }, ["dev20Mean"]],
  ["a two-stroke diesel", { ignition: "compression", cycle: "two-stroke" }, []],
  ["a small single", { use: "other", cylinders: ["1"] }, []],
];

test.each(cases)("%s has its general rules", (_name, facts, expected) => {
  expect(ids(facts)).toEqual(expected);
});

test("no limit of one maker's engine is judged on another", () => {
  const comparison = shippedRules.filter(({ applies }) => applies.kind === "comparison");
  expect(comparison.length).toBeGreaterThan(0);
  expect(comparison.filter(({ applies }) => appliesTo(applies, engine()))).toEqual([]);
});

test("the maker's own figure takes the place of the general rule of its kind", () => {
  const compressionLimits = {
    minimum: gaugePressure(690_000),
    lowestToHighest: 0.8,
    difference: gaugePressure(200_000),
    source: "manual p. 30",
  };
  const leakDownLimits = { lost: 0.2, source: "manual p. 30" };
  const rules = rulesFor(engine({ compressionLimits, leakDownLimits }), shippedRules);
  expect(rules.map(({ id }) => id)).toEqual([
    "maker-minimum",
    "maker-difference",
    "maker-ratio",
    "maker-leak-down",
  ]);
  expect(new Set(rules.map(({ source, status }) => `${source}, ${status}`))).toEqual(
    new Set(["manual p. 30, engine record"]),
  );
});

test("a maker's minimum alone leaves the general ratio in force", () => {
  expect(ids({ compressionLimits: { minimum: gaugePressure(690_000) } })).toEqual([
    "maker-minimum",
    "ratio75",
    "car25",
  ]);
});

// trade.md B2: 0.75 of standard for petrol, 0.82 for diesel, a judgement. 0.75 * 1200 = 900; 0.82 * 3000 = 2460 kPa
test.each([
  ["spark", 1_200_000, 900_000],
  ["compression", 3_000_000, 2_460_000],
] as const)(
  "with only the new pressure known, a %s engine gets a least pressure that is marked as a judgement",
  (ignition, standard, least) => {
    const limits = { new: gaugePressure(standard), source: "manual p. 30" };
    const [rule] = rulesFor(engine({ ignition, compressionLimits: limits }), shippedRules);
    expect(rule).toMatchObject({
      id: "derived-minimum",
      status: "judgement",
      source: "derived from the new pressure, manual p. 30",
    });
    expect(rule?.limit?.value).toBeCloseTo(least, 6);
  },
);

test("without the ignition no least pressure is derived", () => {
  expect(ids({ ignition: "unknown", compressionLimits: { new: gaugePressure(1_200_000) } })).toEqual([
    "ratio75",
  ]);
});

test("the maker's figures are judged like any rule", () => {
  const compressionLimits = { minimum: gaugePressure(700_000), difference: gaugePressure(100_000) };
  const findings = judgeRules(
    shippedRules,
    readings([950, 830, 690, 940], "kPa"),
    engine({ compressionLimits }),
  );
  expect(findings.map(({ id, verdict, cylinder, value }) => [id, verdict, cylinder, value])).toEqual([
    ["maker-minimum", "not-met", "3", 690_000],
    ["maker-difference", "not-met", "3", 260_000],
    ["ratio75", "not-met", "3", 690 / 950],
  ]);
});

test.each([
  ["cylinders=2", 1, false],
  ["cylinders=2", 2, true],
  ["cylinders=2", 3, false],
  ["cylinders=2..4", 4, true],
  ["cylinders=2..4", 5, false],
  ["cylinders=5..", 28, true],
  ["", 1, true],
])("%j with %d cylinders applies: %s", (text, count, expected) => {
  const reading = readApplies(text);
  const cylinders = Array.from({ length: count }, (_, i) => String(i + 1));
  expect(reading.ok && appliesTo(reading.applies, engine({ cylinders }))).toBe(expected);
});
