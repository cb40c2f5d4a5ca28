import { expect, test } from "vitest";
import { gaugePressure } from "../../../packages/core/src/quantity/index.ts";
import { formulaHolds } from "../../../packages/core/src/rules/formula-holds.ts";
import { judgeRule, judgeRules, shippedRules, type Rule } from "../../../packages/core/src/rules/index.ts";
import { engine, parsed, readings, shipped } from "./rule-readings.ts";

const ruleOf = async (formula: string, limit?: Rule["limit"]): Promise<Rule> => {
  const tree = await parsed(formula);
  const base = { id: "own", family: "ratio", formula, tree, holds: formulaHolds(tree) ?? "truth" } as const;
  const rest = {
    applies: { kind: "engines" },
    text: "a rule of one's own",
    source: "none",
    status: "judgement",
  } as const;
  return limit === undefined ? { ...base, ...rest } : { ...base, ...rest, limit };
};

// statistics.md A.6, computed there: 138 and 150 psi, scatter 1.5 %, two repeats, divisions of 2.5 psi:
// u(ln R) = .0158192461016312; with class 2.5 of 300 psi and 1 % of the correction the reading of 150 psi has 3.252 %.
const own = (p: number): number => Math.sqrt((0.015 ** 2 + (2.5 / (Math.sqrt(12) * p)) ** 2) / 2);
const common = Math.hypot(7.5 / (Math.sqrt(3) * 150), 0.01);

test("the ratio of two cylinders carries the uncertainty of the two readings alone", () => {
  const [low, high] = readings([138, 150], "psi", { common });
  if (low === undefined || high === undefined) throw new Error("two readings");
  const pair = [
    { ...low, ownUncertainty: own(138) },
    { ...high, ownUncertainty: own(150) },
  ];
  const { value, uncertainty = 0 } = judgeRule(shipped("ratio75"), pair);
  expect(value).toBeCloseTo(0.92, 12);
  expect(uncertainty / 0.92).toBeCloseTo(0.0158192461016312, 5);
});

test("a limit in pressure carries the uncertainty of gauge and correction as well", () => {
  const { value = 0, uncertainty = 0 } = judgeRule(
    shipped("floor100psi"),
    readings([150], "psi", { own: own(150), common }),
  );
  expect(uncertainty / value).toBeCloseTo(0.03252, 4);
});

// Two standard uncertainties of p / max at 0.75 with 1 % each: 2 * 0.75 * 0.01 * sqrt(2) = 0.0212
test.each([
  [0.78, "met"],
  [0.765, "near"],
  [0.75, "near"],
  [0.735, "near"],
  [0.72, "not-met"],
])("lowest to highest of %d with readings of 1 %% is %s against 0.75", (ratio, verdict) => {
  const findings = judgeRule(shipped("ratio75"), readings([1000, 1000 * ratio], "kPa", { own: 0.01 }));
  expect(findings.verdict).toBe(verdict);
});

test("a rule may be met exactly at its limit, or just above, as it was printed", async () => {
  const sharp = await ruleOf("p / max", { value: 0.75, unit: "1", compare: ">" });
  expect(judgeRule(shipped("ratio75"), readings([100, 75], "psi")).verdict).toBe("met");
  expect(judgeRule(sharp, readings([100, 75], "psi")).verdict).toBe("not-met");
  expect(judgeRule(shipped("ratio75"), readings([100, 74.9], "psi")).verdict).toBe("not-met");
});

test("a rule on each cylinder names the worst and says the verdict of every one", () => {
  const finding = judgeRule(shipped("ratio75"), readings([150, 100, 90, 149], "psi"));
  expect(finding).toMatchObject({ verdict: "not-met", cylinder: "3", value: 0.6 });
  expect(finding.byCylinder?.map(({ verdict }) => verdict)).toEqual(["met", "not-met", "not-met", "met"]);
});

test.each(["not-taken", "pegged", "doubtful"] as const)(
  "a rule that needs a reading that is %s cannot tell",
  (state) => {
    const [first, ...others] = readings([150, 152, 149], "psi");
    if (first === undefined) throw new Error("three readings");
    const finding = judgeRule(shipped("ratio75"), [{ ...first, state }, ...others]);
    expect(finding).toMatchObject({ verdict: "cannot-tell", gaps: [{ label: "1", gap: state }] });
    expect(finding.value).toBeUndefined();
  },
);

test("a cylinder below a limit of its own is below it whatever was not taken", () => {
  const [first, second] = readings([80, 150], "psi");
  if (first === undefined || second === undefined) throw new Error("two readings");
  const gap = { ...second, state: "not-taken" } as const;
  expect(judgeRule(shipped("floor100psi"), [first, gap])).toMatchObject({
    verdict: "not-met",
    cylinder: "1",
  });
  const good = judgeRule(shipped("floor100psi"), [second, { ...first, state: "not-taken" }]);
  expect(good).toMatchObject({ verdict: "cannot-tell", gaps: [{ label: "1", gap: "not-taken" }] });
});

test("ratios use the reading corrected for air pressure, limits in pressure the fully corrected one", () => {
  const mixed = readings([100, 80], "psi").map((reading) => ({
    ...reading,
    fullyCorrected: gaugePressure(120 * 6894.757293168361),
  }));
  expect(judgeRule(shipped("ratio75"), mixed).value).toBeCloseTo(0.8, 12);
  expect(judgeRule(shipped("floor100psi"), mixed)).toMatchObject({
    verdict: "met",
    value: 120 * 6894.757293168361,
  });
});

test("a limit in pressure cannot tell where speed could not be corrected and no value was given", () => {
  const bare = readings([150], "psi").map(({ fullyCorrected: _, ...reading }) => reading);
  expect(judgeRule(shipped("floor100psi"), bare).verdict).toBe("cannot-tell");
});

test("a rule of two halves is settled by the half that surely fails", async () => {
  const both = await ruleOf("ratio >= 0.75 and cv <= 0.5");
  const either = await ruleOf("ratio >= 0.75 or cv <= 0.5");
  const close = readings([1000, 755], "kPa", { own: 0.01 });
  expect(judgeRule(both, close).verdict).toBe("near");
  expect(judgeRule(either, close).verdict).toBe("met");
  expect(judgeRule(await ruleOf("not (ratio >= 0.75)"), readings([100, 60], "psi")).verdict).toBe("met");
  expect(judgeRule(await ruleOf("ratio >= 0.75 and cv <= 0.01"), close).verdict).toBe("not-met");
});

test("every word but the verdict is carried over from the rule", () => {
  const rule = shipped("dev20Mean");
  const { id, text, formula, source, status, limit } = judgeRule(rule, readings([100, 90], "psi"));
  expect({ id, text, formula, source, status, limit }).toEqual({
    id: rule.id,
    text: rule.text,
    formula: rule.formula,
    source: rule.source,
    status: rule.status,
    limit: rule.limit,
  });
});

test("one common factor on all readings changes no ratio rule", () => {
  for (const id of ["ratio75", "ratio80", "pct15", "pct10", "dev20Mean"]) {
    const low = judgeRule(shipped(id), readings([100, 91, 88], "psi", { own: 0.01 }));
    const high = judgeRule(shipped(id), readings([120, 109.2, 105.6], "psi", { own: 0.01, common: 0.2 }));
    expect(high.value).toBeCloseTo(low.value ?? NaN, 12);
    expect(high.uncertainty).toBeCloseTo(low.uncertainty ?? NaN, 12);
  }
});

test("a single cylinder is judged by no rule that compares cylinders", () => {
  expect(
    judgeRules(shippedRules, readings([150], "psi"), engine({ cylinders: ["1"] })).map(({ id }) => id),
  ).toEqual(["floor100psi"]);
});

// 150, 152, 149, 131 kPa: mean 582 / 4 = 145.5; median (149 + 150) / 2 = 149.5; squares about the mean 20.25 + 42.25 +
// 12.25 + 210.25 = 285, / 3 = 95, so cv = sqrt(95) / 145.5
test.each([
  ["mean / max", 145.5 / 152],
  ["median / max", 149.5 / 152],
  ["range / max", 21 / 152],
  ["min / max", 131 / 152],
  ["ratio", 131 / 152],
  ["cv", Math.sqrt(95) / 145.5],
  ["n", 4],
])("%s of 150, 152, 149 and 131 is %d", async (formula, value) => {
  const rule = await ruleOf(formula, { value: 1, unit: "1", compare: "<" });
  expect(judgeRule(rule, readings([150, 152, 149, 131], "kPa")).value).toBeCloseTo(value, 12);
});
