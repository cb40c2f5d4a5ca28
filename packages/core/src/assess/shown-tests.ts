// Which of the steps that are worth making are told, and which page of the procedures tells how: one choice for all that name
// a next step.

import type { NextTest, TestAssessment } from "./assessment.ts";
import { isLeakOnly } from "./leak-only.ts";

const most = 3;

/** Those of plain rules, then the quickest and the most telling of the others, where they are the best of all. */
export const shownTests = (tests: readonly NextTest[]): readonly NextTest[] => {
  const plain = tests.filter(({ by }) => by === "rule");
  const best = tests.filter(({ by, rank }) => by === "diagnosis" && rank !== undefined);
  const room = Math.max(0, most - plain.length);
  return [...plain.slice(0, most), ...best.slice(Math.max(0, best.length - room))];
};

/** The page of the procedures that tells how a step is made. */
export type HowPage = "dry" | "wet" | "first-stroke" | "leak-down" | "teardown";

const pages: Readonly<Partial<Record<string, HowPage>>> = {
  wet: "wet",
  "first-stroke": "first-stroke",
  "leak-down-and-listen": "leak-down",
  "leak-down-lower-down": "leak-down",
  "re-seat-and-repeat": "leak-down",
  "re-index-the-neighbour": "leak-down",
  cranking: "dry",
  conditions: "dry",
  "retest-warm": "dry",
  "run-in": "dry",
  repeat: "dry",
};

/** The page for a step; undefined where none tells of it. What is repeated, made anew after work or once more warm, is the
 *  kind of reading that the test holds. */
export const howPageOf = (
  { test }: Pick<TestAssessment, "test">,
  { code }: Pick<NextTest, "code">,
): HowPage | undefined => {
  const isAlike = code === "repeat" || code === "run-in" || code === "retest-warm";
  return isAlike && isLeakOnly(test) ? "leak-down" : pages[code];
};
