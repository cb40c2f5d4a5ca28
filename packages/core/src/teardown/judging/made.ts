// A figure with what it was made of: a reading, or a taper, a wear, a clearance worked out from several.

import { byKey } from "../../problem/index.ts";
import type { Length } from "../../quantity/index.ts";
import type { FigureKind, Instrument, Readings } from "../conformity/index.ts";
import { lengthNumber } from "../length-text.ts";
import type { TeardownItem } from "../teardown.ts";
import type { Reading } from "./reading.ts";

export interface Made {
  /** Verdicts are not in it yet. */
  readonly item: TeardownItem;
  readonly kind: FigureKind;
  readonly instrument?: Instrument;
  /** Of what was measured, not of the difference. [m] */
  readonly size?: Length;
  /** Readings that it stands and falls with; itself where it was read. */
  readonly sources: readonly TeardownItem[];
}

/** A clearance that was read by thread is settled as one that is made of bearing and journal. */
export const asMade = ({ item, instrument }: Reading): Made =>
  item.quantity === "thread clearance"
    ? { item, kind: "clearance", instrument, sources: [item] }
    : { item, kind: "reading", instrument, size: item.value, sources: [item] };

export const takenBy = ({ instrument, item }: Reading): Readings => ({ instrument, readings: item.readings });

interface Worth {
  readonly quantity: string;
  readonly value: Length;
  readonly uncertainty: Length;
  readonly at?: string;
  /** `top/thrust 86.62 less bottom/thrust 86.53`. */
  readonly from: string;
  readonly kind: FigureKind;
}

/** A figure of the part that the first reading is of. */
export const madeOf = (
  [first, ...others]: readonly [Reading, ...Reading[]],
  { quantity, value, uncertainty, at, from, kind }: Worth,
): Made => {
  const { part, label, unit, state, uncertaintyFrom, instrument } = first.item;
  return {
    item: {
      part,
      ...(label === undefined ? {} : { label }),
      ...(at === undefined ? {} : { at }),
      quantity,
      value,
      uncertainty,
      uncertaintyFrom,
      readings: Math.min(...[first, ...others].map(({ item }) => item.readings)),
      unit,
      ...(instrument === undefined ? {} : { instrument }),
      state,
      from,
      verdicts: [],
    },
    kind,
    instrument: first.instrument,
    size: first.item.value,
    sources: [first, ...others].map(({ item }) => item),
  };
};

/** `top/thrust 86.62`, in the unit that the result is told in. */
export const sourceText = ({ item }: Reading, unit = item.unit): string =>
  [item.at, lengthNumber(item.value, unit)].filter(Boolean).join(" ");

/** Readings of one part and quantity, by their labels in the order of measuring. */
export const byLabel = (
  readings: readonly Reading[],
  part: TeardownItem["part"],
  quantity: string,
): ReadonlyMap<string, readonly Reading[]> =>
  byKey(
    readings.filter(({ item }) => item.part === part && item.quantity === quantity),
    ({ item: { label = "" } }) => label,
  );
