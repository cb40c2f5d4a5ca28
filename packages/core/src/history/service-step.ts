// What a repair did: the cylinders worked on before and after, against those left alone.

import { median, studentCdf, studentQuantile, varianceOfMedian } from "../statistics/index.ts";
import { at } from "./at.ts";
import { covarianceRows } from "./covariance.ts";
import type { Work } from "./epochs.ts";
import { generalisedLine } from "./generalised-line.ts";
import { medianPolish } from "./median-polish.ts";
import type { MergedTest } from "./merge-tests.ts";
import { cellVariance, priorDegrees, type Noise } from "./noise.ts";
import { type PooledVariance, pooledVariance } from "./pooled-variance.ts";
import { meanRepeats, readingTable, type Column } from "./reading-table.ts";
import { relativeChannel, seriesOf } from "./relative-channel.ts";
import type { Series } from "./series.ts";

export type StepVerdict = "rose" | "fell" | "no-change-shown" | "cannot-tell";

export interface ServiceStep {
  /** Tests on each side that count, at most 3. */
  readonly before: number;
  readonly after: number;
  readonly verdict: StepVerdict;
  /** After minus before, ln units; the fields from here on are absent where one side has no test. */
  readonly step?: number;
  readonly standardError?: number;
  readonly t?: number;
  /** Infinite for the whole engine, whose assumed scatter stands as it is. */
  readonly df?: number;
  /** One-sided, in the direction of the step. */
  readonly p?: number;
  /** The smallest step that would have been shown, ln units. */
  readonly shownFrom?: number;
}

/** The tests around a work, up to the works before and after it. */
export interface Surroundings {
  readonly tests: readonly MergedTest[];
  /** Places of the tests that count, before and after the work. */
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** Place on the axis of every test. */
  readonly x: readonly number[];
  readonly noise: Noise;
  readonly cylinders: number;
}

/** Step of each renewed cylinder against the untouched ones: r_ti = y_ti - med_j(y_tj - c_j), step = median of the first
 *  three after - median of the last three before, se = s_e sqrt((1 + v_u)(v_k1 + v_k2)). One-sided at .05 over the number
 *  of cylinders renewed.  @source handbook/statistics.md L.6 */
export const serviceSteps = (work: Work, around: Surroundings): readonly ServiceStep[] => {
  const { tests, before, after, cylinders } = around;
  const rows = [...before, ...after];
  const untouched = columnsOf(cylinders, tests.length).filter(
    ({ cylinder }) => !work.touched.includes(cylinder),
  );
  const table = readingTable(tests, rows, untouched);
  const { levels } = medianPolish(table);
  const references = rows.map((_, r) => {
    const rest = untouched.map((__, c) => at(table.ln, r * untouched.length + c) - at(levels, c));
    return rest.filter((value) => !Number.isNaN(value));
  });
  const scatter = cellScatter(around);
  return work.renewed.map((cylinder) => {
    const contrasts = rows.map((row, r) => {
      const cell = at(at(tests, row).cells, cylinder);
      const reference = at(references, r);
      return cell.kind === "read" && reference.length > 0 ? cell.ln - median(reference) : NaN;
    });
    const sides = {
      old: contrasts
        .slice(0, before.length)
        .filter((r) => !Number.isNaN(r))
        .slice(-3),
      fresh: contrasts
        .slice(before.length)
        .filter((r) => !Number.isNaN(r))
        .slice(0, 3),
    };
    const counts = { before: sides.old.length, after: sides.fresh.length };
    if (counts.before === 0 || counts.after === 0) return { ...counts, verdict: "cannot-tell" };
    const spread = varianceOfMedian(counts.before) + varianceOfMedian(counts.after);
    const error = Math.sqrt(scatter.variance * (1 + varianceOfMedian(untouched.length)) * spread);
    const step = median(sides.fresh) - median(sides.old);
    return { ...counts, ...judged(step, error, { df: scatter.df, level: 0.05 / work.renewed.length }) };
  });
};

/** Every cylinder through all tests. */
const columnsOf = (cylinders: number, tests: number): readonly Column[] =>
  Array.from({ length: cylinders }, (_, cylinder) => ({ cylinder, from: 0, to: tests }));

/** The contrasts of the tests before, and their pooled variance. */
export const scatterBefore = ({
  tests,
  before,
  x,
  noise,
  cylinders,
}: Surroundings): { readonly series: readonly Series[]; readonly pooled: PooledVariance } => {
  const columns = columnsOf(cylinders, tests.length);
  const channel = relativeChannel(tests, before, columns);
  const series = columns.map((_, column) => seriesOf(channel, channel.contrasts, { column, x }));
  const repeats = meanRepeats(before.map((row) => at(tests, row)));
  return { series, pooled: pooledVariance(series, cellVariance(noise, repeats)) };
};

/** s_e^2 = s^2/(1+v) of the tests before where there are four, else what was assumed. */
const cellScatter = (surroundings: Surroundings): { readonly variance: number; readonly df: number } => {
  const { tests, before, after, noise } = surroundings;
  if (before.length < 4) {
    const around = [...before, ...after].map((row) => at(tests, row));
    return { variance: cellVariance(noise, meanRepeats(around)), df: priorDegrees };
  }
  const { variance, df, reference } = scatterBefore(surroundings).pooled;
  return { variance: variance / (1 + reference), df };
};

/** Where all cylinders were touched: the level of the engine before and after, by the covariance of L.7. A change of
 *  gauge in between hides all but large steps. */
export const wholeEngineStep = ({ tests, before, after, noise }: Surroundings): ServiceStep => {
  const rows = [...before.slice(-3), ...after.slice(0, 3)];
  const counts = { before: Math.min(before.length, 3), after: Math.min(after.length, 3) };
  const used = rows.map((row) => at(tests, row));
  const levels = used.map(({ cells }) =>
    median(cells.flatMap((cell) => (cell.kind === "read" ? [cell.ln] : []))),
  );
  const sides = rows.map((_, r) => (r < counts.before ? 0 : 1));
  const line = rows.length < 2 ? undefined : generalisedLine(sides, levels, used.map(covarianceRows(noise)));
  if (line === undefined) return { ...counts, verdict: "cannot-tell" };
  return { ...counts, ...judged(line.slope, line.standardError, { df: Infinity, level: 0.05 }) };
};

const judged = (
  step: number,
  standardError: number,
  { df, level }: { readonly df: number; readonly level: number },
): Omit<ServiceStep, "before" | "after"> => {
  const t = step / standardError;
  const p = studentCdf(-Math.abs(t), df);
  const verdict = p >= level ? "no-change-shown" : step > 0 ? "rose" : "fell";
  return {
    verdict,
    step,
    standardError,
    t,
    df,
    p,
    shownFrom: studentQuantile(1 - level, df) * standardError,
  };
};
