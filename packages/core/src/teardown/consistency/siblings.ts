// A figure against the same figure of the other cylinders or journals: slips of a micrometer and of the eye, or only apart.

import { length } from "../../quantity/index.ts";
import { median, scaledMad } from "../../statistics/index.ts";
import { lengthNumber, lengthText } from "../length-text.ts";
import { isFellow, isSize, placeNamed, placeOnly } from "../places.ts";
import type { TeardownConflict, TeardownItem } from "../teardown.ts";

/** So many others at least, before their middle is one (judgement). */
const others = 2;

const middleOfFellows = (item: TeardownItem, items: readonly TeardownItem[]): number | undefined => {
  const fellows = items.filter((one) => isFellow(item, one)).map(({ value }) => value);
  return fellows.length < others ? undefined : median(fellows);
};

interface Turn {
  /** [m] */
  readonly size: number;
  readonly text: string;
  readonly fits: (item: TeardownItem) => boolean;
}

const isInch = ({ unit }: TeardownItem): boolean => unit === "in" || unit === "thou";
const isBy = ({ instrument = "" }: TeardownItem, name: string): boolean => instrument.includes(name);

/** One turn of the thimble or of the dial. @source a metrology post (0.025 in, 0.100 in); the metric half: common practice */
const turns: readonly Turn[] = [
  {
    size: 0.000635,
    text: "0.025 in, one turn of an inch micrometer",
    fits: (item) => isInch(item) && !isBy(item, "caliper"),
  },
  {
    size: 0.00254,
    text: "0.100 in, one turn of a dial caliper",
    fits: (item) => isInch(item) && isBy(item, "caliper"),
  },
  {
    size: 0.0005,
    text: "0.5 mm, one turn of a micrometer",
    fits: (item) => !isInch(item) && !isBy(item, "caliper"),
  },
];
/** Of the turn: what the cylinders may differ besides. @source handbook/teardown.md 4.3 */
const turnPlay = 0.08;

/** A diameter that is off by one turn of the instrument. */
export const wholeTurn = (
  item: TeardownItem,
  items: readonly TeardownItem[],
): TeardownConflict | undefined => {
  const middle = middleOfFellows(item, items);
  if (middle === undefined || !isSize(item)) return undefined;
  const off = item.value - middle;
  const turn = turns.find(
    ({ size, fits }) => fits(item) && Math.abs(Math.abs(off) - size) <= turnPlay * size,
  );
  if (turn === undefined) return undefined;
  const meant = length(item.value - Math.sign(off) * turn.size);
  return {
    code: "whole-turn",
    ...placeOnly(item),
    quantity: item.quantity,
    text: `${placeNamed(item)} ${lengthText(item.value, item.unit)} is off the others by ${turn.text}`,
    mend: `was it ${lengthText(meant, item.unit)}? Measure it again`,
    meant: [meant],
    weight: "conflict",
  };
};

/** How near the middle a swap has to land. [m] @source handbook/teardown.md 4.3 (judgement) */
const swapLands = 0.00005;

/** A diameter whose figures stand in each other's place: 85.62 for 86.52. */
export const swappedDigits = (
  item: TeardownItem,
  items: readonly TeardownItem[],
): TeardownConflict | undefined => {
  const middle = middleOfFellows(item, items);
  if (middle === undefined || item.readings > 1 || !isSize(item)) return undefined;
  if (Math.abs(item.value - middle) <= Math.max(swapLands, 4 * item.uncertainty)) return undefined;
  const text = lengthNumber(item.value, item.unit);
  const scale = item.value / Number(text);
  const meant = swaps(text)
    .map((swap) => length(Number(swap) * scale))
    .filter((value) => Math.abs(value - middle) <= swapLands);
  if (meant.length === 0) return undefined;
  return {
    code: "swapped-digits",
    ...placeOnly(item),
    quantity: item.quantity,
    text: `${placeNamed(item)} ${lengthText(item.value, item.unit)} is ${lengthText(Math.abs(item.value - middle), item.unit)} off the others`,
    mend: `two figures swapped: was ${meant.map((value) => lengthText(value, item.unit)).join(" or ")} meant?`,
    meant,
    weight: "conflict",
  };
};

/** Every number that one swap of two neighbouring figures makes; the point stays where it is. */
export const swaps = (text: string): readonly string[] => {
  const places = [...text].flatMap((sign, at) => (/\d/.test(sign) ? [at] : []));
  return places.slice(1).flatMap((b, i) => {
    const a = places[i] ?? b;
    const signs = [...text];
    [signs[a], signs[b]] = [signs[b] ?? "", signs[a] ?? ""];
    const swapped = signs.join("");
    return swapped === text ? [] : [swapped];
  });
};

/** @source handbook/teardown.md 4.3 (judgement) */
const apart = { spreads: 5, uncertainties: 4, least: 4 } as const;

/** Figures far from those of the other cylinders, by the others' own scatter and by what the instrument explains. A part that
 *  stands out at several places is worn or made so, one reading does not prove it wrong: it is left alone. */
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
  return far.filter(isAlone).map(({ item, off }): TeardownConflict => ({
    code: "apart-from-siblings",
    ...placeOnly(item),
    quantity: item.quantity,
    text: `${placeNamed(item)} ${item.quantity} ${lengthText(item.value, item.unit)} stands ${lengthText(Math.abs(off), item.unit)} ${off > 0 ? "above" : "below"} the others`,
    mend: "it may be so: measure it once more before going by it",
    weight: "doubtful",
  }));
};
