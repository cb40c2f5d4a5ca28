// One place read twice, and the two further apart than the instrument explains: a slip and its mend are never averaged.

import type { Engine } from "../../record/index.ts";
import { lengthNumber, lengthText } from "../length-text.ts";
import type { Reading } from "../judging/readings.ts";
import { isSamePlace, placeNamed, placeOnly } from "../places.ts";
import type { TeardownConflict, TeardownItem } from "../teardown.ts";
import { insteadLine } from "../typing/instead-line.ts";
import { slipsInto } from "./cannot-be.ts";
import { middleFor, standardFor } from "./middle.ts";
import { plausibleFor } from "./plausible.ts";
import { slipsTowards, swapped } from "./slips.ts";

type Sized = Pick<Engine, "clearances" | "geometry">;

/** One time that a place was read. */
interface Taken {
  /** The figure as if it had been read this once. */
  readonly item: TeardownItem;
  /** What repeats do not share; between two instruments all of it. [m] */
  readonly read: number;
}

/** Standard uncertainties that two readings may be apart (judgement). */
const most = 4;

/** @param readings - of parts as they are now, by whatever instrument */
export const repeatsApart = (readings: readonly Reading[], engine: Sized): readonly TeardownConflict[] => {
  const places = readings.filter(
    ({ item }, i) => readings.findIndex((one) => isSamePlace(one.item, item)) === i,
  );
  return places.flatMap(({ item }) => {
    const own = readings.filter((one) => isSamePlace(one.item, item));
    const taken = own.flatMap((one) => takenOf(one, own.length === 1 ? "same" : "several"));
    return isApart(taken) ? [conflictOf(item, taken, { readings, engine })] : [];
  });
};

const takenOf = ({ item, instrument, repeats }: Reading, tools: "same" | "several"): readonly Taken[] =>
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

const isApart = (taken: readonly Taken[]): boolean =>
  taken.some((one, i) => taken.slice(i + 1).some((other) => areApart(one, other)));

const areApart = (one: Taken, other: Taken): boolean =>
  Math.abs(one.item.value - other.item.value) > most * Math.hypot(one.read, other.read);

/** A reading whose repeats cannot all be right stands with each of them and without a mean, which nobody read. */
export const withoutMean = (reading: Reading): Reading => {
  const [first, ...others] = takenOf(reading, "same");
  if (first === undefined || !isApart([first, ...others])) return reading;
  return {
    ...reading,
    item: { ...reading.item, value: first.item.value, apart: [...new Set(reading.repeats)] },
  };
};

interface Beside {
  readonly readings: readonly Reading[];
  readonly engine: Sized;
}

const conflictOf = (
  item: TeardownItem,
  taken: readonly Taken[],
  { readings, engine }: Beside,
): TeardownConflict => {
  const { unit } = item;
  const values = [...new Set(taken.map((one) => lengthNumber(one.item.value, unit)))];
  const others = readings.map((one) => one.item);
  const slip = taken.flatMap((one) => slipOf(one, taken, { others, engine })).at(0);
  return {
    code: "repeats-apart",
    ...placeOnly(item),
    quantity: item.quantity,
    text: `${placeNamed(item)} was read ${values.join(" and ")} ${unit}: they cannot ${values.length > 2 ? "all" : "both"} be right`,
    mend:
      slip === undefined
        ? `measure it again, then type \`${insteadLine(item)}\` with what it reads`
        : `${lengthText(slip.item.value, unit)} is ${slip.how}: type \`${insteadLine(item, slip.right)}\``,
    ...(slip === undefined ? {} : { meant: [slip.meant] }),
    weight: "conflict",
  };
};

/** The one that stands off, where a slip brings it to another of them: a swap to the very figures that were read, for one that
 *  only lands near them would have a worn part typed sound. */
const slipOf = (
  { item }: Taken,
  taken: readonly Taken[],
  { others, engine }: { readonly others: readonly TeardownItem[]; readonly engine: Sized },
) => {
  const [plausible] = plausibleFor(item, engine);
  const middle = middleFor(item, others, engine) ?? standardFor(item, engine);
  const slips = [
    ...(plausible === undefined ? [] : slipsInto(item.value, plausible)),
    ...slipsTowards(item, middle),
  ];
  return slips.flatMap(({ value, how }) => {
    const right = taken.find(
      (one) =>
        one.item !== item &&
        (how === swapped
          ? lengthNumber(one.item.value, item.unit) === lengthNumber(value, item.unit)
          : Math.abs(one.item.value - value) <= most * Math.SQRT2 * one.read),
    );
    return right === undefined ? [] : [{ item, how, meant: right.item.value, right: right.item.value }];
  });
};
