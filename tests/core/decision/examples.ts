// The ten examples of handbook/decision.md 9: invented engines, computed in the handbook by a program of its own; no
// published value. Order of scores: top, rings, bore, bottom.

import type { DecisionInput, EvidenceId, EvidenceRow, WearLine } from "@sealtrend/core/parts";

export const rows = (...ids: readonly EvidenceId[]): readonly EvidenceRow[] =>
  ids.map((id) => ({ id, text: id, restsOn: /^[AB]/.test(id) ? "this-test" : "other-records" }));

const lines = (line: Omit<WearLine, "label">): DecisionInput["wear"] => ({
  kind: "lines",
  lines: [{ label: "3", believed: 0.04, ...line }],
});

const bench = {
  jobs: { headOff: 350, bottomOpen: 250, engineOut: 600 },
  work: { topEnd: 400, reRing: 620, rebuild: 2600 },
};
const allOpen = ["headOff", "bottomOpen", "engineOut"] as const;
const healthyRows = rows("A1", "B1", "C3", "E2", "I4");
const healthyLine = lines({
  x: [0, 1.5, 3, 4, 5.5, 7, 8.5, 10, 12],
  y: [0.14723, 0.16493, 0.123133, 0.14126, 0.110863, 0.129212, 0.085861, 0.104671, 0.073122],
  variance: 0.001,
  df: 20,
  limit: 0,
});
const trusted = { trust: "trusted", use: "ordinary" } as const;

/** Open for a broken flywheel housing, healthy, five years. */
export const healthyOpen: DecisionInput = {
  ...trusted,
  rows: healthyRows,
  wear: healthyLine,
  shares: { top: 0.3, rings: 0.7, bottom: 0 },
  done: allOpen,
  prices: { ...bench, test: 15 },
  ownership: { kind: "years", years: 5 },
  considered: "reRing",
  test: { what: "measurement", cost: 40, tells: { kind: "share", share: 0.5 } },
};

/** Open, one cylinder falling, eight years. */
export const fallingOpen: DecisionInput = {
  ...trusted,
  rows: rows("A2", "A8", "B4", "C3", "E2", "I4"),
  wear: lines({
    x: [0, 1, 2.2, 3.1, 4, 5.2, 6, 7],
    y: [-0.012, -0.004, -0.031, -0.028, -0.058, -0.055, -0.083, -0.092],
    variance: 0.00028,
    df: 24,
    limit: -0.162519,
  }),
  shares: { top: 0.1, rings: 0.9, bottom: 0 },
  done: allOpen,
  prices: { ...bench, test: 15 },
  ownership: { kind: "years", years: 8 },
  considered: "reRing",
};

/** The first, kept for good. */
export const keptForGood: DecisionInput = {
  ...trusted,
  rows: healthyRows,
  wear: healthyLine,
  shares: { top: 0.3, rings: 0.7, bottom: 0 },
  done: allOpen,
  prices: { ...bench, test: 15 },
  ownership: { kind: "for-good", age: 20, lifeFactor: 0.8, years: 5 },
  considered: "reRing",
};

/** In place, exhaust valve heard. */
export const valveHeard: DecisionInput = {
  ...trusted,
  rows: rows("A2", "A5", "B2", "C3", "E2"),
  wear: { kind: "typed", probability: 0.6 },
  shares: { top: 0.9, rings: 0.1, bottom: 0 },
  done: [],
  prices: { ...bench, runningPerYear: 60 },
  ownership: { kind: "years", years: 5 },
  considered: "topEnd",
};

/** Farm engine: drop, oil four times, blow-by three times; measured inside limits. */
export const farmEngine: DecisionInput = {
  ...trusted,
  rows: rows("A7", "B5", "C0", "D1", "E2", "F4", "J2", "J6", "J3"),
  wear: { kind: "typed", probability: 0.9 },
  shares: { top: 0.1, rings: 0.9, bottom: 0 },
  done: ["headOff"],
  prices: {
    jobs: { headOff: 300, bottomOpen: 200 },
    work: { topEnd: 450, reRing: 900, rebuild: 3100 },
    daysNow: { topEnd: 3, reRing: 5, rebuild: 18 },
    daysLater: { topEnd: 5, reRing: 9, rebuild: 22 },
    day: 80,
    runningPerYear: 150,
  },
  ownership: { kind: "years", years: 6 },
  considered: "reRing",
};

/** Low hot oil pressure, bearing metal, ring leak. */
export const lowOilPressure: DecisionInput = {
  ...trusted,
  rows: rows("A7", "B4", "C2", "E1", "F1", "G1"),
  wear: { kind: "typed", probability: 0.8 },
  shares: { top: 0.1, rings: 0.5, bottom: 0.4 },
  done: [],
  prices: {
    ...bench,
    daysNow: { topEnd: 3, reRing: 4, rebuild: 20 },
    daysLater: { topEnd: 4, reRing: 8, rebuild: 25 },
    day: 10,
  },
  ownership: { kind: "years", years: 4 },
  considered: "rebuild",
};

/** Engine out, short history, one more test on offer. */
export const shortHistory: DecisionInput = {
  ...trusted,
  rows: rows("A2", "C3", "E2"),
  wear: lines({
    x: [0, 1, 2, 3],
    y: [-0.02, -0.055, -0.06, -0.105],
    variance: 0.0004,
    df: 12,
    limit: -0.223144,
  }),
  shares: { top: 0.2, rings: 0.8, bottom: 0 },
  done: ["engineOut"],
  prices: { ...bench, test: 15 },
  chances: { redo: { reRing: 0.03 } },
  ownership: { kind: "years", years: 6 },
  considered: "reRing",
  test: { what: "leak-down", cost: 25, tells: { kind: "readings", repeats: 3, after: 0 } },
};

/** Work boat, in place: layup against mid-season. */
export const workBoat: DecisionInput = {
  trust: "trusted",
  use: "remote",
  rows: rows("A8", "B4", "C2", "D2", "E2"),
  wear: lines({
    x: [0, 1, 2, 3, 4, 5, 6],
    y: [0.242313, 0.23469, 0.21407, 0.17963, 0.166061, 0.127059, 0.106972],
    variance: 0.0006,
    df: 16,
    limit: 0,
  }),
  shares: { top: 0.15, rings: 0.85, bottom: 0 },
  done: [],
  prices: {
    jobs: { headOff: 500, bottomOpen: 400, engineOut: 1500 },
    work: { topEnd: 700, reRing: 1500, rebuild: 5200 },
    daysNow: { rebuild: 10 },
    daysLater: { topEnd: 7, reRing: 16, rebuild: 35 },
    day: 260,
    test: 60,
  },
  ownership: { kind: "years", years: 6 },
  considered: "reRing",
};

/** No costs given, engine open. */
export const noPrices: DecisionInput = {
  ...trusted,
  rows: rows("A1", "B1", "C3", "I4"),
  wear: healthyLine,
  shares: { top: 0.3, rings: 0.7, bottom: 0 },
  done: allOpen,
  ownership: { kind: "years", years: 10 },
};

/** Light aircraft, one cylinder low on the static test, cranking level. */
export const aircraft: DecisionInput = {
  trust: "trusted",
  use: "safety",
  rows: rows("A1", "B4", "C3", "F4", "I4"),
  wear: lines({
    x: [0, 1, 2, 3, 4],
    y: [-0.064539, -0.077962, -0.119347, -0.105361, -0.177334],
    variance: 0.0012,
    df: 14,
    limit: -0.287682,
  }),
  shares: { top: 0.2, rings: 0.8, bottom: 0 },
  done: [],
  ownership: { kind: "years", years: 2 },
  interval: 0.5,
};
