// What holds while a test that is asked for is not made, and when a second method is asked for. Inputs invented.

import { type Decision, type DecisionInput, decide } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { rows, shortHistory } from "./examples.ts";

const input: DecisionInput = {
  rows: [{ id: "A2", text: "", restsOn: "this-test" }],
  trust: "trusted",
  wear: { kind: "unknown" },
  shares: "one-low",
  done: [],
  ownership: { kind: "years", years: 5 },
  use: "ordinary",
};
const meanwhile = (more: Partial<DecisionInput>): Decision["ifNotTested"] =>
  decide({ ...input, ...more }).ifNotTested;

test("only where a test comes first", () => {
  expect(meanwhile({})).toBeUndefined();
  expect(meanwhile({ trust: "doubtful" })).toEqual({ verdict: "watch-it", use: "no-hard-use" });
});

test("nothing known at all: as it is; something known: no hard use; lives at stake, or a stop: not used", () => {
  expect(meanwhile({ trust: "void", rows: [] })).toEqual({ verdict: "leave-it", use: "as-now" });
  expect(meanwhile({ trust: "void" })).toEqual({ verdict: "watch-it", use: "no-hard-use" });
  expect(meanwhile({ trust: "void", use: "safety" })?.use).toBe("not-used");
  const knock = { id: "G1", text: "", restsOn: "other-records" } as const;
  expect(meanwhile({ trust: "doubtful", rows: [knock] })?.use).toBe("not-used");
});

test("a test that is worth its price but is not made leaves the word that the money gives", () => {
  // handbook/decision.md 9, example 7: E watch 1174.68 below E re-ring 1373.89
  const found = decide(shortHistory);
  expect(found.reasons[0]).toBe("test-worth-making");
  expect(found.ifNotTested).toEqual({ verdict: "watch-it", use: "as-now" });
});

test("another method is asked for where it can be made, and never holds back what is needed", () => {
  const low: DecisionInput = { ...input, rows: rows("A7"), doubts: ["one-method-only"] };
  expect(decide(low)).toMatchObject({ verdict: "test-again", next: { step: "second-method" } });
  expect(decide({ ...low, done: ["headOff"] }).reasons).not.toContain("one-method-only");
  // A7, C0 and D1 together establish rings (Caterpillar SEBU6711, second hand in handbook/decision.md 2)
  expect(decide({ ...low, rows: rows("A7", "C0", "D1") })).toMatchObject({
    verdict: "re-ring",
    basis: "needed",
  });
});
