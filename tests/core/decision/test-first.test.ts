// What comes before a decision when readings contradict each other, when the engine is open, and where lives hang on it.
// Inputs invented.

import { type DecisionInput, decide } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { rows, workBoat } from "./examples.ts";

const input: DecisionInput = {
  rows: [],
  trust: "trusted",
  wear: { kind: "unknown" },
  shares: "one-low",
  done: [],
  ownership: { kind: "years", years: 5 },
  use: "ordinary",
};

test("a cylinder that cranks low with a healthy leak-down is tested again, never left (G7)", () => {
  const torn = { ...input, rows: rows("A2", "B1") };
  expect(decide(torn)).toMatchObject({
    verdict: "test-again",
    reasons: ["instruments-disagree"],
    next: { step: "look-inside-and-retest" },
    ifNotTested: { verdict: "watch-it", use: "no-hard-use" },
  });
  expect(decide({ ...torn, use: "safety" }).verdict).toBe("test-again");
  // the reverse with nothing developing is watched, as the aircraft of handbook/decision.md 9, example 10
  const leak = decide({ ...input, rows: rows("A1", "B4") });
  expect(leak).toMatchObject({ verdict: "watch-it", next: { step: "look-inside-and-retest" } });
});

test("open, no test is asked for that nobody can make: it is measured, closed and watched", () => {
  const open = { done: ["headOff", "bottomOpen"] } as const;
  const doubts: readonly Partial<DecisionInput>[] = [
    { trust: "void" },
    { trust: "doubtful" },
    { doubts: ["one-odd-test"] },
    { doubts: ["not-itself"] },
    { doubts: ["low-everywhere"] },
    { rows: rows("A2", "B1") },
  ];
  for (const doubt of doubts) {
    expect(decide({ ...input, ...doubt }).verdict).toBe("test-again");
    const found = decide({ ...input, ...doubt, ...open });
    expect(found).toMatchObject({ verdict: "watch-it", next: { step: "retest-before-hard-use" } });
    expect(found.ifNotTested).toBeUndefined();
  }
  // out, or with the head on, a leak-down can be made
  expect(decide({ ...input, trust: "void", done: ["engineOut"] }).verdict).toBe("test-again");
  expect(decide({ ...input, trust: "void", done: ["bottomOpen"] }).verdict).toBe("test-again");
});

test("what was measured beyond its limit stands without a test that nobody can make", () => {
  const bore = [{ id: "J1", text: "", restsOn: "other-records", times: 2 }] as const;
  const apart = decide({ ...input, rows: bore, trust: "void", done: ["headOff", "bottomOpen"] });
  expect(apart).toMatchObject({ verdict: "rebuild", basis: "needed" });
  expect(decide({ ...input, rows: bore, trust: "void" }).verdict).toBe("test-again");
});

test("no price takes sight and a second method away where lives hang on it (G8)", () => {
  const { prices: _prices, ...unpriced } = workBoat;
  for (const one of [workBoat, unpriced]) {
    const found = decide({ ...one, use: "safety" });
    expect(found.reasons[0]).toBe("safety-step");
    expect(found).toMatchObject({
      verdict: "test-again",
      next: { step: "second-method-with-sight" },
      ifNotTested: { use: "not-used" },
    });
  }
  const asked = decide({ ...workBoat, use: "safety", test: { what: "cranking", cost: 1, tells: cheap } });
  expect(asked.reasons[0]).toBe("safety-step");
  expect(asked.next.step).toBe("second-method-with-sight");
});

const cheap = { kind: "readings", repeats: 3, after: 0 } as const;

test("a layup that is due is told beside a test that is not made", () => {
  const test = { what: "cranking", cost: 60, tells: { kind: "share", share: 0.9 } } as const;
  const asked = decide({ ...workBoat, test });
  expect(asked.reasons[0]).toBe("test-worth-making");
  // handbook/decision.md 9, example 8: best 0, no later than 2
  expect(asked.ifNotTested).toEqual({ verdict: "watch-it", use: "as-now", planBy: 2 });
});

test("bearing metal is no stop, and yet not run hard; chunks stop it", () => {
  expect(decide({ ...input, rows: rows("F1") }).urgency).toBe("no-hard-use");
  // two lines agree: needed, and never 'not urgent'
  expect(decide({ ...input, rows: rows("E1", "F1") })).toMatchObject({
    verdict: "rebuild",
    urgency: "no-hard-use",
  });
  expect(decide({ ...input, rows: rows("F1", "F3") }).urgency).toBe("stop");
  expect(decide({ ...input, rows: rows("E1", "F1"), use: "safety" }).urgency).toBe("before-further-use");
});
