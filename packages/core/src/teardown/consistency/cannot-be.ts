// Figures that cannot be: outside of what the part can measure, with the slips of the pen that would bring them back inside.

import { length } from "../../quantity/index.ts";
import type { Engine } from "../../record/index.ts";
import { lengthText, rangeText } from "../length-text.ts";
import { valueText } from "../judging/figure-text.ts";
import { partNamed, placeNamed, placeOnly } from "../places.ts";
import type { TeardownConflict, TeardownItem } from "../teardown.ts";
import { insteadLine } from "../typing/instead-line.ts";
import { besideIt, offOwn } from "./own-figures.ts";
import { type Plausible, plausibleFor } from "./plausible.ts";
import { slipsTowards } from "./slips.ts";

/** What a hand does to a number: a decimal point or two astray, the wrong unit, thousandths for whole ones.
 *  @source handbook/teardown.md 4.3 (judgement) */
const slips = [
  { factor: 0.1, how: "a decimal place" },
  { factor: 10, how: "a decimal place" },
  { factor: 0.01, how: "two decimal places" },
  { factor: 100, how: "two decimal places" },
  { factor: 25.4, how: "written in inches" },
  { factor: 1 / 25.4, how: "written in millimetres" },
  { factor: 0.001, how: "written in thousandths" },
] as const;

export interface SlipMeant {
  readonly value: number;
  readonly how: string;
}

/** Every slip that lands inside; none where the value itself is inside. */
export const slipsInto = (
  value: number,
  { low, high }: Pick<Plausible, "low" | "high">,
): readonly SlipMeant[] =>
  isInside(value, { low, high })
    ? []
    : slips
        .map(({ factor, how }) => ({ value: value * factor, how }))
        .filter((meant) => isInside(meant.value, { low, high }));

/** Bounds belong to it, whatever the last binary digit; a gap may be nothing, a size not. */
const isInside = (value: number, { low, high }: Pick<Plausible, "low" | "high">): boolean => {
  const play = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
  return (value > 0 || low === 0) && value >= low - play && value <= high + play;
};

interface Beside {
  /** Of what it is compared with [m]. */
  readonly middle?: number | undefined;
  /** Figures of the same engine that can be. */
  readonly others?: readonly TeardownItem[];
}

/** Of a measured figure; undefined where it can be, or where nothing is known to judge by. */
export const impossible = (
  item: TeardownItem,
  engine: Pick<Engine, "clearances" | "geometry">,
  { middle, others = [] }: Beside = {},
): TeardownConflict | undefined => {
  if (item.value < 0 && item.quantity === "runout") return belowNothing(item);
  const bands = plausibleFor(item, engine, others);
  const value = item.between?.low === 0 ? item.between.high : item.value;
  const plausible = bands.find((band) => !isInside(value, band));
  if (plausible === undefined) return undefined;
  const { unit } = item;
  // what was written in a unit is no slip of that unit
  const own = unit === "in" || unit === "thou" ? "written in inches" : "written in millimetres";
  const fits = (meantValue: number): boolean =>
    bands.every((band) => isInside(meantValue, band)) &&
    // a mend that is asked about as soon as it is typed is none
    offOwn({ ...item, value: length(meantValue) }, others) === undefined;
  const meant = [
    ...slipsInto(item.value, plausible).filter(({ how }) => how !== own),
    ...slipsTowards(item, middle),
  ].filter((slip) => fits(slip.value));
  const range = `${rangeText(plausible.low, plausible.high, unit)}, by ${plausible.from}`;
  const [only, ...more] = meant;
  const isLikely = only !== undefined && more.length === 0;
  const right = isLikely ? only.value : undefined;
  return {
    code: isLikely ? "likely-slip" : "cannot-be",
    ...placeOnly(item),
    quantity: item.quantity,
    text: `${placeNamed(item)} ${item.quantity} ${valueText(item)} cannot be: expected ${range}`,
    mend:
      only === undefined
        ? `measure it again, then type \`${insteadLine(item)}\` with what it reads`
        : `was ${meant.map((slip) => `${lengthText(slip.value, unit)} (${slip.how})`).join(" or ")} meant? Look at the paper or measure it again, then type \`${insteadLine(item, right)}\`${isLikely ? "" : " with what is right"}`,
    ...(meant.length === 0 ? {} : { meant: meant.map(({ value }) => length(value)) }),
    weight: "conflict",
  };
};

const belowNothing = (item: TeardownItem): TeardownConflict => ({
  code: "cannot-be",
  ...placeOnly(item),
  quantity: item.quantity,
  text: `${placeNamed(item)} runout ${lengthText(item.value, item.unit)} is below nothing`,
  mend: "a runout is the whole swing of the needle, never signed: measure it again",
  weight: "conflict",
});

/** Figures that no one engine has, where nothing tells which of them is right: told of the part once. */
export const tooFarApart = (
  item: TeardownItem,
  others: readonly TeardownItem[],
): TeardownConflict | undefined => {
  const other = besideIt(item, others);
  if (other === undefined) return undefined;
  const isOwn = other.label === item.label;
  const { part, label, quantity } = item;
  const whose = isOwn ? (other.at ?? "the other") : placeNamed(other);
  return {
    code: "cannot-be",
    part,
    ...(label === undefined ? {} : { label }),
    quantity,
    text: `${placeNamed(item)} ${lengthText(item.value, item.unit)} and ${whose} ${lengthText(other.value, other.unit)} cannot both be of one ${isOwn ? part : "engine"}`,
    mend: `measure both again; the wrong one: type \`${insteadLine(item)}\` or \`${insteadLine(other)}\` with what it reads`,
    weight: "conflict",
  };
};

/** A bore this much wider at the bottom is choke, or two readings in each other's place. [m]
 *  @source handbook/teardown.md 4.3 (judgement) */
const choke = 0.00003;

/** Standard uncertainties that a bore may read smaller than where it never wore (judgement). */
const belowUnworn = 3;

/** A printed size that the bore is below is another matter: that bore was never larger. */
const isBelowUnworn = ({ value, uncertainty, from = "" }: TeardownItem): boolean =>
  value < -belowUnworn * uncertainty && from.includes("the unworn reading");

/** No two parts that run in each other leave so much, worn out as they may be; of the bore a piston may leave this share, where
 *  that is more (judgement). [m] */
const mostBetween: Readonly<Partial<Record<TeardownItem["part"], number>>> = {
  piston: 0.0026,
  "main bearing": 0.0015,
  "rod bearing": 0.0015,
  guide: 0.003,
};
const mostOfPiston = 0.03;

/** Of a figure made of others: a clearance of nothing or of too much, a bore that is tight at the top.
 *  @param size - of the hole, where that is known [m] */
export const impossibleDerived = (item: TeardownItem, size = 0): TeardownConflict | undefined => {
  const { unit } = item;
  const place = { ...placeOnly(item), quantity: item.quantity };
  const made = item.from === undefined ? "" : ` (${item.from})`;
  if (item.quantity === "clearance" && item.value <= 0)
    return {
      code: "cannot-be",
      ...place,
      text: `${partNamed(item)} clearance ${lengthText(item.value, unit)} cannot be: one part would not go into the other${made}`,
      mend: "one of the two figures is wrong or belongs to another place: measure both again",
      weight: "conflict",
    };
  const widest = Math.max(
    mostBetween[item.part] ?? Infinity,
    item.part === "piston" ? mostOfPiston * size : 0,
  );
  if (item.quantity === "clearance" && item.value > widest)
    return {
      code: "cannot-be",
      ...place,
      text: `${partNamed(item)} clearance ${lengthText(item.value, unit)} cannot be: more than any that is worn out${made}`,
      mend: "one of the two figures is wrong or belongs to another place: measure both again",
      weight: "conflict",
    };
  if (item.part === "bore" && item.quantity === "wear" && isBelowUnworn(item))
    return {
      code: "cannot-be",
      ...place,
      text: `${partNamed(item)} has worn ${lengthText(Math.abs(item.value), unit)} less than nothing${made}`,
      mend: "no bore wears smaller: measure the unworn spot and the bore again",
      weight: "conflict",
    };
  if (item.part === "bore" && item.quantity === "taper" && item.value < -choke)
    return {
      code: "cannot-be",
      ...place,
      text: `${partNamed(item)} is ${lengthText(Math.abs(item.value), unit)} wider at the bottom than at the top${made}`,
      mend: "bored with choke? Else top and bottom stand in each other's place: measure both again",
      weight: "doubtful",
    };
  return undefined;
};
