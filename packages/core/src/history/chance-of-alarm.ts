// The chance that a test raises the alarm on a cylinder that loses as planned: the alarm's two rules, worked out from the
// design of the tests without a reading.

import {
  mean,
  median,
  normalCdf,
  normalDensity,
  studentQuantile,
  varianceOfMedian,
} from "../statistics/index.ts";
import { alarmChance, sharedDegrees, varianceOfLarger } from "./alarm-rule.ts";
import { at } from "./at.ts";
import { priorDegrees } from "./noise.ts";

/** The tests up to the one that judges. */
export interface Design {
  /** Their places [years]: four or more. */
  readonly x: readonly number[];
  /** What the cylinder has lost at each test, ln units. */
  readonly lost: readonly number[];
  readonly cylinders: number;
  /** Of one contrast: as the rule assumes it beforehand, and as it is taken to be. */
  readonly assumed: number;
  readonly variance: number;
}

/** The better of the two rules. That an earlier test might have raised the alarm already is left out, so the chance of being
 *  found by this test is rather larger.  @source handbook/statistics.md C.4, L.8 */
export const chanceOfAlarm = (design: Design): number =>
  Math.max(chanceBySlope(design), chanceByLastTwo(design));

/** P(t > critical) for t = (size + width Z)/(inflation S), S^2 chi-square over its degrees of freedom:
 *  Phi((size - l (1 - 1/(4 df))) / sqrt(width^2 + l^2 / (2 df))), l = critical inflation.
 *  @source normal approximation of the non-central t (Abramowitz & Stegun 26.7.10, from memory) */
export const chanceBeyond = (
  critical: number,
  {
    size,
    width,
    inflation,
    df,
  }: { readonly size: number; readonly width: number; readonly inflation: number; readonly df: number },
): number => {
  const limit = critical * inflation;
  return normalCdf(
    (size - limit * (1 - 1 / (4 * df))) / Math.sqrt(width * width + (limit * limit) / (2 * df)),
  );
};

/** The slope with the cylinder's own scatter, at .001/N. */
const chanceBySlope = ({ x, lost, cylinders, assumed, variance }: Design): number => {
  const centre = mean(x);
  const level = mean(lost);
  const sxx = x.reduce((sum, place) => sum + (place - centre) ** 2, 0);
  const slope = x.reduce((sum, place, k) => sum + (place - centre) * at(lost, k), 0) / sxx;
  // what a series that bends leaves beside its line
  const bend = x.reduce((sum, place, k) => sum + (at(lost, k) - level - slope * (place - centre)) ** 2, 0);
  const rest = x.length - 2;
  const nu = priorDegrees + (cylinders - 1) * rest;
  const pooled =
    (priorDegrees * assumed + (nu - priorDegrees) * variance + ((cylinders - 1) / cylinders) * bend) / nu;
  const weight = Math.min(nu, sharedDegrees);
  const df = weight + rest;
  const own = (weight * pooled + rest * variance + bend) / df;
  return chanceBeyond(-studentQuantile(alarmChance.slope / cylinders, df), {
    size: (slope * Math.sqrt(sxx)) / Math.sqrt(variance),
    width: 1,
    inflation: Math.sqrt(own / variance),
    df,
  });
};

/** Both last readings below the baseline, at .01/N. */
const chanceByLastTwo = ({ lost, cylinders, assumed, variance }: Design): number => {
  const s = Math.sqrt(variance);
  const [first, second] = [at(lost, lost.length - 2) / s, at(lost, lost.length - 1) / s];
  // mean and variance of the larger of two normal values of unequal means
  const apart = (second - first) / Math.SQRT2;
  const [share, other] = [normalCdf(apart), normalCdf(-apart)];
  const ridge = Math.SQRT2 * normalDensity(apart);
  const higher = -first * share - second * other + ridge;
  const spread =
    (first ** 2 + 1) * share + (second ** 2 + 1) * other - (first + second) * ridge - higher ** 2;
  const unit = Math.sqrt(varianceOfLarger + varianceOfMedian(3));
  const weight = (cylinders * (lost.length - 1)) / 2;
  const df = priorDegrees + weight;
  return chanceBeyond(-studentQuantile(alarmChance.lastTwo / cylinders, df), {
    size: (-median(lost.slice(0, 3)) / s - higher) / unit,
    width: Math.sqrt(spread + varianceOfMedian(3)) / unit,
    inflation: Math.sqrt((priorDegrees * assumed + weight * variance) / (df * variance)),
    df,
  });
};
