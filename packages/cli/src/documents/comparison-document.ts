// What `gauge compare --json` says of one pair of gauges.

import {
  type EngineRecord,
  type GaugePair,
  type NewLink,
  type Test,
  comparedReadings,
} from "@sealtrend/core";
import { refusalWords } from "../render/gauges/gauge-refusals.ts";
import { kPa } from "../render/units.ts";

export const comparisonDocument = (
  record: EngineRecord,
  test: Test,
  pair: GaugePair,
  link: NewLink | undefined,
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
            text: refusalWords(pair, { engine: record.engine.id, test: test.id }).found,
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
        : { gauge: link.gauge, to: link.to, factor: link.factor, u_lnFactor: link.uncertainty },
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
