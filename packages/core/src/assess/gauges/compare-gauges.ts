// Two gauges on the same warm engine: how the one stands to the other, where the readings can carry it.

import { pressureCorrection } from "../../cranking/index.ts";
import { dialUncertainty } from "../../leakdown/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import {
  type GaugeStudy,
  gaugeStudy,
  mean,
  median,
  pooledRepeatability,
  studentQuantile,
  varianceOfMedian,
} from "../../statistics/index.ts";
import { type DayDifference, dayDifference } from "./day-difference.ts";
import { figuresOf } from "../figures.ts";
import type { GaugeComparison } from "./gauge-comparison.ts";
import { disagreeing } from "./disagreeing.ts";
import { type GaugeRatio, leakRatios, pressureRatios } from "./gauge-ratios.ts";
import { testerDial } from "./tester-dial.ts";
import { type KindValues, comparisonsOf, crankingKinds, supplyOf, valuesOf } from "../values/values.ts";

/** Why two gauges cannot be linked by these readings. */
export type StandingRefused =
  | { readonly code: "set-aside" }
  | { readonly code: "gauge-not-named" }
  | { readonly code: "day-differs"; readonly by: DayDifference }
  | { readonly code: "supply-unknown" }
  | { readonly code: "too-few"; readonly needed: number }
  /** The cylinders that do not stand as the others do; in the engine's order. */
  | { readonly code: "cylinders-disagree"; readonly labels: readonly string[] };

/** reading of the gauge / reading of the other; of leak-down testers alpha / alpha. */
export interface MeasuredStanding {
  readonly kind: "measured";
  readonly factor: number;
  /** Standard uncertainty of ln factor, and its degrees of freedom. */
  readonly uncertainty: number;
  readonly df: number;
  /** 95 % limits of the factor. */
  readonly low: number;
  readonly high: number;
}

/** How far repeats of one gauge lie apart in this test: standard deviation in ln units. */
export interface GaugeRepeats {
  readonly gauge?: string;
  readonly s: number;
  readonly df: number;
}

/** Two gauges read on one engine in one test: the cells side by side, and how the one stands to the other. */
export interface GaugePair {
  readonly what: GaugeComparison["what"];
  /** The gauge that is compared; absent where its rows name none. */
  readonly gauge?: string;
  /** The gauge whose readings count in this test. */
  readonly to?: string;
  /** The cylinders read on the scale of both, in the engine's order. */
  readonly cylinders: readonly GaugeRatio[];
  readonly standing: MeasuredStanding | ({ readonly kind: "refused" } & StandingRefused);
  /** Of each gauge that repeated readings. */
  readonly repeats: readonly GaugeRepeats[];
  /** Where both gauges read every cylinder as often, and more than once; in ln of the pressures. */
  readonly study?: GaugeStudy;
}

/** Fewer say nothing of the two gauges that one bad reading could not have said. @source handbook/leakdown.md H.2 c */
const fewestCylinders = 3;

/** Every pair of gauges of one test, each against the one that counts there: of the cranking readings the dry ones, else
 *  the first kind that was read with two; and the leak-down. Empty where no kind was read with two gauges. */
export const compareGauges = (record: EngineRecord, test: Test): readonly GaugePair[] => {
  const cranking = crankingKinds.find((what) => comparisonsOf(test, what).length > 0);
  const kinds: readonly GaugePair["what"][] = [...(cranking === undefined ? [] : [cranking]), "leak-down"];
  return kinds.flatMap((what) => {
    const counts = valuesOf(test, what);
    if (counts === undefined) return [];
    const others = comparisonsOf(test, what).filter(({ gauge }) => gauge !== counts.gauge);
    return others.map((other) => pairOf(record, test, { what, counts, other }));
  });
};

interface Pair {
  readonly what: GaugePair["what"];
  readonly counts: KindValues;
  readonly other: KindValues;
}

const pairOf = (record: EngineRecord, test: Test, pair: Pair): GaugePair => {
  const { what, counts, other } = pair;
  const labels = record.engine.cylinders;
  const cylinders =
    what === "leak-down"
      ? leakRatios(labels, pair, (i, gauge) => ({
          supply: supplyOf(test, i, gauge),
          ambient: pressureCorrection(test.conditions).station,
          uDial: dialUncertainty(testerDial(record.gauges.find(({ id }) => id === gauge))),
        }))
      : pressureRatios(labels, pair, figuresOf(record).repeatability.blended);
  const both = [counts, other];
  const study = gaugeStudy(cylinders.map(({ place }) => both.map((values) => lnTakes(values, place))));
  return {
    what,
    ...(other.gauge === undefined ? {} : { gauge: other.gauge }),
    ...(counts.gauge === undefined ? {} : { to: counts.gauge }),
    cylinders,
    standing: standingOf(test, pair, cylinders),
    repeats: both.flatMap((values) => repeatsOf(values) ?? []),
    ...(study === undefined ? {} : { study }),
  };
};

const standingOf = (
  test: Test,
  { what, counts, other }: Pair,
  cylinders: readonly GaugeRatio[],
): GaugePair["standing"] => {
  if (test.setAside !== undefined) return { kind: "refused", code: "set-aside" };
  if (counts.gauge === undefined || other.gauge === undefined)
    return { kind: "refused", code: "gauge-not-named" };
  const by = dayDifference(test, counts.gauge, other.gauge);
  if (by !== undefined) return { kind: "refused", code: "day-differs", by };
  const isSupplied = [counts, other].every(({ gauge, cells }) =>
    cells.some((cell, i) => cell !== undefined && supplyOf(test, i, gauge) !== undefined),
  );
  if (what === "leak-down" && !isSupplied) return { kind: "refused", code: "supply-unknown" };
  if (cylinders.length < fewestCylinders)
    return { kind: "refused", code: "too-few", needed: fewestCylinders };
  const labels = disagreeing(cylinders);
  return labels.length > 0 ? { kind: "refused", code: "cylinders-disagree", labels } : measured(cylinders);
};

/** The scatter that the readings are known to have counts as six degrees of freedom beside that of the ratios. */
const priorDegrees = 6;

/** ln factor = median of ln ratio;  u² = v_n (6 σ² + SS)/(6 + n − 1), SS about the mean, σ² expected of one ln ratio, v_n
 *  the variance of the median.  @source handbook/leakdown.md H.2 c; statistics.md F (blend) */
const measured = (cylinders: readonly GaugeRatio[]): MeasuredStanding => {
  const logs = cylinders.map(({ ratio }) => Math.log(ratio));
  const centre = mean(logs);
  const sumOfSquares = logs.reduce((sum, ln) => sum + (ln - centre) ** 2, 0);
  const df = priorDegrees + logs.length - 1;
  const expected = mean(cylinders.map(({ variance }) => variance));
  const variance = (priorDegrees * expected + sumOfSquares) / df;
  const uncertainty = Math.sqrt(variance * varianceOfMedian(logs.length));
  const reach = Math.exp(studentQuantile(0.975, df) * uncertainty);
  const factor = Math.exp(median(logs));
  return { kind: "measured", factor, uncertainty, df, low: factor / reach, high: factor * reach };
};

/** The takes of one cylinder in ln of the pressure, for a dial in percent in ln of the part held. */
const lnTakes = ({ cells, holds }: KindValues, place: number): readonly number[] =>
  (cells[place]?.readings ?? []).flatMap((reading) => {
    const held = holds === "lost" ? 1 - reading : reading;
    return held > 0 ? [Math.log(held)] : [];
  });

const repeatsOf = (values: KindValues): GaugeRepeats | undefined => {
  const cells = values.cells.map((cell, i) => (cell?.pegged === false ? lnTakes(values, i) : []));
  const { s, df } = pooledRepeatability(cells.filter((cell) => cell.length > 1));
  return s === undefined
    ? undefined
    : { ...(values.gauge === undefined ? {} : { gauge: values.gauge }), s, df };
};
