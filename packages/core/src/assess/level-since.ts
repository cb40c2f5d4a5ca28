// Whether the whole engine reads lower than it did: what the cylinders share, which no comparison among them can show.

import { pressureCorrection } from "../cranking/index.ts";
import type { EngineRecord, Test } from "../record/index.ts";
import { crankingPrior } from "../spread/index.ts";
import { mean, median, varianceOfMedian } from "../statistics/index.ts";
import type { EngineFigures } from "./figures.ts";
import { workBreaks } from "./history-breaks.ts";
import { useOf } from "./history-input.ts";
import { type KindValues, isComparable, valuesOf } from "./values.ts";

export interface LevelSince {
  /** First test that counts since the last work on all cylinders, by the same gauge. */
  readonly test: string;
  readonly date: string;
  readonly gauge: string;
  /** Cylinders read in both and not worked on in between: all of them read lower. */
  readonly labels: readonly string[];
  /** Change of the middle corrected reading, a fraction: -0.26 = 26 % lower. */
  readonly change: number;
  /** Standard uncertainty of ln(1 + change). */
  readonly uncertainty: number;
}

/** From test to test, common to all cylinders: battery, warmth [ln units]; a choice. @source handbook/statistics.md L.7 */
const common = 0.02;

/** Absent unless every cylinder compared reads lower and the middle of them by more than twice its uncertainty, dry. A gauge
 *  that was not named is not taken for the same.
 *  u^2 = sum over the two tests of [sc^2 + s0^2 v_n + u^2(ln K)], v_n the variance of the median; one gauge drops out. */
export const levelSince = (
  record: EngineRecord,
  test: Test,
  figures: EngineFigures,
): LevelSince | undefined => {
  const tests = record.tests.slice(0, record.tests.indexOf(test) + 1).flatMap((one) => {
    const values = valuesOf(one, "dry");
    return values === undefined ? [] : [{ test: one, values }];
  });
  const now = tests.at(-1);
  const gauge = now?.values.gauge;
  if (now?.test !== test || gauge === undefined || useOf(record, test, figures) !== "full") return undefined;
  const breaks = workBreaks(record, tests).filter(({ afterTests }) => afterTests < tests.length);
  const { cylinders } = record.engine;
  const epoch = Math.max(
    0,
    ...breaks
      .filter(({ newBaseline }) => newBaseline.length === cylinders.length)
      .map(({ afterTests }) => afterTests),
  );
  const place = tests.findIndex(
    (one, i) => i >= epoch && one.values.gauge === gauge && useOf(record, one.test, figures) === "full",
  );
  const first = tests[place];
  if (first === undefined || first.test.date === test.date) return undefined;
  const touched = new Set(
    breaks.flatMap(({ afterTests, newBaseline }) => (afterTests > place ? newBaseline : [])),
  );
  const pairs = cylinders.flatMap((label, i) => {
    const [before, after] = [lnCorrected(first, i), lnCorrected(now, i)];
    return before === undefined || after === undefined || touched.has(i) ? [] : [{ label, before, after }];
  });
  if (pairs.length === 0 || pairs.some(({ before, after }) => after >= before)) return undefined;
  const ln = median(pairs.map(({ after }) => after)) - median(pairs.map(({ before }) => before));
  const uncertainty = Math.sqrt(
    [first, now].reduce((sum, one) => sum + levelVariance(one, pairs.length, figures), 0),
  );
  return -ln > 2 * uncertainty
    ? {
        test: first.test.id,
        date: first.test.date,
        gauge,
        labels: pairs.map(({ label }) => label),
        change: Math.expm1(ln),
        uncertainty,
      }
    : undefined;
};

interface Taken {
  readonly test: Test;
  readonly values: KindValues;
}

const lnCorrected = ({ test, values }: Taken, cylinder: number): number | undefined => {
  const cell = values.cells[cylinder];
  if (cell === undefined || !isComparable(cell) || cell.value <= 0) return undefined;
  return Math.log(cell.value * pressureCorrection(test.conditions).factor);
};

const levelVariance = (
  { test, values }: Taken,
  compared: number,
  { repeatability: own }: EngineFigures,
): number => {
  const repeats = mean(values.cells.flatMap((cell) => cell?.readings.length ?? []));
  const { sigma } = crankingPrior(repeats, own.s === undefined ? undefined : { s: own.s, df: own.df });
  const air = pressureCorrection(test.conditions).uncertainty;
  return common ** 2 + sigma ** 2 * varianceOfMedian(compared) + air ** 2;
};
