// The orders of a yard: worst first, or by name, last test, or when the next is due.

import type { Course } from "../../history/index.ts";
import { byText } from "../../problem/index.ts";
import type { YardDecision } from "./yard-decision.ts";
import type { YardRow } from "./yard-row.ts";
import type { YardWorst } from "./worst.ts";

/** The orders that a yard can be told in: worst first, by name, by last test, by when the next one is due. */
export const yardOrders = ["worst", "engine", "last", "due"] as const;
/** One of the orders of a yard. */
export type YardOrder = (typeof yardOrders)[number];

/** All that has to be kept of a row to know where it stands in an order. */
export interface YardPlace {
  /** The first that differs decides, lower first. */
  readonly ranks: readonly number[];
  /** ISO days one behind the other, the earliest first. */
  readonly days: string;
  readonly engine: string;
}

/** Where a row stands in an order.
 *  worst: what is not to be run, what needs work, what is not to be run hard; then a cylinder that holds nothing, lags past a
 *  limit, lags, is suspect, even, no standing; then the further a low one is below the others; then stepped down, falling,
 *  any other course; then due. Where no decision was made, from the standing on. last: the longest untested first. due: the
 *  earliest first, then the longest untested. */
export const yardPlace = (row: YardRow, order: YardOrder): YardPlace => ({
  ranks: order === "worst" ? ranksOf(row) : [],
  days: daysOf[order](row),
  engine: row.engine,
});

/** Compares two places of one order. Places alike stand by engine, so that an order never depends on who came first. */
export const comparePlaces = (a: YardPlace, b: YardPlace): number =>
  byRanks(a, b) || byText(a.days, b.days) || byText(a.engine, b.engine);

const byRanks = (a: YardPlace, b: YardPlace): number => {
  for (let i = 0; i < a.ranks.length; i += 1) {
    const apart = (a.ranks[i] ?? 0) - (b.ranks[i] ?? 0);
    if (apart !== 0) return apart;
  }
  return 0;
};

/** Compares two rows by an order. */
export const yardCompare =
  (order: YardOrder): ((a: YardRow, b: YardRow) => number) =>
  (a, b) =>
    comparePlaces(yardPlace(a, order), yardPlace(b, order));

const urgencies: readonly YardDecision["urgency"][] = [
  "stop",
  "before-further-use",
  "no-hard-use",
  "planned",
];
const works: readonly YardDecision["code"][] = ["rebuild", "re-ring", "open-the-top-end"];
const courses: readonly (Course | undefined)[] = ["stepped-down", "falling"];

const placeOf = <T>(list: readonly T[], one: T): number => {
  const place = list.indexOf(one);
  return place === -1 ? list.length : place;
};

/** Not to be run, work needed, not to be run hard for what was found in it, the rest. */
const rankOf = ({ decision }: YardRow): number => {
  if (decision?.use === "not-run") return 0;
  if (decision?.basis === "needed") return 1;
  return decision?.urgency === "no-hard-use" ? 2 : 3;
};

/** Within these ranks; the same for all below them. */
const pressing = (row: YardRow): number => (rankOf(row) < 3 ? placeOf(urgencies, row.decision?.urgency) : 0);
const work = (row: YardRow): number =>
  row.decision?.basis === "needed" ? placeOf(works, row.decision.code) : works.length;

const standingOf = ({ low = [], worst }: YardRow): number => {
  if (low.some(({ held }) => held === "nothing")) return 0;
  if (low.some((one) => one.standing === "lagging" && isPastLimit(one))) return 1;
  return 2 + placeOf(["lagging", "suspect", "even"], worst?.standing ?? "none");
};

const isPastLimit = ({ limitsMissed, leak }: YardWorst): boolean =>
  limitsMissed.length > 0 || leak?.overLimit === true;

/** Below the others, by the reading that gave it its standing; what lies between even ones is chance. */
const below = ({ worst, low }: YardRow): number =>
  low === undefined ? 0 : (worst?.leak?.belowOthers ?? worst?.belowOthers ?? 0);

const ranksOf = (row: YardRow): readonly number[] => [
  rankOf(row),
  pressing(row),
  work(row),
  standingOf(row),
  -below(row),
  placeOf(courses, row.course?.code),
];

const last = ({ test }: YardRow): string => test?.date ?? "";
const dueThenLast = (row: YardRow): string => `${row.due.since ?? row.due.date} ${last(row)}`;

const daysOf: Readonly<Record<YardOrder, (row: YardRow) => string>> = {
  worst: dueThenLast,
  engine: () => "",
  last,
  due: dueThenLast,
};
