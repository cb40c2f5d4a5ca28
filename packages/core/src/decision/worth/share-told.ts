// How much of the doubt about the level at the horizon a test takes away.

import type { OfferedTest, WearLine } from "../input.ts";
import { usual } from "../judgements.ts";
import { knownOf, todayOf } from "../wear/known.ts";
import type { SingleWear } from "../wear/outlook.ts";

/** Scatter of one take and of one test, ln: what repeats do and do not reduce.
 *  @source handbook/statistics.md A.3 (choices), handbook/decision.md 5 */
const scatter = { take: 0.015, test: 0.01 } as const;

/** rho^2 = (h S u)^2 / [(u S u + s_n^2)(h S h)], S = diag(s^2/T, V), h = (1, H - x), u = (1, x_new - x),
 *  s_n^2 = s^2 (s_r^2/m + s_i^2)/(s_r^2 + s_i^2), m repeats.
 *  @returns undefined where readings are offered and there is no line  @source handbook/decision.md 5 (derived) */
export const shareTold = (
  tells: OfferedTest["tells"],
  wear: SingleWear | undefined,
  years: number,
): number | undefined => {
  if (tells.kind === "share") return tells.share;
  if (tells.kind === "as-judged") return usual.measurementTells;
  return wear?.kind === "line" ? byReadings(tells, wear.line, years) : undefined;
};

const byReadings = (
  { repeats, after }: Extract<OfferedTest["tells"], { kind: "readings" }>,
  line: WearLine,
  years: number,
): number => {
  const { meanX, levelVariance, slopeVariance } = knownOf(line);
  const [end, next] = [todayOf(line) + years - meanX, todayOf(line) + after - meanX];
  const [take, test] = [scatter.take ** 2, scatter.test ** 2];
  const noise = (line.variance * (take / repeats + test)) / (take + test);
  const both = levelVariance + end * next * slopeVariance;
  return (
    both ** 2 /
    ((levelVariance + next ** 2 * slopeVariance + noise) * (levelVariance + end ** 2 * slopeVariance))
  );
};
