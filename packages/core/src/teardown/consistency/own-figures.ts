// Where a figure can be by the others that were measured on the same engine: of its own part, of its fellows, of what runs in it. One
// figure that most of the others speak against is the slip; where as many speak for it as against it, neither is.

import type { MeasuredPart } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import type { TeardownItem } from "../teardown.ts";

/** How far two figures of one engine may lie apart: so many metres, or this share of their size, whichever is more. */
interface Apart {
  readonly least: number;
  readonly share: number;
}

interface OwnBand {
  /** [m] */
  readonly low: number;
  readonly high: number;
  /** What it was taken from, as told to a mechanic. */
  readonly from: string;
}

/** Of one part at its places, and of one part and its fellows. Wear and grinding stand in it generously; mains of one crank may be
 *  made to several sizes, inlet and exhaust valves too (judgement). */
const apart: Readonly<Partial<Record<MeasuredPart, { readonly own: Apart; readonly fellows: Apart }>>> = {
  bore: { own: { least: 0.0016, share: 0.02 }, fellows: { least: 0.002, share: 0.03 } },
  piston: { own: { least: 0.0016, share: 0.03 }, fellows: { least: 0.002, share: 0.03 } },
  pin: { own: { least: 0.0011, share: 0.02 }, fellows: { least: 0.0012, share: 0.03 } },
  main: { own: { least: 0.0011, share: 0.02 }, fellows: { least: 0.0012, share: 0.4 } },
  "rod bearing": { own: { least: 0.0011, share: 0.02 }, fellows: { least: 0.0012, share: 0.03 } },
  "main bearing": { own: { least: 0.0011, share: 0.02 }, fellows: { least: 0.0012, share: 0.4 } },
  guide: { own: { least: 0.0015, share: 0.15 }, fellows: { least: 0.0015, share: 0.6 } },
  stem: { own: { least: 0.0015, share: 0.15 }, fellows: { least: 0.0015, share: 0.6 } },
};

/** So many others at least, before most of them say anything (judgement). */
const fewest = 2;

/** @param others - figures that can be, without it */
export const bandsOf = (item: TeardownItem, others: readonly TeardownItem[]): readonly OwnBand[] => {
  const kind = apartOf(item);
  if (kind === undefined) return [];
  const { own, fellows } = pools(item, others);
  const named = item.label === undefined ? item.part : `${item.part} ${item.label}`;
  const by = (values: readonly number[], within: Apart, from: string): readonly OwnBand[] => {
    const middle = most(values, within);
    return middle === undefined ? [] : [{ ...around(middle, within), from }];
  };
  return [
    ...by(own, kind.own, `the other figures of ${named}`),
    ...by(fellows, kind.fellows, `the other ${item.part}s`),
  ];
};

/** Of what the figures of one part may lie apart, how much one alone may stand off the others before it is asked about: no wear
 *  or taper of one part goes so far (judgement). */
const aloneShare = 0.25;

/** So many others of the part at least (judgement). */
const fewestOwn = 3;

/** How far a figure stands off the others of its own part, which agree: undefined where nothing tells, or where it does not.
 *  A piston is made smaller at the top: its heights say nothing of each other; below the others a
 *  bore may have its only spot that did not wear. [m]
 *  @param others - figures that can be; itself among them or not */
export const offOwn = (item: TeardownItem, others: readonly TeardownItem[]): number | undefined => {
  const kind = apartOf(item);
  if (kind === undefined || item.part === "piston") return undefined;
  const own = others.filter(
    (other) =>
      other.part === item.part &&
      other.label === item.label &&
      other.quantity === item.quantity &&
      other.state === item.state &&
      other.at !== item.at,
  );
  const values = own.map(({ value }) => value);
  if (values.length < fewestOwn) return undefined;
  const { low, high } = around(median(values), {
    least: aloneShare * kind.own.least,
    share: aloneShare * kind.own.share,
  });
  if (!values.every((value) => value >= low && value <= high)) return undefined;
  const isUnworn = item.part === "bore" && item.value < low;
  return isUnworn || (item.value >= low && item.value <= high) ? undefined : item.value - median(values);
};

/** Figures that lie further apart than one engine's can, where nothing tells which is right: of the same part, else of a fellow.
 *  @returns what it cannot stand beside; undefined where it can beside all */
export const besideIt = (item: TeardownItem, others: readonly TeardownItem[]): TeardownItem | undefined => {
  const kind = apartOf(item);
  if (kind === undefined || bandsOf(item, others).length > 0) return undefined;
  const alike = others.filter((other) => other.part === item.part && other.quantity === item.quantity);
  return alike.find((other) => {
    const within = other.label === item.label ? kind.own : kind.fellows;
    const { low, high } = around(other.value, within);
    return item.value < low || item.value > high;
  });
};

/** What most of some figures say; undefined where they do not agree, or are too few. */
export const most = (values: readonly number[], within: Apart): number | undefined => {
  if (values.length < fewest) return undefined;
  const middle = median(values);
  const { low, high } = around(middle, within);
  const agreeing = values.filter((value) => value >= low && value <= high).length;
  return agreeing * 2 > values.length ? middle : undefined;
};

/** Of diameters alone. */
const apartOf = ({ part, quantity }: TeardownItem) =>
  quantity === "diameter" || quantity === "bore" ? apart[part] : undefined;

const around = (middle: number, { least, share }: Apart) => {
  const by = Math.max(least, share * Math.abs(middle));
  return { low: middle - by, high: middle + by };
};

/** The figures of its own part, and of each fellow the middle one: who measured six places of one bore wrong outvotes nobody. */
const pools = (item: TeardownItem, others: readonly TeardownItem[]) => {
  const alike = others.filter(
    (other) => other !== item && other.part === item.part && other.quantity === item.quantity,
  );
  const labels = [...new Set(alike.map(({ label }) => label))].filter((label) => label !== item.label);
  const of = (label: string | undefined): readonly number[] =>
    alike.filter((other) => other.label === label).map(({ value }) => value);
  return { own: of(item.label), fellows: labels.map((label) => median(of(label))) };
};
