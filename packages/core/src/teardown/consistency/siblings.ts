// A figure against the same figure of the other cylinders or journals: slips of a micrometer and of the eye, or only apart.

import type { Engine } from "../../record/index.ts";
import { median, scaledMad } from "../../statistics/index.ts";
import { lengthText } from "../length-text.ts";
import { isFellow, partNamed, placeNamed, placeOnly } from "../places.ts";
import type { TeardownConflict, TeardownItem } from "../teardown.ts";
import { middleFor } from "./middle.ts";
import { offOwn } from "./own-figures.ts";
import { standsOff, swapsTowards, turnTowards } from "./slips.ts";

type Sized = Pick<Engine, "clearances">;
const nothingKnown: Sized = { clearances: [] };

/** A diameter that is off by one turn of the instrument: no wear goes so far. */
export const wholeTurn = (
  item: TeardownItem,
  items: readonly TeardownItem[],
  engine: Sized = nothingKnown,
): TeardownConflict | undefined => {
  const middle = middleFor(item, items, engine);
  const turn = middle === undefined ? undefined : turnTowards(item, middle);
  if (turn === undefined) return undefined;
  return {
    code: "whole-turn",
    ...placeOnly(item),
    quantity: item.quantity,
    text: `${placeNamed(item)} ${lengthText(item.value, item.unit)} is off the others by ${turn.text}`,
    mend: `was it ${lengthText(turn.meant, item.unit)}? Measure it again`,
    meant: [turn.meant],
    weight: "conflict",
  };
};

/** A diameter whose figures may stand in each other's place. Wear can have made it too: its verdict stands. Nobody swaps two
 *  figures of one part the same way: a second one off to that side is wear. */
export const swappedDigits = (
  item: TeardownItem,
  items: readonly TeardownItem[],
  engine: Sized = nothingKnown,
): TeardownConflict | undefined => {
  const middle = middleFor(item, items, engine);
  const meant = middle === undefined ? [] : swapsTowards(item, middle);
  if (middle === undefined || meant.length === 0) return undefined;
  const side = standsOff(item, middle);
  const isAllOver = items.some((other) => {
    if (other === item || other.part !== item.part || other.label !== item.label) return false;
    const own = other.quantity === item.quantity ? middleFor(other, items, engine) : undefined;
    return own !== undefined && standsOff(other, own) === side;
  });
  if (isAllOver) return undefined;
  return {
    code: "swapped-digits",
    ...placeOnly(item),
    quantity: item.quantity,
    text: `${placeNamed(item)} ${lengthText(item.value, item.unit)} is ${lengthText(Math.abs(item.value - middle), item.unit)} off the others`,
    mend: `two figures swapped: was ${meant.map((value) => lengthText(value, item.unit)).join(" or ")} meant? Else measure it once more before going by it`,
    meant,
    weight: "doubtful",
  };
};

/** @source handbook/teardown.md 4.3 (judgement) */
const apart = { spreads: 5, uncertainties: 4, least: 4 } as const;

/** Figures far from those of the other cylinders, by the others' own scatter and by what the instrument explains, or from all
 *  others of their own part. A part that stands out at several places is worn or made so, one reading does not prove it wrong:
 *  it is left alone. */
export const apartFromSiblings = (items: readonly TeardownItem[]): readonly TeardownConflict[] => {
  const far = items.flatMap((item) => {
    const values = [item, ...items.filter((one) => isFellow(item, one))].map(({ value }) => value);
    if (values.length < apart.least) return [];
    const off = item.value - median(values);
    const isFar =
      Math.abs(off) > apart.spreads * scaledMad(values) &&
      Math.abs(off) > apart.uncertainties * item.uncertainty;
    return isFar ? [{ item, off }] : [];
  });
  const isAlone = ({ item, off }: (typeof far)[number]): boolean =>
    !far.some(
      (other) =>
        other.item !== item &&
        other.item.part === item.part &&
        other.item.label === item.label &&
        other.item.quantity === item.quantity &&
        other.off > 0 === off > 0,
    );
  const told = far.filter(isAlone);
  const ofOwn = items.flatMap((item) => {
    const off = told.some((one) => one.item === item) ? undefined : offOwn(item, items);
    return off === undefined ? [] : [standsApart(item, off, `the other figures of ${partNamed(item)}`)];
  });
  return [...ofOwn, ...told.map(({ item, off }) => standsApart(item, off, "the others"))];
};

const standsApart = (item: TeardownItem, off: number, others: string): TeardownConflict => ({
  code: "apart-from-siblings",
  ...placeOnly(item),
  quantity: item.quantity,
  text: `${placeNamed(item)} ${item.quantity} ${lengthText(item.value, item.unit)} stands ${lengthText(Math.abs(off), item.unit)} ${off > 0 ? "above" : "below"} ${others}`,
  mend: "it may be so: measure it once more before going by it",
  weight: "doubtful",
});
