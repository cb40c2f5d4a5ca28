// Slips of the instrument and of the hand: one turn of the thimble too many, two figures in each other's place.

import { type Length, length } from "../../quantity/index.ts";
import { lengthNumber } from "../length-text.ts";
import { isSize } from "../places.ts";
import type { TeardownItem } from "../teardown.ts";

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

export interface TurnMeant {
  readonly meant: Length;
  /** `0.025 in, one turn of an inch micrometer` */
  readonly text: string;
}

/** What a diameter would be without the turn that it is off by.  @param middle - of what it is compared with [m] */
export const turnTowards = (item: TeardownItem, middle: number): TurnMeant | undefined => {
  if (!isSize(item)) return undefined;
  const off = item.value - middle;
  const turn = turns.find(
    ({ size, fits }) => fits(item) && Math.abs(Math.abs(off) - size) <= turnPlay * size,
  );
  return turn === undefined
    ? undefined
    : { meant: length(item.value - Math.sign(off) * turn.size), text: turn.text };
};

/** How a swap is told. */
export const swapped = "two figures swapped";

/** How near the middle a swap has to land. [m] @source handbook/teardown.md 4.3 (judgement) */
const swapLands = 0.00005;

/** Whether a reading is further off than a swap has to land, and to which side: -1, 0 or 1. */
export const standsOff = ({ value, uncertainty }: TeardownItem, middle: number): number =>
  Math.abs(value - middle) <= Math.max(swapLands, 4 * uncertainty) ? 0 : Math.sign(value - middle);

/** Diameters near the middle that one swap makes of a single reading: 85.62 for 86.52. */
export const swapsTowards = (item: TeardownItem, middle: number): readonly Length[] => {
  if (item.readings > 1 || !isSize(item)) return [];
  if (standsOff(item, middle) === 0) return [];
  const text = lengthNumber(item.value, item.unit);
  const scale = item.value / Number(text);
  return swaps(text)
    .map((swap) => length(Number(swap) * scale))
    .filter((value) => Math.abs(value - middle) <= swapLands);
};

/** Both, each as it is told: `86.52 mm (two figures swapped)`. */
export const slipsTowards = (
  item: TeardownItem,
  middle: number | undefined,
): readonly { readonly value: Length; readonly how: string }[] => {
  if (middle === undefined) return [];
  const turn = turnTowards(item, middle);
  return [
    ...(turn === undefined ? [] : [{ value: turn.meant, how: `off by ${turn.text}` }]),
    ...swapsTowards(item, middle).map((value) => ({ value, how: swapped })),
  ];
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
