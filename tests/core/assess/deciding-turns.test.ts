// From the records: what was told to turn the decision does turn it, asked again with that input changed. Engines invented.

import { type DecisionAssessment, assessDecision, gatherForDecision } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { asOpen, decided, examplePrices, openEngine } from "./deciding-records.ts";
import { recordOf } from "./records.ts";

const word = ({ decision: { verdict, reasons } }: Pick<DecisionAssessment, "decision">): string =>
  reasons.includes("level") ? "level" : verdict;

test("asked again for the years told, or with the price told, the word is the one told", () => {
  const { turns, ...found } = decided(openEngine, asOpen);
  const years = turns.find(({ input }) => input === "years");
  const work = turns.find(({ input }) => input === "work.reRing");
  const owned = (at: number): string =>
    word(decided(openEngine, { ...asOpen, ownership: { kind: "years", years: at } }));
  const priced = (at: number): string =>
    word(decided(openEngine, { ...asOpen, prices: [{ path: "work.reRing", value: at }] }));
  const told = (turn: typeof years): string => (turn?.level === "yes" ? "level" : (turn?.verdict ?? ""));
  const now = word(found);
  expect([owned((years?.at ?? NaN) - 0.02), owned(years?.at ?? NaN)]).toEqual([now, told(years)]);
  expect([priced((work?.at ?? NaN) + 0.5), priced(work?.at ?? NaN)]).toEqual([now, told(work)]);
});

test("asked again for the years at which the balance tips, the two ways have changed places", () => {
  const pays = (at: number): boolean => {
    const choices = { ...asOpen, ownership: { kind: "years", years: at } } as const;
    return (decided(openEngine, choices).decision.comparison?.difference ?? NaN) > 0;
  };
  const swings = decided(openEngine, asOpen).decision.comparison?.swings;
  const at = swings?.find(({ input }) => input === "years")?.flip?.at ?? NaN;
  expect([pays(at - 0.01), pays(at + 0.01)]).toEqual([false, true]);
});

test("with the bottom end open and the engine in, getting it out is no part of a re-ring", () => {
  const { work, jobs } = examplePrices;
  const prices = { jobs, work: { reRing: work.reRing } };
  const some = { ...openEngine, engine: { ...openEngine.engine, prices } };
  // head 350 and bottom 250 over 620; the engine out 600 more
  expect(decided(some, { today: asOpen.today, opened: asOpen.opened }).input.accessRatio).toBeCloseTo(
    600 / 620,
    12,
  );
  expect(decided(some, asOpen).input.accessRatio).toBeCloseTo(1200 / 620, 12);
  expect(decided(some, { today: asOpen.today }).input.accessRatio).toBeCloseTo(1200 / 620, 12);
});

test("with the flips left out the word, its reasons, its margin and its dates are the same, and no turn is told", () => {
  const told = decided(openEngine, asOpen);
  const short = decided(openEngine, { ...asOpen, flips: "left-out" });
  const word = ({ decision: { verdict, reasons, margin, urgency, next } }: DecisionAssessment) => ({
    verdict,
    reasons,
    margin,
    urgency,
    next,
  });
  expect(told.turns.length).toBeGreaterThan(0);
  expect(short.turns).toEqual([]);
  expect(word(short)).toEqual(word(told));
  expect(short.nextTest).toEqual(told.nextTest);
});

test("a second question to what was gathered once is answered as if it were asked alone", () => {
  const record = recordOf(openEngine);
  const forGood = { ...asOpen, ownership: { kind: "for-good" } } as const;
  const gathered = gatherForDecision(record, asOpen);
  expect(assessDecision(record, forGood, gathered)).toEqual(assessDecision(record, forGood));
});
