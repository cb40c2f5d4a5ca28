// The screen of `decide` for whatever the core may decide: rows, access, use, prices and horizon drawn at random.

import {
  type DecisionAssessment,
  type DecisionInput,
  type EvidenceId,
  decide,
  ladder,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";
import { decideScreen } from "../../../packages/cli/src/render/decide/decide.ts";
import { assessedDecision } from "./assessed-decision.ts";

const ids: readonly EvidenceId[] = [
  "A1",
  "A2",
  "A4",
  "A5",
  "A6",
  "A7",
  "A8",
  "B1",
  "B2",
  "B4",
  "B5",
  "B6",
  "C0",
  "C2",
  "C3",
  "D1",
  "D2",
  "E1",
  "E2",
  "F1",
  "F3",
  "F4",
  "G1",
  "H2",
  "I1",
  "I2",
  "I4",
  "J1",
  "J2",
  "J4",
  "J5",
  "J6",
];

const prices = {
  jobs: { headOff: 350, bottomOpen: 250, engineOut: 600 },
  work: { topEnd: 400, reRing: 620, rebuild: 2600 },
  test: 15,
};

const inputs: fc.Arbitrary<DecisionInput> = fc.record({
  rows: fc.uniqueArray(fc.constantFrom(...ids), { maxLength: 9 }).map((rows) =>
    rows.map((id) => ({
      id,
      text: `what was found of ${id.toLowerCase()}`,
      restsOn: "other-records" as const,
    })),
  ),
  trust: fc.constantFrom("trusted", "trusted", "trusted", "doubtful", "void"),
  wear: fc.oneof(
    fc.constant({ kind: "unknown" } as const),
    fc
      .oneof(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(0, 5e-324, 1e-300, 1 - 2 ** -53, 1))
      .map((probability) => ({ kind: "typed", probability }) as const),
  ),
  shares: fc.constantFrom("one-low", "evenly-low", "healthy"),
  done: fc.constantFrom(
    [],
    ["headOff"],
    ["bottomOpen"],
    ["engineOut"],
    ["headOff", "bottomOpen", "engineOut"],
  ),
  prices: fc.constantFrom(prices, { ...prices, day: 200, daysLater: { reRing: 12 }, replacement: 900 }),
  ownership: fc.constantFrom(
    { kind: "years", years: 5 },
    { kind: "years", years: 0.5 },
    { kind: "for-good", age: 25, left: 9, years: 5 },
    { kind: "for-good", years: 5 },
  ),
  use: fc.constantFrom("ordinary", "remote", "safety"),
  doubts: fc.subarray(["one-odd-test", "not-itself", "low-everywhere"]),
  test: fc.constant({ what: "measurement", tells: { kind: "as-judged" } }),
});

const shownOf = (input: DecisionInput): DecisionAssessment => {
  const base = assessedDecision();
  const decision = decide(input);
  return {
    ...base,
    input,
    decision,
    done: input.done,
    evidence: input.rows.map(({ id, text }) => ({
      row: id,
      line: ladder[id].line,
      points: { top: 0, rings: 0, bore: 0, bottom: 0, ...ladder[id].points },
      status: ladder[id].status,
      source: ladder[id].source,
      text,
      from: "note 2026-11-21",
      use: decision.suspended.some((row) => row.id === id) ? "set-aside" : "counted",
    })),
    horizon: { kind: input.ownership.kind, years: input.ownership.years ?? 5, from: "usual" },
  };
};

test("whatever is decided fits 24 lines of 80, begins with an answer, and holds no word that is never said", () => {
  fc.assert(
    fc.property(inputs, (input) => {
      const assessment = shownOf(input);
      const lines = decideScreen(assessment, { unit: "kPa", width: 80, detail: "short" });
      const text = lines.join(" ").replace(/\s+/g, " ");
      expect(lines.length).toBeLessThanOrEqual(24);
      expect(text).not.toMatch(/undefined|NaN|Infinity|\[object|\.\.|: \.| ,|\(\)| {2}/);
      expect(text).not.toMatch(/inconclusive|\b(?:failed|condemned|safe|certain|guaranteed|airworthy)\b/i);
      expect(lines[0]).toMatch(/^[A-Z][^.]*\./);
      const why = decideScreen(assessment, { unit: "psi", width: 80, detail: "why" }).join(" ");
      expect(why).not.toMatch(/undefined|NaN|Infinity|\[object|handbook/);
    }),
    { numRuns: 1000 },
  );
});

test("a repair in use where lives hang on it stands before further use, and a person decides", () => {
  const input: DecisionInput = {
    rows: (["B2", "I1"] as const).map((id) => ({ id, text: "valve", restsOn: "other-records" })),
    trust: "trusted",
    wear: { kind: "unknown" },
    shares: "one-low",
    done: [],
    ownership: { kind: "years", years: 5 },
    use: "safety",
  };
  const lines = decideScreen(shownOf(input), { unit: "kPa", width: 80, detail: "short" });
  expect(lines[0]).toMatch(/^Open the top end before further use\./);
  expect(lines.slice(-2).join(" ")).toMatch(/The maker's limits and a licensed mechanic decide\.$/);
});
