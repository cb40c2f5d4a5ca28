// The starting values that nobody published: all judgement, all shown, all the user's to change.

/** @source handbook/decision.md 3 and 5 (judgement; no published rate of repairs that do not hold was found) */
export const usual = {
  /** Chance that a repair does not hold and is done again. */
  redo: 0.05,
  /** Chance that waiting turns a re-ring into a rebuild, and the share of those that watching catches. */
  spoil: 0.2,
  caught: 0.8,
  testsPerYear: 1,
  /** Years of further ownership where nobody said. */
  years: 5,
  /** Life after a re-ring as a share of the life before it. */
  lifeFactor: 0.8,
  /** Share of the doubt about the level that a measurement in the open engine takes away. */
  measurementTells: 0.5,
} as const;

/** Where the need arises if it arises, without a diagnosis. What is missing to 1 needs no work.
 *  @source handbook/decision.md 3, from handbook/trade.md C4 (judgement) */
export const usualShares = {
  "one-low": { top: 0.65, rings: 0.25, bottom: 0 },
  "evenly-low": { top: 0.2, rings: 0.6, bottom: 0 },
  healthy: { top: 0.3, rings: 0.7, bottom: 0 },
} as const;

/** Chance, at most, that the limit is passed before the next test. @source handbook/decision.md 6 (judgement) */
export const riskTaken = { ordinary: 0.1, remote: 0.05, safety: 0.02 } as const;

/** Longest time to the next test: usual, and where any score speaks for wear. A year and 100 h for safety-critical use
 *  is 14 CFR 43 App. D (published); 6 months or 50 h is handbook/trade.md F2 (judgement); each season, common practice. */
export const intervals = {
  usualYears: 1,
  watchedYears: 0.5,
  watchedHours: 50,
  safetyHours: 100,
} as const;

/** Nearer to the limit than this nothing is watched. @source handbook/decision.md 6 (judgement) */
export const nearestWatch = { years: 1 / 12, hours: 10 } as const;

/** A test may change the verdict with this chance at least, or it is not asked for; without prices the chance of need
 *  must lie within this factor of break-even. @source handbook/decision.md 5 (judgement) */
export const worthAsking = { change: 0.1, factor: 2 } as const;

/** Above this share of another engine's price a repair names the other engine. @source handbook/decision.md 2, G9
 *  (common practice: more than 50 to 60 %) */
export const replacementShare = 0.5;

/** A plan may cost this much more than the cheapest. @source handbook/decision.md 3 (judgement) */
export const nearlyFree = 1.02;

/** How far each input is varied, and how far beyond that a tipping point is looked for (ours).
 *  @source handbook/decision.md 4 (judgement) */
export const ranges = {
  work: 1.5,
  yearly: 2,
  odds: 2,
  beyond: 1000,
  redo: [0, 0.2],
  spoil: [0, 0.5],
  resaleShare: 0.3,
  limit: 0.02,
  limitBeyond: 0.2,
  years: 2,
  yearsBeyond: [0.1, 100],
} as const;

/** Bounds of the margin: a tenth of the job; for ratios to their tipping point. On the edge any input tips it (ours).
 *  @source handbook/decision.md 3 and 4 (judgement) */
export const margins = {
  shareOfJob: 0.1,
  edgeShare: 0.01,
  closeRatio: 1.25,
  holdsRatio: 1.5,
  edgeRatio: 1.01,
} as const;
