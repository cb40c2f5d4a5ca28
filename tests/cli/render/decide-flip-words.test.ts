// What flips a decision, in words: to which word it turns and from where on, and nothing that reads as no change.

import type { DecisionAssessment, Turn } from "@sealtrend/core";
import { expect, test } from "vitest";
import { flipText, flipsOf } from "../../../packages/cli/src/render/decide/decide-flips.ts";
import { assessedDecision } from "./assessed-decision.ts";

const turned = (turn: Omit<Turn, "where" | "away">): string => {
  const assessment: DecisionAssessment = {
    ...assessedDecision(),
    horizon: { years: 5, kind: "years", from: "typed" },
    turns: [{ ...turn, where: "range", away: 0.8 }],
  };
  return flipsOf(assessment)
    .map((flip) => flipText(flip, assessment, "psi"))
    .join();
};

test("years say to which word it turns, and from where on", () => {
  expect(turned({ input: "years", value: 5, at: 26, verdict: "re-ring" })).toBe(
    "re-ring: from 26 years of ownership on",
  );
  expect(turned({ input: "years", value: 5, at: 2.5, verdict: "leave-it" })).toBe(
    "leave it: up to 2.5 years of ownership",
  );
  expect(turned({ input: "years", value: 5, at: 36, verdict: "leave-it", level: "yes" })).toBe(
    "level: from 36 years of ownership on",
  );
});

test("what hardly moves is not printed as a figure instead of the same figure", () => {
  expect(turned({ input: "work.reRing", value: 640, at: 640.3, verdict: "leave-it" })).toBe(
    "leave it: re-ring work at hardly more than 640",
  );
  expect(turned({ input: "work.reRing", value: 640, at: 600, verdict: "re-ring" })).toBe(
    "re-ring: re-ring work at 600 instead of 640",
  );
  expect(turned({ input: "years", value: 5, at: 4.99, verdict: "leave-it" })).toBe(
    "leave it: hardly less than 5 years of ownership",
  );
});

test("the nearest comes first", () => {
  const assessment: DecisionAssessment = {
    ...assessedDecision(),
    turns: [
      { input: "work.reRing", value: 640, at: 64, where: "outside", away: 5, verdict: "re-ring" },
      { input: "years", value: 5, at: 6, where: "range", away: 0.6, verdict: "re-ring" },
    ],
  };
  expect(flipsOf(assessment).map(({ input }) => input)).toEqual(["horizon", "work.reRing"]);
});
