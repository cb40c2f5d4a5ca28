// What a figure is compared with, when a slip is looked for: its fellows, those first that lie where the maker's sizes are.

import type { Engine } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import { isFellow } from "../places.ts";
import type { TeardownItem } from "../teardown.ts";

type Sized = Pick<Engine, "clearances">;

/** So many others at least, before their middle is one (judgement). */
const others = 2;

interface Band {
  readonly low: number;
  readonly high: number;
  /** Of the new limit. */
  readonly middle: number;
}

/** Undefined where nothing tells what is right: no fellows, or a figure where it should be among others that are not. With two
 *  slips the right ones are not the ones to ask about. */
export const middleFor = (
  item: TeardownItem,
  items: readonly TeardownItem[],
  engine: Sized,
): number | undefined => {
  const fellows = items.filter((one) => isFellow(item, one)).map(({ value }) => value);
  const band = bandOf(item, engine);
  const right = band === undefined ? [] : fellows.filter((value) => isIn(value, band));
  if (band !== undefined && isIn(item.value, band)) return right.length < others ? undefined : median(right);
  if (right.length > 0) return median(right);
  return fellows.length < others ? undefined : median(fellows);
};

/** The middle of the new limit. */
export const standardFor = (item: TeardownItem, engine: Sized): number | undefined =>
  bandOf(item, engine)?.middle;

const isIn = (value: number, { low, high }: Band): boolean => value >= low && value <= high;

/** Wear that may be: 0.2 mm of a bore, 0.1 mm of a journal, where no wear limit says more (judgement). [m] */
const worn: Readonly<Record<string, readonly [below: number, above: number]>> = {
  bore: [0.02e-3, 0.2e-3],
  main: [0.1e-3, 0.02e-3],
  pin: [0.1e-3, 0.02e-3],
};

const bandOf = ({ part, quantity }: TeardownItem, { clearances }: Sized): Band | undefined => {
  const play = worn[part];
  if (play === undefined || quantity !== "diameter") return undefined;
  const own = clearances.filter((limit) => limit.part === part && limit.quantity === "diameter");
  const fresh = own.find((limit) => limit.new !== undefined)?.new;
  const low = fresh?.low ?? fresh?.high;
  const high = fresh?.high ?? fresh?.low;
  if (low === undefined || high === undefined) return undefined;
  const may = own.find((limit) => limit.wear !== undefined)?.wear;
  return {
    low: Math.min(may?.low ?? low - play[0], low - play[0]),
    high: Math.max(may?.high ?? high + play[1], high + play[1]),
    middle: (low + high) / 2,
  };
};
