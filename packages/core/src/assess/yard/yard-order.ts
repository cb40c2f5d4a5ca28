// The orders of a yard: worst first, or by name, last test, or when the next is due.

import type { Course } from "../../history/index.ts";
import { byText } from "../../problem/index.ts";
import type { Standing } from "../../spread/index.ts";
import type { YardRow } from "./yard-row.ts";

/** The orders that a yard can be told in: worst first, by name, by last test, by when the next one is due. */
export const yardOrders = ["worst", "engine", "last", "due"] as const;
/** One of the orders of a yard. */
export type YardOrder = (typeof yardOrders)[number];

/** Compares two rows. Whatever the order, rows alike stand by engine, so that an order never depends on who came first.
 *  worst: lagging, suspect, even, no standing; then stepped down, falling, any other course; then the further below the
 *  others. last: the longest untested first. due: the earliest first, then the longest untested. */
export const yardCompare = (order: YardOrder): ((a: YardRow, b: YardRow) => number) => {
  const own = compares[order];
  return (a, b) => own(a, b) || byText(a.engine, b.engine);
};

const standings: readonly (Standing | undefined)[] = ["lagging", "suspect", "even", undefined];
const courses: readonly (Course | undefined)[] = ["stepped-down", "falling"];

const placeOf = <T>(list: readonly T[], one: T): number => {
  const place = list.indexOf(one);
  return place === -1 ? list.length : place;
};

const compares: Readonly<Record<YardOrder, (a: YardRow, b: YardRow) => number>> = {
  worst: (a, b) =>
    placeOf(standings, a.worst?.standing) - placeOf(standings, b.worst?.standing) ||
    placeOf(courses, a.course?.code) - placeOf(courses, b.course?.code) ||
    below(b) - below(a),
  engine: () => 0,
  last: (a, b) => byText(a.test?.date ?? "", b.test?.date ?? ""),
  due: (a, b) => byText(a.due.since ?? a.due.date, b.due.since ?? b.due.date) || compares.last(a, b),
};

/** Below the others, by the reading that gave it its standing. */
const below = ({ worst }: YardRow): number => worst?.leak?.belowOthers ?? worst?.belowOthers ?? 0;
