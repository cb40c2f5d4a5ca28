// Invented engines to decide about. `openEngine` carries the line of handbook/decision.md 9, example 1: cylinder 3 stands at
// exp(y) of its limit, which a maker is taken to have stated as 0.9 of the others. The others scatter so that the pooled
// scatter is about the example's s = .0316.

import {
  type DecisionChoices,
  type DecisionInput,
  type EvidenceId,
  assessDecision,
} from "@sealtrend/core/parts";
import { type Row, type Written, recordOf } from "./records.ts";

export const examplePrices = {
  currency: "EUR",
  jobs: { headOff: 350, bottomOpen: 250, engineOut: 600 },
  work: { topEnd: 400, reRing: 620, rebuild: 2600 },
  test: 15,
};

const dates = [
  "2014-05-01",
  "2015-11-01",
  "2017-05-01",
  "2018-05-01",
  "2019-11-01",
  "2021-05-01",
  "2022-11-01",
];
const y = [0.14723, 0.16493, 0.123133, 0.14126, 0.110863, 0.129212, 0.085861, 0.104671, 0.073122];
const sides = [1, -1, -1, 1, 1, -1, 1, -1, -1];
const limit = 0.9;

export const healthyYears: readonly Row[] = [...dates, "2024-05-01", "2026-05-01"].map((date, i) => {
  const side = 0.035 * (sides[i] ?? 1);
  const shares = [1 + side, 1, limit * Math.exp(y[i] ?? 0), 1 - side];
  const cells = shares.map((share) => (160 * share).toFixed(1)).join(" ");
  return { test: `${date}a`, cells, gauge: "red", crank_rpm: "250", throttle: "open", engine_temp: "warm" };
});

/** Out and open for a fault of its own, the bores good to look at, the pistons in. */
export const openEngine: Written = {
  engine: {
    banks: [["1", "2", "3", "4"]],
    cooling: "liquid",
    limits: { compression: { lowestToHighest: limit, source: "invented" } },
    prices: examplePrices,
    ownership: "5y",
    renewed: "2006-05-21",
  },
  tests: healthyYears,
  notes: [
    "2026-05-02,,oil use,none,,",
    "2026-05-02,,oil pressure hot,normal,,",
    "2026-05-18,,other fault,cracked bellhousing,,",
    "2026-05-20,,crosshatch,full,,",
    "2026-05-20,,score,none,,",
  ],
};

export const asOpen = { today: "2026-05-21", opened: "pistons-in", engineOut: true } as const;

export const decided = (written: Written, choices: Partial<DecisionChoices> = {}) =>
  assessDecision(recordOf(written), { today: "2026-05-21", ...choices });

/** Rows that were found, each once, in order. */
export const rowsIn = (written: Written, choices: Partial<DecisionChoices> = {}): readonly EvidenceId[] => [
  ...new Set(decided(written, choices).evidence.map(({ row }) => row)),
];

/** Every number below a value, to look for one that is none. */
export const numbersIn = (value: unknown): readonly number[] => {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
};

export const inputOf = (written: Written, choices: Partial<DecisionChoices> = {}): DecisionInput =>
  decided(written, choices).input;
