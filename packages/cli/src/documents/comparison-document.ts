// What `gauge compare --json` says of one pair of gauges.

import {
  type EngineRecord,
  type GaugeLink,
  type GaugePair,
  type NewLink,
  type Test,
  comparedReadings,
} from "@sealtrend/core/parts";
import { refusalWords } from "../render/gauges/gauge-refusals.ts";
import { kPa } from "../render/units.ts";

export const comparisonDocument = (
  record: EngineRecord,
  test: Test,
  pair: GaugePair,
  { link, replaced }: { readonly link: NewLink | undefined; readonly replaced: GaugeLink | undefined },
) => {
  const { what, gauge, to, cylinders, standing, repeats, study } = pair;
  const isLeak = what === "leak-down";
  return {
    what,
    gauge,
    to,
    ...(standing.kind === "refused"
      ? {
          refused: {
            code: standing.code,
            text: refusalWords(pair, {
              engine: record.engine.id,
              of: record.engine.cylinders.length,
              test: test.id,
            }).found,
            cylinders: standing.code === "cylinders-disagree" ? standing.labels : undefined,
          },
        }
      : {
          factor: standing.factor,
          u_lnFactor: standing.uncertainty,
          df: standing.df,
          low: standing.low,
          high: standing.high,
          difference: { value: standing.factor - 1, low: standing.low - 1, high: standing.high - 1 },
        }),
    link:
      link === undefined
        ? undefined
        : {
            gauge: link.gauge,
            to: link.to,
            factor: link.factor,
            u_lnFactor: link.uncertainty,
            inPlaceOf:
              replaced === undefined
                ? undefined
                : {
                    to: replaced.to,
                    factor: replaced.factor,
                    u_lnFactor: replaced.uncertainty,
                    date: replaced.date,
                  },
          },
    read: comparedReadings(record, test, pair).map(({ name, values, readsHigh }) => ({
      gauge: name,
      readsHigh_kPa: readsHigh === undefined ? undefined : kPa(readsHigh),
      cylinders: record.engine.cylinders.flatMap((label, i) => {
        const value = values[i];
        return value === undefined
          ? []
          : [{ label, ...(isLeak ? { lost: value } : { read_kPa: kPa(value) }) }];
      }),
    })),
    ratios: cylinders.map(({ label, ratio }) => ({ label, ratio, change: ratio - 1 })),
    repeats: repeats.map(({ gauge: name, s, df }) => ({ gauge: name, s, df })),
    study,
  };
};
