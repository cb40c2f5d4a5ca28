// What was read at one place with one instrument, and whether its repeats can all be right.

import type { Length } from "../../quantity/index.ts";
import type { Instrument } from "../conformity/index.ts";
import type { TeardownItem } from "../teardown.ts";

/** A figure of one place with its instrument. */
export interface Reading {
  readonly item: TeardownItem;
  readonly instrument: Instrument;
  /** What was read each time; by feeler the middle of the leaves. [m] */
  readonly repeats: readonly Length[];
}

/** One time that a place was read. */
export interface Taken {
  /** The figure as if it had been read this once. */
  readonly item: TeardownItem;
  /** What repeats do not share; between two instruments all of it. [m] */
  readonly read: number;
}

/** Standard uncertainties that two readings may be apart (judgement). */
export const mostApart = 4;

export const takenOf = (
  { item, instrument, repeats }: Reading,
  tools: "same" | "several",
): readonly Taken[] =>
  repeats.map((value) => ({
    item: { ...item, value, readings: 1 },
    read: readOf({ item, instrument }, tools),
  }));

const readOf = (
  { item, instrument }: Pick<Reading, "item" | "instrument">,
  tools: "same" | "several",
): number => {
  if (item.between !== undefined) return item.uncertainty;
  return tools === "same" ? instrument.read : Math.hypot(instrument.read, instrument.common);
};

export const isApart = (taken: readonly Taken[]): boolean =>
  taken.some((one, i) => taken.slice(i + 1).some((other) => areApart(one, other)));

const areApart = (one: Taken, other: Taken): boolean =>
  Math.abs(one.item.value - other.item.value) > mostApart * Math.hypot(one.read, other.read);

/** A reading whose repeats cannot all be right stands with each of them and without a mean, which nobody read. */
export const withoutMean = (reading: Reading): Reading => {
  const [first, ...others] = takenOf(reading, "same");
  if (first === undefined || !isApart([first, ...others])) return reading;
  return {
    ...reading,
    item: { ...reading.item, value: first.item.value, apart: [...new Set(reading.repeats)] },
  };
};
