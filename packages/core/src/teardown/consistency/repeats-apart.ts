// One place read twice, and the two further apart than the instrument explains: a slip and its mend are never averaged.

import type { Engine } from "../../record/index.ts";
import { lengthNumber, lengthText } from "../length-text.ts";
import { type Reading, type Taken, isApart, mostApart, takenOf } from "../judging/reading.ts";
import { isSamePlace, placeNamed, placeOnly } from "../places.ts";
import type { TeardownConflict, TeardownItem } from "../teardown.ts";
import { insteadLine } from "../typing/instead-line.ts";
import { slipsInto } from "./cannot-be.ts";
import { middleFor, standardFor } from "./middle.ts";
import { plausibleFor } from "./plausible.ts";
import { slipsTowards, swapped } from "./slips.ts";

type Sized = Pick<Engine, "clearances" | "geometry">;

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
          : Math.abs(one.item.value - value) <= mostApart * Math.SQRT2 * one.read),
    );
    return right === undefined ? [] : [{ item, how, meant: right.item.value, right: right.item.value }];
  });
};
