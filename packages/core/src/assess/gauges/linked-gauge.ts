// A gauge that was compared with another on one warm engine counts as that one in the history.

import type { HistoryResult, HistoryTest } from "../../history/index.ts";
import { type Gauge, gaugeStanding } from "../../record/index.ts";

export interface LinkedGauge extends Pick<HistoryTest, "countsAs"> {
  /** To be added to ln of its readings. */
  readonly lnFactor: number;
  /** The doubt of each link on the way, which every test read with that gauge shares. */
  readonly shared: Readonly<Record<string, number>>;
}

/** What the links of a compression gauge do to its readings; nothing for a gauge without, or without a name.
 *  ln reading − ln factor, u of each ln factor shared by all tests that it brings over. @source handbook/statistics.md L.7 */
export const linkedGauge = (gauges: readonly Gauge[], name: string | undefined): LinkedGauge => {
  const { counts, factor, links } = gaugeStanding(gauges, name ?? "");
  if (links.length === 0) return unlinked;
  return {
    countsAs: counts,
    lnFactor: -Math.log(factor),
    shared: Object.fromEntries(
      links.map(({ gauge, link }) => [`link of ${gauge} to ${link.to}`, -link.uncertainty]),
    ),
  };
};

const unlinked: LinkedGauge = { lnFactor: 0, shared: {} };

/** How ln readings of one gauge come to stand beside those of another: the same gauge, or one that links lead to or from.
 *  @returns what to add to ln of the first, and the variance it brings; undefined where no links join the two */
export const linkBetween = (
  gauges: readonly Gauge[],
  one: string | undefined,
  other: string,
): { readonly shift: number; readonly variance: number } | undefined => {
  if (one === undefined) return undefined;
  const [a, b] = [linkedGauge(gauges, one), linkedGauge(gauges, other)];
  if ((a.countsAs ?? one) !== (b.countsAs ?? other)) return undefined;
  const names = Object.keys({ ...a.shared, ...b.shared });
  const variance = names.reduce((sum, name) => sum + ((a.shared[name] ?? 0) - (b.shared[name] ?? 0)) ** 2, 0);
  return { shift: a.lnFactor - b.lnFactor, variance };
};

/** The same for two tests; two whose gauge was never named may have been read by one, and are taken so: whoever uses it says
 *  that it was not named. */
export const linkOrUnnamed = (
  gauges: readonly Gauge[],
  one: string | undefined,
  other: string | undefined,
): ReturnType<typeof linkBetween> => {
  if (other === undefined) return one === undefined ? { shift: 0, variance: 0 } : undefined;
  return linkBetween(gauges, one, other);
};

/** A gauge whose tests count as those of another in a history. */
export interface LinkedGauges {
  readonly gauge: string;
  readonly counts: string;
  readonly factor: number;
  /** Standard uncertainty of ln factor. */
  readonly uncertainty: number;
  /** The days they were compared. */
  readonly dates: readonly string[];
}

/** The gauges of some histories that were brought to another one by links, each once. */
export const linkedGauges = (
  gauges: readonly Gauge[],
  kinds: readonly { readonly result: HistoryResult }[],
): readonly LinkedGauges[] => {
  const names = kinds.flatMap(({ result }) =>
    result.tests.flatMap(({ gauge, countsAs }) =>
      gauge !== undefined && countsAs !== undefined && gauge !== countsAs ? [gauge] : [],
    ),
  );
  return [...new Set(names)].flatMap((gauge): LinkedGauges[] => {
    const { counts, factor, links } = gaugeStanding(gauges, gauge);
    if (links.length === 0) return [];
    const uncertainty = Math.hypot(...links.map(({ link }) => link.uncertainty));
    return [{ gauge, counts, factor, uncertainty, dates: links.map(({ link }) => link.date) }];
  });
};
