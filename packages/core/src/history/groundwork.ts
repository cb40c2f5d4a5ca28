// What every answer about the years starts from: the table with its contrasts, their scatter, and the engine-wide channel.

import { at } from "./at.ts";
import { checkInput } from "./check-input.ts";
import { engineWide, type Wide } from "./engine-wide.ts";
import type { HistoryInput } from "./input.ts";
import type { Own, Shared } from "./judge-cylinder.ts";
import { type Layout, layOut, sinceWhole, wholeRows } from "./layout.ts";
import { cellVariance } from "./noise.ts";
import { pooledVariance } from "./pooled-variance.ts";
import { meanRepeats } from "./reading-table.ts";
import { eachSeries, relativeChannel, type RelativeChannel } from "./relative-channel.ts";
import type { Series } from "./series.ts";
import { stepScale } from "./two-below-baseline.ts";

export interface Groundwork {
  readonly layout: Layout;
  readonly channel: RelativeChannel;
  /** s0^2 of one cell. */
  readonly cell: number;
  /** Of each cylinder, in its current epoch. */
  readonly series: readonly Series[];
  readonly shared: Shared;
}

/** @throws RangeError on input that no caller should make (check-input.ts) */
export const groundwork = (input: HistoryInput): Groundwork => {
  checkInput(input);
  const layout = layOut(input);
  const { tests, rows, perYear, labels } = layout;
  const channel = relativeChannel(tests, rows, layout.columns);
  const cell = cellVariance(layout.noise, meanRepeats(rows.map((row) => at(tests, row))));
  const series = currentSeries(layout, channel, channel.contrasts);
  const pooled = pooledVariance(series, cell);
  let known: Wide | undefined;
  const wide = (): Wide => (known ??= wideOf(layout, channel, cell));
  const scale = stepScale(series, pooled);
  const shared = { pooled, scale, cell, wide, perYear, cylinders: labels.length };
  return { layout, channel, cell, series, shared };
};

export const currentSeries = (
  { current, x }: Layout,
  channel: RelativeChannel,
  contrasts: Float64Array,
): readonly Series[] => current.map(eachSeries(channel, contrasts, x));

/** a_t of every test; undefined where it does not count or came before the last work on all cylinders. */
export const effectsOf = (layout: Layout, { polish }: RelativeChannel): readonly (number | undefined)[] => {
  const since = sinceWhole(layout);
  return layout.tests.map((_, test) => {
    const row = layout.rows.indexOf(test);
    return row === -1 || test < since ? undefined : at(polish.effects, row);
  });
};

/** The engine-wide channel over the tests since the last work on all cylinders. */
const wideOf = (layout: Layout, channel: RelativeChannel, cell: number): Wide => {
  const { tests, x, noise } = layout;
  const since = sinceWhole(layout);
  const counted = wholeRows(layout);
  const places = counted.map((test) => at(x, test));
  const effects = effectsOf(layout, channel);
  const used = counted.map((test) => at(tests, test));
  const span = (places.at(-1) ?? 0) - (places[0] ?? 0);
  const told = effects.filter((effect) => effect !== undefined);
  const gauges = new Set(used.map(({ gauge, countsAs }) => countsAs ?? gauge));
  const oneGauge = gauges.size === 1 && !gauges.has(undefined);
  const variance = noise.common ** 2 + cell + (oneGauge ? 0 : noise.gauge ** 2);
  return { common: engineWide(used, { x: places, effects: told, since }, noise), span, effects, variance };
};

/** What the cells of the current epoch say beside the contrasts. */
export const takenBy = (
  { tests, columns, current }: Layout,
  cylinder: number,
): Pick<Own, "lastTaken" | "held" | "taken"> & { readonly since?: number } => {
  const { from } = at(columns, at(current, cylinder));
  let lastTaken: Own["lastTaken"] = "none";
  let held: Own["held"] = "none";
  let taken = 0;
  for (let test = from; test < tests.length; test += 1) {
    const { use, cells } = at(tests, test);
    const { kind } = at(cells, cylinder);
    if (use !== "full" || kind === "not-read") continue;
    lastTaken = kind;
    taken += 1;
    if (kind === "read") held = "some";
  }
  return {
    lastTaken,
    held,
    taken: taken > 1 ? "several" : "one-at-most",
    ...(from < tests.length ? { since: from } : {}),
  };
};
