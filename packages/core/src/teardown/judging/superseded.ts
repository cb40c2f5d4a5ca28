// Readings that a later one took the place of: a part that was cleaned, renewed or machined since, or a slip that was mended.

import type { PartState } from "../../record/index.ts";
import { isSamePlace } from "../places.ts";
import type { SupersededBy, TeardownItem } from "../teardown.ts";

/** How far the work had come. What was cleaned takes the place of what was found at the same place; a new part or a machined
 *  one that of all that was measured of the old one. */
const stages: Readonly<Record<PartState, number>> = {
  "as found": 0,
  cleaned: 1,
  "new part": 2,
  "after machining": 2,
};

/** The thing that is replaced as one: a ring of several on a piston, else the part. */
export const pieceOf = ({ part, label, at }: Pick<TeardownItem, "part" | "label" | "at">): string =>
  [part, label, part === "ring" || part === "housing" ? at?.split("/")[0] : undefined].join("|");

interface Read {
  readonly item: TeardownItem;
}

interface Taken<R extends Read> {
  readonly reading: R;
  /** A row behind stands instead of it. */
  readonly isReplaced: boolean;
}

/** In the order of measuring. */
export const withSuperseded = <R extends Read>(taken: readonly Taken<R>[]): readonly R[] => {
  const standing = taken.filter(({ isReplaced }) => !isReplaced).map(({ reading }) => reading);
  return taken.map(({ reading, isReplaced }) => {
    const by = isReplaced ? insteadOf(reading, standing) : laterState(reading, standing);
    return by === undefined
      ? reading
      : { ...reading, item: { ...reading.item, superseded: true, supersededBy: by } };
  });
};

const insteadOf = ({ item }: Read, standing: readonly Read[]): SupersededBy => ({
  by: "instead",
  state: item.state,
  ...valueAt(
    item,
    standing.filter((other) => other.item.state === item.state),
  ),
});

const laterState = (reading: Read, standing: readonly Read[]): SupersededBy | undefined => {
  const { item } = reading;
  const own = standing.filter((other) => pieceOf(other.item) === pieceOf(item));
  const later = standing.slice(standing.indexOf(reading) + 1).filter((other) => own.includes(other));
  const stage = stages[item.state];
  const [first] =
    stage < 2
      ? own.filter((other) => stages[other.item.state] === 2 || isCleanedSince(item, other.item))
      : later.filter((other) => stages[other.item.state] === 2 && other.item.state !== item.state);
  if (first === undefined) return undefined;
  const { state } = first.item;
  return {
    by: "state",
    state,
    ...valueAt(
      item,
      own.filter((other) => other.item.state === state),
    ),
  };
};

const isCleanedSince = (item: TeardownItem, other: TeardownItem): boolean =>
  stages[other.state] > stages[item.state] && other.quantity === item.quantity && other.at === item.at;

const valueAt = (item: TeardownItem, readings: readonly Read[]): Pick<SupersededBy, "value"> => {
  const now = readings.find((other) => isSamePlace(other.item, item));
  return now === undefined ? {} : { value: now.item.value };
};
