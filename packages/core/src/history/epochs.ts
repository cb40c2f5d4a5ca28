// Work on the engine closes epochs: no trend and no baseline reaches across it for the cylinders it gave a new start.

import { at } from "./at.ts";
import type { HistoryService } from "./input.ts";
import type { Column } from "./reading-table.ts";

/** All work between two neighbouring tests that gives at least one cylinder a new baseline. */
export interface Work {
  /** Place of the first test after it; the number of tests where none followed. */
  readonly before: number;
  /** Cylinders with a new baseline. */
  readonly renewed: readonly number[];
  /** Cylinders that are no reference across it: renewed or touched. */
  readonly touched: readonly number[];
  readonly why: string;
  /** Whether readings before and after it can be compared at all. */
  readonly scale: "same" | "another";
}

/** The works in order of time. */
export const worksOf = (services: readonly HistoryService[]): readonly Work[] => {
  const places = [...new Set(services.map((service) => service.afterTests))].sort((a, b) => a - b);
  return places.flatMap((before) => {
    const here = services.filter((service) => service.afterTests === before);
    const renewed = union(here.map((service) => service.newBaseline));
    if (renewed.length === 0) return [];
    const touched = union(here.flatMap((service) => [service.newBaseline, service.touched]));
    const scale = here.some((service) => service.scale === "another") ? "another" : "same";
    return [{ before, renewed, touched, why: here.map((service) => service.why).join("; "), scale }];
  });
};

const union = (lists: readonly (readonly number[])[]): readonly number[] =>
  [...new Set(lists.flat())].sort((a, b) => a - b);

/** The epochs of every cylinder in order; the last one of each is current and may hold no test yet. */
export const epochsOf = (
  works: readonly Work[],
  { cylinders, tests }: { readonly cylinders: number; readonly tests: number },
): readonly (readonly Column[])[] =>
  Array.from({ length: cylinders }, (_, cylinder) => {
    const openings = works.flatMap((work, opened) =>
      work.renewed.includes(cylinder) ? [{ from: work.before, opened }] : [],
    );
    return [{ from: 0 }, ...openings].map((start, k) => ({
      cylinder,
      ...start,
      to: openings[k]?.from ?? tests,
    }));
  });

export interface Epoch {
  /** First and last test of it, by place in the list of tests; absent where no test was made in it yet. */
  readonly from?: number;
  readonly to?: number;
  readonly cylinders: readonly string[];
  /** The work that opened it; absent for the first. */
  readonly why?: string;
}

/** The epochs as a reader lists them: cylinders that share both ends stand together. */
export const listEpochs = (
  columns: readonly Column[],
  works: readonly Work[],
  labels: readonly string[],
): readonly Epoch[] => {
  const groups = new Map<string, { readonly column: Column; readonly cylinders: string[] }>();
  for (const column of columns) {
    const key = `${String(column.opened)} ${String(column.from)} ${String(column.to)}`;
    const group = groups.get(key) ?? { column, cylinders: [] };
    group.cylinders.push(at(labels, column.cylinder));
    groups.set(key, group);
  }
  return [...groups.values()]
    .sort((a, b) => a.column.from - b.column.from || a.column.to - b.column.to)
    .map(({ column: { from, to, opened }, cylinders }) => ({
      ...(to > from ? { from, to: to - 1 } : {}),
      cylinders,
      ...(opened === undefined ? {} : { why: at(works, opened).why }),
    }));
};
