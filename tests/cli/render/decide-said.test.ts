// What `decide` says where nobody asked what getting in costs, and what it says of an alarm. Readings invented.

import type { DecisionAssessment } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { breakEvenText } from "../../../packages/cli/src/render/decide/decide-chance.ts";
import { reasonText } from "../../../packages/cli/src/render/decide/decide-reason.ts";
import { decided, healthyYears } from "../../core/assess/deciding-records.ts";

const years = decided({ tests: healthyYears });
const neverPays: NonNullable<DecisionAssessment["decision"]["ratio"]> = {
  act: "reRing",
  chance: 0.1,
  toOpen: 1,
};
const said = (more: Partial<DecisionAssessment> = {}): string =>
  breakEvenText({ ...years, decision: { ...years.decision, ratio: neverPays }, ...more }, "psi");

test("closed and with no price told, nothing is said of what getting in costs", () => {
  expect(years.decision.chance).toBeDefined();
  expect(said()).not.toMatch(/does not pay|prices/);
  expect(said()).toMatch(/^The chance of passing /);
});

test("opened, or with a cost of getting in told, it is", () => {
  expect(said({ done: ["engineOut"] })).toContain("does not pay, whatever getting in again costs");
  expect(said({ input: { ...years.input, accessRatio: 2 } })).toContain("does not pay");
});

test("beside the alarm a reading below the others is named among what speaks for wear", () => {
  const [row] = years.evidence;
  const alarm = {
    ...years.decision,
    verdict: "watch-it",
    saying: "watch",
    reasons: ["history-alarm"],
  } as const;
  const rows = ["A8", "A2"].map((id) => ({
    ...{ ...row, line: "cranking", use: "counted", from: "test 2026-05-01a", text: "low" },
    ...{ row: id, points: { top: 1 } },
  }));
  const text = (evidence: unknown): string =>
    reasonText({ ...years, decision: alarm, evidence: evidence as DecisionAssessment["evidence"] }, "psi");
  expect(text(rows)).toContain("cranking readings alone are not enough for work");
  expect(text(rows.slice(0, 1))).toContain("no more than that speaks for wear");
});
