// When the next test is due.

import type { Scores } from "../evidence/scores.ts";
import type { DecisionInput, Wear, WearLine } from "../input.ts";
import { intervals, nearestWatch, riskTaken } from "../judgements.ts";
import { knownOf, passedWithin } from "../wear/known.ts";
import { wornPlaces } from "../words.ts";

export interface NextDate {
  /** Years from now. */
  readonly years: number;
  /** Whichever comes first, where running hours bound it as well. */
  readonly hours?: number;
  readonly why: "risk" | "interval";
  /** X: until then the chance of having passed the limit stays below the risk taken; absent below four tests, or where
   *  100 years do not reach it. */
  readonly riskYears?: number;
  readonly risk: number;
  /** Longest interval, with what the scores say and without. */
  readonly cap: number;
  readonly usualCap: number;
  /** Years until the expected fall equals the noise of two tests; absent where no fall is expected. */
  readonly tellsAfter?: number;
  /** `hardly`: the next test can confirm, not sharpen. */
  readonly sharpens?: "yes" | "hardly";
  /** Whether the limit is too near to watch at all. */
  readonly floor: "kept" | "below";
}

/** date = min(X, cap), X = the latest time at which F is at most the risk, shared among the lines.
 *  @source handbook/decision.md 6 */
export const nextDate = (input: DecisionInput, scores: Scores): NextDate => {
  const { use, interval, hoursPerYear, wear } = input;
  const spoken = wornPlaces.some((place) => scores[place].score >= 1);
  const hours = spoken ? intervals.watchedHours : use === "safety" ? intervals.safetyHours : undefined;
  const capOf = (years: number, limit: number | undefined): number =>
    Math.min(
      years,
      interval ?? Infinity,
      limit === undefined || !hoursPerYear ? Infinity : limit / hoursPerYear,
    );
  const usualCap = capOf(intervals.usualYears, use === "safety" ? intervals.safetyHours : undefined);
  const cap = capOf(spoken ? intervals.watchedYears : intervals.usualYears, hours);
  const risk = riskTaken[use];
  const riskYears = riskYearsOf(wear, risk);
  const near = riskYears !== undefined && tooNear(riskYears, hoursPerYear);
  return {
    years: Math.min(riskYears ?? Infinity, cap),
    ...(hours === undefined ? {} : { hours }),
    why: riskYears !== undefined && riskYears < cap ? "risk" : "interval",
    ...(riskYears === undefined ? {} : { riskYears }),
    risk,
    cap,
    usualCap,
    ...telling(wear, cap),
    floor: near ? "below" : "kept",
  };
};

const tooNear = (years: number, hoursPerYear: number | undefined): boolean =>
  years < nearestWatch.years || (hoursPerYear !== undefined && years * hoursPerYear < nearestWatch.hours);

const riskYearsOf = (wear: Wear, risk: number): number | undefined => {
  if (wear.kind !== "lines") return undefined;
  const found = wear.lines.flatMap((line) => reach(line, risk / wear.lines.length) ?? []);
  return found.length === 0 ? undefined : Math.min(...found);
};

/** From now outward, by bisection; 0 where the risk is passed already. */
const reach = (line: WearLine, risk: number): number | undefined => {
  if (line.x.length < 4 || passedWithin(line, 100) <= risk) return undefined;
  let [kept, passed] = [0, 100];
  for (let round = 0; round < 60; round += 1) {
    const half = (kept + passed) / 2;
    if (passedWithin(line, half) <= risk) kept = half;
    else passed = half;
  }
  return kept;
};

/** sqrt(2) s / |b| of the line that falls fastest. */
const telling = (wear: Wear, cap: number): Pick<NextDate, "tellsAfter" | "sharpens"> => {
  if (wear.kind !== "lines") return {};
  const falling = wear.lines.flatMap((line) => {
    const { slope } = knownOf(line);
    return slope < 0 ? [Math.sqrt(2 * line.variance) / -slope] : [];
  });
  if (falling.length === 0) return { sharpens: "hardly" };
  const tellsAfter = Math.min(...falling);
  return { tellsAfter, sharpens: tellsAfter > cap ? "hardly" : "yes" };
};
