// The history of an engine, from its readings to a word for each cylinder.

import { mean } from "../statistics/index.ts";
import { at } from "./at.ts";
import { changesByCylinder } from "./changes-by-cylinder.ts";
import { checkInput } from "./check-input.ts";
import { engineWide } from "./engine-wide.ts";
import { listEpochs } from "./epochs.ts";
import type { HistoryCell, HistoryInput } from "./input.ts";
import { judgeCylinder, type Own } from "./judge-cylinder.ts";
import { type Layout, layOut, sinceWhole, wholeRows } from "./layout.ts";
import { levelOfCylinder } from "./level-of-cylinder.ts";
import { limitOfCylinder } from "./limit-of-cylinder.ts";
import { cellVariance } from "./noise.ts";
import { pooledVariance } from "./pooled-variance.ts";
import { meanRepeats } from "./reading-table.ts";
import { plainContrasts, relativeChannel, seriesOf, type RelativeChannel } from "./relative-channel.ts";
import type { CylinderHistory, HistoryResult } from "./result.ts";
import { placesOf, type Series } from "./series.ts";
import { serviceResults } from "./service-results.ts";
import { shownContrasts } from "./shown-contrasts.ts";
import { stepScale } from "./two-below-baseline.ts";
import { weakestCylinder } from "./weakest-cylinder.ts";

/** Tests in, courses out; the same input gives the same result.
 *  @throws RangeError on input that no caller should make (check-input.ts)
 *  @source handbook/statistics.md B, C, D, E, L */
export const analyseHistory = (input: HistoryInput): HistoryResult => {
  checkInput(input);
  const layout = layOut(input);
  const { labels, tests, rows, slopePer, perYear } = layout;
  const channel = relativeChannel(tests, rows, layout.columns);
  const cell = cellVariance(layout.noise, meanRepeats(rows.map((row) => at(tests, row))));
  const series = currentSeries(layout, channel, channel.contrasts);
  const pooled = pooledVariance(series, cell);
  const { common, span } = commonOf(layout, channel);
  const shared = {
    pooled,
    scale: stepScale(series, pooled),
    common,
    perYear,
    cylinders: labels.length,
    span,
  };
  const changes = changesByCylinder(channel, layout.current, cell);
  const shown = shownContrasts(layout, channel.polish.levels);
  const outlooks = outlooksOf(input, { layout, channel, cell });
  const cylinders = labels.map((label, i): CylinderHistory => {
    const { since, ...taken } = takenBy(layout, i);
    return {
      label,
      ...judgeCylinder({ series: at(series, i), ...at(changes, i), ...taken }, shared),
      ...(since === undefined ? {} : { since }),
      contrasts: at(shown.contrasts, i),
      ratios: at(shown.ratios, i),
      ...meanRatioOf(layout, at(shown.ratios, i), at(layout.current, i)),
      levels: tests.map(({ cells }) => lnOf(at(cells, i))),
      noCompression: placesOf(tests, (test) => at(test.cells, i).kind === "no-compression"),
      ...(outlooks[i] ?? { stays: [] }),
      ...absoluteOf(input, layout, i),
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
    common,
    epochs: listEpochs(layout.columns, layout.works, labels),
    services: serviceResults(layout),
    weakest: weakestCylinder(cylinders),
    scatter: { s: Math.sqrt(pooled.variance), df: pooled.df },
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

const absoluteOf = (
  { kind, minimum }: HistoryInput,
  layout: Layout,
  cylinder: number,
): Pick<CylinderHistory, "absolute"> => {
  if (kind === "leak-down" || minimum === undefined) return {};
  const absolute = levelOfCylinder(layout, cylinder, minimum);
  return absolute === undefined ? {} : { absolute };
};

const currentSeries = (
  { current, x }: Layout,
  channel: RelativeChannel,
  contrasts: Float64Array,
): readonly Series[] => current.map((column) => seriesOf(channel, contrasts, { column, x }));

/** The engine-wide channel over the tests since the last work on all cylinders. */
const commonOf = (
  layout: Layout,
  { polish }: RelativeChannel,
): { readonly common: HistoryResult["common"]; readonly span: number } => {
  const { rows, tests, x, noise } = layout;
  const since = sinceWhole(layout);
  const effects = tests.map((_, test) => {
    const row = rows.indexOf(test);
    return row === -1 || test < since ? undefined : at(polish.effects, row);
  });
  const counted = wholeRows(layout);
  const places = counted.map((test) => at(x, test));
  const values = effects.filter((effect) => effect !== undefined);
  const used = counted.map((test) => at(tests, test));
  const span = (places.at(-1) ?? 0) - (places[0] ?? 0);
  return { common: { ...engineWide(used, { x: places, effects: values, since }, noise), effects }, span };
};

/** What the cells of the current epoch say beside the contrasts. */
const takenBy = (
  { tests, columns, current }: Layout,
  cylinder: number,
): Pick<Own, "lastTaken" | "held"> & { readonly since?: number } => {
  const { from } = at(columns, at(current, cylinder));
  const kinds = tests.flatMap(({ use, cells }, test) =>
    test >= from && use === "full" ? [at(cells, cylinder).kind] : [],
  );
  return {
    lastTaken: kinds.findLast((kind) => kind !== "not-read") ?? "none",
    held: kinds.includes("read") ? "some" : "none",
    ...(from < tests.length ? { since: from } : {}),
  };
};

/** The forecasts, for cranking with a limit given; leak-down scatters too much between tests for a date (L.10). */
const outlooksOf = (
  { kind, limitRatio }: HistoryInput,
  {
    layout,
    channel,
    cell,
  }: { readonly layout: Layout; readonly channel: RelativeChannel; readonly cell: number },
): readonly Pick<CylinderHistory, "limit" | "stays">[] => {
  if (kind === "leak-down" || limitRatio === undefined) return [];
  const series = currentSeries(layout, channel, plainContrasts(channel.table));
  const pooled = pooledVariance(series, cell);
  const { perYear, slopePer, rows, x } = layout;
  const last = rows.at(-1);
  if (last === undefined) return [];
  const now = at(x, last);
  return series.map((one) => limitOfCylinder({ series: one, pooled, limitRatio, perYear, now, slopePer }));
};
