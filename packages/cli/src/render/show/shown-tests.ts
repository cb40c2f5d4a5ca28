// Which of the steps that are worth making stand on the screen.

import type { NextTest } from "@sealtrend/core";

const most = 3;

/** Those of plain rules, then the quickest and the most telling of the others, where they are the best of all. */
export const shownTests = (tests: readonly NextTest[]): readonly NextTest[] => {
  const plain = tests.filter(({ by }) => by === "rule");
  const best = tests.filter(({ by, rank }) => by === "diagnosis" && rank !== undefined);
  const room = Math.max(0, most - plain.length);
  return [...plain.slice(0, most), ...best.slice(Math.max(0, best.length - room))];
};
