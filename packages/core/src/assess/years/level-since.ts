// Whether the whole engine reads lower than it did: what the cylinders share, which no comparison among them can show.

import type { EngineRecord, Test } from "../../record/index.ts";
import { crankingPrior } from "../../spread/index.ts";
import { mean, median, varianceOfMedian } from "../../statistics/index.ts";
import { correctionOf } from "../values/correction.ts";
import { dryPair } from "../speed/dry-pair.ts";
import type { EngineFigures } from "../figures.ts";
import type { LevelSince } from "./changes.ts";
import { workBreaks } from "./history-breaks.ts";
import { useOf } from "./history-input.ts";
import { linkOrUnnamed } from "../gauges/linked-gauge.ts";
import { type KindValues, valuesOf } from "../values/values.ts";

/** From test to test, common to all cylinders: battery, warmth [ln units]; a choice. @source handbook/statistics.md L.7 */
const common = 0.02;

/** Absent unless every cylinder compared reads lower and the middle of them by more than twice its uncertainty, dry. A gauge
 *  that was named in one test only is not taken for the same, one that was named in neither is, and it is said; one linked to
 *  it is, with the factor and the doubt of the link.
 *  u^2 = sum over the two tests of [sc^2 + s0^2 v_n + u^2(ln K)], v_n the variance of the median; one gauge drops out. What
 *  the speed correction leaves in doubt is added, or what speeds that were not corrected may have done. */
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
  if (now?.test !== test || useOf(record, test, figures) !== "full") return undefined;
  const breaks = workBreaks(record, tests).filter(({ afterTests }) => afterTests < tests.length);
  const { cylinders } = record.engine;
  const epoch = Math.max(
    0,
    ...breaks
      .filter(({ newBaseline }) => newBaseline.length === cylinders.length)
      .map(({ afterTests }) => afterTests),
  );
  const linkOf = ({ values }: Taken) => linkOrUnnamed(record.gauges, values.gauge, gauge);
  const place = tests.findIndex(
    (one, i) => i >= epoch && linkOf(one) !== undefined && useOf(record, one.test, figures) === "full",
  );
  const first = tests[place];
  const link = first === undefined ? undefined : linkOf(first);
  if (first === undefined || link === undefined || first.test.date === test.date) return undefined;
  const touched = new Set(
    breaks.flatMap(({ afterTests, newBaseline }) => (afterTests > place ? newBaseline : [])),
  );
  const pair = dryPair(record, figures, first.test, test);
  const pairs = cylinders.flatMap((label, i) => {
    const [before, after] = [pair.before[i], pair.after[i]];
    return before === undefined || after === undefined || touched.has(i)
      ? []
      : [{ label, before: before + link.shift, after }];
  });
  if (pairs.length === 0 || pairs.some(({ before, after }) => after >= before)) return undefined;
  const ln = median(pairs.map(({ after }) => after)) - median(pairs.map(({ before }) => before));
  const uncertainty = Math.sqrt(
    [first, now].reduce(
      (sum, one) => sum + levelVariance(record, one, { compared: pairs.length, figures }),
      pair.speedVariance + link.variance,
    ),
  );
  return -ln > 2 * uncertainty
    ? {
        test: first.test.id,
        date: first.test.date,
        ...(gauge === undefined ? {} : { gauge, before: first.values.gauge ?? gauge }),
        labels: pairs.map(({ label }) => label),
        change: Math.expm1(ln),
        ...(pair.speeds === undefined || pair.speeds.before === pair.speeds.after
          ? {}
          : { speeds: pair.speeds }),
        uncertainty,
      }
    : undefined;
};

interface Taken {
  readonly test: Test;
  readonly values: KindValues;
}

const levelVariance = (
  record: EngineRecord,
  { test, values }: Taken,
  { compared, figures }: { readonly compared: number; readonly figures: EngineFigures },
): number => {
  const { repeatability: own } = figures;
  const repeats = mean(values.cells.flatMap((cell) => cell?.readings.length ?? []));
  const { sigma } = crankingPrior(repeats, own.s === undefined ? undefined : { s: own.s, df: own.df });
  const air = correctionOf(record, test).uncertainty;
  return common ** 2 + sigma ** 2 * varianceOfMedian(compared) + air ** 2;
};
