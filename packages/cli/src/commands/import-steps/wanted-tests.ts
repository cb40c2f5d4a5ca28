// Which tests of a sheet are new to an engine, or new in part, and which the record contradicts.

import type { Engine, ImportedTest, Test } from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import { readingsIn } from "./readings-in.ts";
import { differsFault } from "./kept-out.ts";
import type { Standing } from "./recorded-standing.ts";

/** A test to add; to one that is there where it has an id. */
export interface Wanted {
  readonly test: ImportedTest;
  readonly id?: string;
  /** Readings of it that fill what an earlier import left open. */
  readonly fills: number;
}

/** A test of the sheet that does not go in, and why. */
export interface KeptOut {
  readonly test: ImportedTest;
  readonly fault: Fault;
}

interface Rules {
  readonly engine: Engine;
  /** tests.csv as messages name it. */
  readonly file: string;
  readonly differing: "kept out" | "added";
}

export const byDay = (wanted: readonly Wanted[]): readonly Wanted[] =>
  wanted.toSorted((a, b) => (a.test.date < b.test.date ? -1 : a.test.date > b.test.date ? 1 : 0));

/** What of a test is to be added. @param now - the tests that are recorded */
export const wantedOf = (
  test: ImportedTest,
  standing: Standing,
  now: readonly Test[],
  { differing }: Rules,
): readonly Wanted[] => {
  if (standing === undefined) return [{ test, fills: 0 }];
  if (standing.match === "same") return [];
  if (standing.match === "other") return differing === "added" ? [{ test, fills: 0 }] : [];
  const there = now.find(({ id }) => id === standing.id);
  const { id, filling, missing } = standing;
  const rows = furtherTakes([...filling, ...missing], there);
  return [{ id, test: { ...test, rows }, fills: readingsIn([{ rows: filling }]) }];
};

/** Rows numbered behind those that the test has. */
const furtherTakes = (rows: ImportedTest["rows"], there: Test | undefined): ImportedTest["rows"] => {
  const last = new Map<string, number>();
  const key = (what: string, gauge = ""): string => `${what}\n${gauge}`;
  for (const { what, gauge, take } of there?.rows ?? [])
    last.set(key(what, gauge), Math.max(take, last.get(key(what, gauge)) ?? 0));
  return rows.map((row) => {
    const take = (last.get(key(row.what, row.gauge)) ?? 0) + 1;
    last.set(key(row.what, row.gauge), take);
    return { ...row, take };
  });
};

/** What of a test is recorded already. */
export const knownOf = (test: ImportedTest, standing: Standing): readonly ImportedTest[] => {
  if (standing?.match === "same") return [test];
  return standing?.match === "part" ? [{ ...test, rows: standing.known }] : [];
};

/** A test that the record contradicts. @param now - the tests that are recorded */
export const heldBack = (
  test: ImportedTest,
  standing: Standing,
  now: readonly Test[],
  rules: Rules,
): readonly KeptOut[] => {
  const there = standing?.match === "other" ? now.find(({ id }) => id === standing.id) : undefined;
  return there === undefined || rules.differing === "added"
    ? []
    : [{ test, fault: differsFault(test, there, rules) }];
};
