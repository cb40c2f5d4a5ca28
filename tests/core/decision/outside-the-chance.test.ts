// Wear that the chance of passing a cranking limit says nothing of: with the engine open it is measured first (judgement).

import { decide, type DecisionInput } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { healthyOpen, rows, valveHeard } from "./examples.ts";

// points of handbook/decision.md 2: I2 bore +2, E1 bottom +2: developing from 2 on
const scored: DecisionInput = { ...healthyOpen, rows: rows("A1", "I2", "E1") };

test("an open engine with a scored bore is measured before it is closed, however small the chance", () => {
  const found = decide(scored);
  expect(found.scores.bore.state).toBe("developing");
  expect(found).toMatchObject({ verdict: "test-again", reasons: ["outside-the-chance"] });
  expect(found.margin).toBeUndefined();
  expect(found.next.step).toBe("offered-test");
});

test("closed it cannot be measured, and is watched", () => {
  expect(decide({ ...scored, done: [] }).reasons[0]).not.toBe("outside-the-chance");
  expect(decide({ ...scored, done: ["engineOut"] }).reasons[0]).not.toBe("outside-the-chance");
});

test("nothing developing: the open engine is closed up as before", () => {
  expect(decide(healthyOpen).verdict).toBe("leave-it");
});

// in place the rival is the work that cures the likelier place (judgement)
test("in place the work that is weighed cures the place where need is likelier to arise", () => {
  const { wear, ownership } = valveHeard;
  const inPlace: Omit<DecisionInput, "shares"> = {
    rows: rows("A1"),
    trust: "trusted",
    use: "ordinary",
    done: [],
    wear,
    ownership,
    prices: {
      jobs: { headOff: 350, bottomOpen: 250, engineOut: 600 },
      work: { topEnd: 400, reRing: 620, rebuild: 2600 },
    },
  };
  const acts = [
    { top: 0.01, rings: 0.99, bottom: 0 },
    { top: 0.9, rings: 0.1, bottom: 0 },
  ].map((shares) => decide({ ...inPlace, shares }).comparison?.act);
  expect(acts).toEqual(["reRing", "topEnd"]);
});

test("a break-even of 1 or more is none: acting early never pays", () => {
  // handbook/decision.md 3: p* = G/K; rings are hardly ever cured by a top end, so K is next to nothing and G is its price
  const inPlace: DecisionInput = {
    ...valveHeard,
    rows: rows("A1"),
    shares: { top: 0.01, rings: 0.99, bottom: 0 },
    considered: "topEnd",
  };
  const breakEven = decide(inPlace).comparison?.breakEven;
  expect(breakEven?.G).toBeGreaterThan(breakEven?.K ?? Infinity);
  expect(breakEven?.probability).toBeUndefined();
});
