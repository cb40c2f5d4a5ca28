// How the gauges of a logbook stand to one another: links from one to another, each measured on one warm engine.

import { type LinkFault, type Problem, byPlace } from "../problem/index.ts";
import type { RowView } from "./row-view.ts";
import type { Gauge, GaugeLink } from "./gauge-types.ts";

const linkColumns = ["link_to", "link_factor", "link_u", "link_date"] as const;

/** The link of a row; undefined where its cells are empty, or after a fault. */
export const linkIn = (row: RowView): GaugeLink | undefined => {
  const missing = linkColumns.filter((name) => row.text(name) === "");
  if (missing.length === linkColumns.length) return undefined;
  if (missing.length > 0) {
    const there = linkColumns.find((name) => !missing.includes(name)) ?? "link_to";
    return row.fault(there, "link-partial", { missing });
  }
  const factor = row.number("link_factor", { of: "the factor between two gauges", least: 0.05, most: 20 });
  const uncertainty = row.number("link_u", { of: "the uncertainty of ln factor", least: 0.0001, most: 1 });
  const date = row.date("link_date");
  if (factor === undefined || uncertainty === undefined || date === undefined) return undefined;
  return { to: row.text("link_to"), factor, uncertainty, date };
};

interface Read {
  readonly rows: readonly Gauge[];
  readonly problems: readonly Problem[];
}
interface Checked {
  readonly gauges: readonly Gauge[];
  readonly problems: readonly Problem[];
}

/** Leaves out the gauges whose link leads nowhere, and reports it at their row.
 *  @param places - the row of every gauge of the file, also of those with a fault */
export const checkLinks = ({ rows, problems }: Read, places: ReadonlyMap<string, RowView>): Checked => {
  const byId = new Map(rows.map((gauge) => [gauge.id, gauge] as const));
  const faulty = rows.flatMap((gauge) => {
    const why = linkFault(gauge, byId, places);
    return why === undefined ? [] : [{ gauge, why }];
  });
  for (const { gauge, why } of faulty) {
    const gauges = [...places.keys()].filter((id) => id !== gauge.id);
    places.get(gauge.id)?.fault("link_to", "link-bad", { to: gauge.link?.to ?? "", why, gauges });
  }
  const gauges = rows.filter((gauge) => !faulty.some((one) => one.gauge === gauge));
  return { gauges, problems: faulty.length === 0 ? problems : problems.toSorted(byPlace) };
};

const linkFault = (
  gauge: Gauge,
  byId: ReadonlyMap<string, Gauge>,
  places: ReadonlyMap<string, RowView>,
): LinkFault | undefined => {
  if (gauge.link === undefined) return undefined;
  const { to } = gauge.link;
  if (to === gauge.id) return "itself";
  if (!places.has(to)) return "not-there";
  const other = byId.get(to);
  if (other !== undefined && other.kind !== gauge.kind) return "other-kind";
  return leadsBack(gauge, byId) ? "in-a-circle" : undefined;
};

const leadsBack = (from: Gauge, byId: ReadonlyMap<string, Gauge>): boolean => {
  const passed = new Set<string>();
  for (let at = from.link?.to; at !== undefined && !passed.has(at); at = byId.get(at)?.link?.to) {
    if (at === from.id) return true;
    passed.add(at);
  }
  return false;
};

/** How a gauge stands to the one that its links lead to. */
export interface GaugeStanding {
  /** The gauge at the end of the links; the gauge itself where it has none. */
  readonly counts: string;
  /** Reading of this gauge / reading of that one; of leak-down testers leak / leak. 1 for the gauge itself. */
  readonly factor: number;
  /** Every link on the way, by the gauge that has it. */
  readonly links: readonly { readonly gauge: string; readonly link: GaugeLink }[];
}

/** Follows the links of a gauge to their end. @param name - of a gauge, also one that is not in the list */
export const gaugeStanding = (gauges: readonly Gauge[], name: string): GaugeStanding => {
  const byId = new Map(gauges.map((gauge) => [gauge.id, gauge] as const));
  const links: { readonly gauge: string; readonly link: GaugeLink }[] = [];
  let counts = name;
  for (let link = byId.get(name)?.link; link !== undefined; link = byId.get(counts)?.link) {
    links.push({ gauge: counts, link });
    counts = link.to;
    if (links.some(({ gauge }) => gauge === counts)) break;
  }
  return { counts, factor: links.reduce((product, { link }) => product * link.factor, 1), links };
};
