// Tests of one day, or of one meter reading, with no work between them are one test: their readings are repeats.

import { at } from "./at.ts";
import type { HistoryCell, HistoryService, HistoryTest } from "./input.ts";

export interface MergedTest extends Omit<HistoryTest, "id"> {
  /** The ids of the tests that were merged, in their order. */
  readonly ids: readonly string[];
}

export interface MergedTests {
  readonly tests: readonly MergedTest[];
  /** The services, `afterTests` now counting merged tests. */
  readonly services: readonly HistoryService[];
}

/** Merges neighbours of equal date or equal x and equal use (L.5). The mean of merged cells is weighted by repeats. */
export const mergeTests = (
  tests: readonly HistoryTest[],
  services: readonly HistoryService[],
): MergedTests => {
  const merged: MergedTest[] = [];
  const places = [0];
  tests.forEach((test, index) => {
    const last = merged.at(-1);
    const isWorked = services.some((service) => service.afterTests === index);
    if (last !== undefined && !isWorked && isSameTest(last, test))
      merged[merged.length - 1] = join(last, test);
    else merged.push(alone(test));
    places.push(merged.length);
  });
  return { tests: merged, services: services.map((s) => ({ ...s, afterTests: at(places, s.afterTests) })) };
};

const isSameTest = (one: MergedTest, other: HistoryTest): boolean =>
  one.use === other.use && (one.x === other.x || one.years === other.years);

/** Named part by part: what is left beside the id would have to be found out anew for every test. */
const alone = (test: HistoryTest): MergedTest => {
  const { id, x, years, gauge, countsAs, use, correctionUncertainty, sharedUncertainty, cells } = test;
  return { ids: [id], x, years, gauge, countsAs, use, correctionUncertainty, sharedUncertainty, cells };
};

/** The gauge whose readings a test holds, or counts as; undefined where it is not known. */
export const scaleOf = ({ gauge, countsAs }: Pick<HistoryTest, "gauge" | "countsAs">): string | undefined =>
  countsAs ?? gauge;

const join = (one: MergedTest, other: HistoryTest): MergedTest => {
  const { gauge, countsAs: _own, ...rest } = one;
  const scale = scaleOf(one);
  const sharedUncertainty = joinShared(one.sharedUncertainty, other.sharedUncertainty);
  return {
    ...rest,
    ids: [...one.ids, other.id],
    // readings of two gauges are those of neither
    ...(gauge !== undefined && gauge === other.gauge ? { gauge } : {}),
    ...(scale !== undefined && scale === scaleOf(other) ? { countsAs: scale } : {}),
    ...(sharedUncertainty === undefined ? {} : { sharedUncertainty }),
    correctionUncertainty: Math.max(one.correctionUncertainty, other.correctionUncertainty),
    cells: one.cells.map((cell, i) => joinCells(cell, at(other.cells, i))),
  };
};

/** What the tests share moves their mean half as much where only one of them has it. */
const joinShared = (
  one: HistoryTest["sharedUncertainty"],
  other: HistoryTest["sharedUncertainty"],
): HistoryTest["sharedUncertainty"] => {
  if (one === undefined && other === undefined) return undefined;
  const names = Object.keys({ ...one, ...other });
  return Object.fromEntries(names.map((name) => [name, ((one?.[name] ?? 0) + (other?.[name] ?? 0)) / 2]));
};

/** A cylinder that held once was not dead; what was read is kept. */
const joinCells = (one: HistoryCell, other: HistoryCell): HistoryCell => {
  if (one.kind !== "read") return other.kind === "not-read" ? one : other;
  if (other.kind !== "read") return one;
  const repeats = one.repeats + other.repeats;
  return { kind: "read", ln: (one.ln * one.repeats + other.ln * other.repeats) / repeats, repeats };
};
