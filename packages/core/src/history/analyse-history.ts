// The history of an engine, from its readings to a word for each cylinder.

import { mean } from "../statistics/index.ts";
import { afterFall } from "./after-fall.ts";
import { at } from "./at.ts";
import { changesByCylinder } from "./changes-by-cylinder.ts";
import { listEpochs } from "./epochs.ts";
import type { HistoryCell, HistoryInput } from "./input.ts";
import { currentSeries, effectsOf, groundwork, takenBy } from "./groundwork.ts";
import { judgeCylinder } from "./judge-cylinder.ts";
import type { Layout } from "./layout.ts";
import { levelOfCylinder } from "./level-of-cylinder.ts";
import { limitOfCylinder } from "./limit-of-cylinder.ts";
import { pooledVariance } from "./pooled-variance.ts";
import { plainContrasts, type RelativeChannel } from "./relative-channel.ts";
import type { CylinderHistory, HistoryResult } from "./result.ts";
import { placesOf } from "./series.ts";
import { serviceResults } from "./service-results.ts";
import { shownContrasts } from "./shown-contrasts.ts";
import { weakestCylinder } from "./weakest-cylinder.ts";

/** Tests in, courses out; the same input gives the same result.
 *  @throws RangeError on input that no caller should make (check-input.ts)
 *  @source handbook/statistics.md B, C, D, E, L */
export const analyseHistory = (input: HistoryInput): HistoryResult => {
  const { layout, channel, cell, series, shared } = groundwork(input);
  const { labels, tests, rows, slopePer, perYear } = layout;
  const { common } = shared.wide();
  const changes = changesByCylinder(channel, layout.current, cell);
  const plain = plainContrasts(channel.table);
  const shown = shownContrasts(layout, channel, plain);
  const outlooks = outlooksOf(input, { layout, channel, plain, cell });
  const levelOf = absoluteOf(input, layout);
  const cylinders = labels.map((label, i): CylinderHistory => {
    const { since, ...taken } = takenBy(layout, i);
    const judged = judgeCylinder({ series: at(series, i), ...at(changes, i), ...taken }, shared);
    return {
      label,
      ...judged,
      ...afterFall(judged, at(series, i), cell),
      ...(since === undefined ? {} : { since }),
      contrasts: at(shown.contrasts, i),
      ratios: at(shown.ratios, i),
      ...meanRatioOf(layout, at(shown.ratios, i), at(layout.current, i)),
      levels: tests.map(({ cells }) => lnOf(at(cells, i))),
      noCompression: placesOf(tests, (test) => at(test.cells, i).kind === "no-compression"),
      ...(outlooks[i] ?? { stays: [] }),
      ...levelOf(i),
    };
  });
  return {
    axis: { ...input.axis, slopePer, ...(perYear === undefined ? {} : { perYear }) },
    tests: tests.map(({ ids, x, years, use, gauge, countsAs }) => ({
      ids,
      x,
      years,
      use,
      ...(gauge === undefined ? {} : { gauge }),
      ...(countsAs === undefined ? {} : { countsAs }),
    })),
    cylinders,
    common: { ...common, effects: effectsOf(layout, channel) },
    epochs: listEpochs(layout.columns, layout.works, labels),
    services: serviceResults(layout),
    weakest: weakestCylinder(cylinders),
    scatter: { s: Math.sqrt(shared.pooled.variance), df: shared.pooled.df },
    manyLooks: rows.length >= 20 ? "yes" : "no",
  };
};

const lnOf = (cell: HistoryCell): number | undefined => (cell.kind === "read" ? cell.ln : undefined);

const meanRatioOf = (
  { columns, rows }: Layout,
  ratios: readonly (number | undefined)[],
  current: number,
): Pick<CylinderHistory, "meanRatio"> => {
  const { from } = at(columns, current);
  const own = rows.flatMap((row) => (row >= from ? (ratios[row] ?? []) : []));
  return own.length === 0 ? {} : { meanRatio: mean(own) };
};

/** Of each cylinder by place. */
const absoluteOf = (
  { kind, minimum }: HistoryInput,
  layout: Layout,
): ((cylinder: number) => Pick<CylinderHistory, "absolute">) => {
  if (kind === "leak-down" || minimum === undefined) return () => ({});
  const levelOf = levelOfCylinder(layout, minimum);
  return (cylinder) => {
    const absolute = levelOf(cylinder);
    return absolute === undefined ? {} : { absolute };
  };
};

/** The forecasts, for cranking with a limit given; leak-down scatters too much between tests for a date (L.10). */
const outlooksOf = (
  { kind, limitRatio }: HistoryInput,
  {
    layout,
    channel,
    plain,
    cell,
  }: {
    readonly layout: Layout;
    readonly channel: RelativeChannel;
    readonly plain: Float64Array;
    readonly cell: number;
  },
): readonly Pick<CylinderHistory, "limit" | "stays">[] => {
  if (kind === "leak-down" || limitRatio === undefined) return [];
  const series = currentSeries(layout, channel, plain);
  const pooled = pooledVariance(series, cell);
  const { perYear, slopePer, rows, x } = layout;
  const last = rows.at(-1);
  if (last === undefined) return [];
  const now = at(x, last);
  return series.map((one) => limitOfCylinder({ series: one, pooled, limitRatio, perYear, now, slopePer }));
};
