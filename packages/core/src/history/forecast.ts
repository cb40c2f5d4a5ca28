// When a cylinder reaches a limit against the others, and how sure it is to stay above it. Wear only: a valve, a gasket
// or a ring can fail without notice, and no history foretells that.

import { studentCdf, studentQuantile } from "../statistics/index.ts";
import type { PooledVariance } from "./pooled-variance.ts";
import type { Line } from "./series.ts";
import { leastLossShown, pooledSlope } from "./slope-test.ts";

/** What is known of the true line: its level at meanX, its slope, and how uncertain both are. */
export interface KnownLine {
  readonly meanX: number;
  readonly meanY: number;
  readonly slope: number;
  readonly levelVariance: number;
  readonly slopeVariance: number;
  readonly df: number;
}

/** The line of least squares, with nothing believed beforehand: var(level) = s^2/T, var(slope) = s^2/Sxx. */
export const knownLine = (line: Line, { variance, df }: PooledVariance): KnownLine => {
  const { meanX, meanY, slope, count, sxx } = line;
  return { meanX, meanY, slope, levelVariance: variance / count, slopeVariance: variance / sxx, df };
};

/** The same with a slope believed beforehand to be N(0, believed^2): prec = 1/believed^2 + 1/V,  b* = (b/V)/prec,
 *  V* = 1/prec.
 *  @param believed - per unit of the axis that slopes count in  @source handbook/statistics.md E, C.5 */
export const believing = (line: KnownLine, believed: number): KnownLine => {
  const weight = 1 / line.slopeVariance;
  const slopeVariance = 1 / (1 / believed ** 2 + weight);
  return { ...line, slope: weight * line.slope * slopeVariance, slopeVariance };
};

const levelAt = (line: KnownLine, x: number): number => line.meanY + line.slope * (x - line.meanX);

const errorAt = (line: KnownLine, x: number): number =>
  Math.sqrt(line.levelVariance + (x - line.meanX) ** 2 * line.slopeVariance);

/** P(level >= limit at x) = F_t((m - L)/sqrt v; nu). As wear does not heal this is also the chance of staying above it
 *  all the way. Not clamped; a text says "about 99 in 100" at most. */
export const chanceAbove = (line: KnownLine, limit: number, x: number): number =>
  studentCdf((levelAt(line, x) - limit) / errorAt(line, x), line.df);

export interface Crossing {
  /** Whether a decline is shown at one-sided 5 %; without it no date is given. */
  readonly decline: "shown" | "not-shown";
  /** The slowest loss that this history would have shown. */
  readonly leastLossShown: number;
  /** Where the line meets the limit, and the 80 % interval (9 in 10 not before `low`). What lies further from the first
   *  test than 3 times the observed span is absent. */
  readonly crossing?: number;
  readonly low?: number;
  readonly high?: number;
  /** Where no crossing can be given: 9 in 10 not before this place, the end of the 3 spans at most. */
  readonly notBefore?: number;
}

/** Crossing of a limit by the pooled line, by bisection from the last test outward (the same numbers as Fieller's).
 *  @param believed - see `believing`; counts below 7 tests only  @source handbook/statistics.md C.7 */
export const crossingOf = (
  line: Line,
  pooled: PooledVariance,
  { limit, believed, x }: { readonly limit: number; readonly believed: number; readonly x: Span },
): Crossing => {
  const plain = knownLine(line, pooled);
  const known = line.count < 7 ? believing(plain, believed) : plain;
  const decline = pooledSlope(line, pooled).p < 0.05 ? "shown" : "not-shown";
  return crossingOn(known, { limit, x, decline, leastLossShown: leastLossShown(line, pooled) });
};

/** The same where the line, and whether it declines, are known already. */
export const crossingOn = (
  known: KnownLine,
  {
    limit,
    x,
    ...shown
  }: { readonly limit: number; readonly x: Span } & Pick<Crossing, "decline" | "leastLossShown">,
): Crossing => {
  const wide = studentQuantile(0.9, known.df);
  const end = x.first + 3 * (x.last - x.first);
  const meets = (factor: number): number | undefined =>
    firstBelow((place) => levelAt(known, place) + factor * errorAt(known, place) - limit, x.last, end);
  const low = meets(-wide);
  const crossing = meets(0);
  if (shown.decline === "not-shown" || crossing === undefined) return { ...shown, notBefore: low ?? end };
  const high = meets(wide);
  return {
    ...shown,
    crossing,
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
  };
};

export interface Span {
  readonly first: number;
  readonly last: number;
}

/** First place between `from` and `end` where the height is 0 or less; it crosses at most once on that way. */
const firstBelow = (height: (x: number) => number, from: number, end: number): number | undefined => {
  if (height(from) <= 0) return from;
  if (height(end) > 0) return undefined;
  let [above, below] = [from, end];
  for (let round = 0; round < 100; round += 1) {
    const half = (above + below) / 2;
    // no number lies between the two
    if (half === above || half === below) break;
    if (height(half) > 0) above = half;
    else below = half;
  }
  return below;
};
