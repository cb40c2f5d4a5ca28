// The smallest oversize that cleans up every bore.

import { type Length, length } from "../../quantity/index.ts";
import type { LengthUnit } from "../../record/index.ts";
import type { BarOffset, OversizeAnswer } from "../asked-for.ts";
import { guardFactor } from "../conformity/index.ts";
import { inSystem, reaches } from "./offered.ts";

/** Left on the diameter for the hone where the shop says nothing: 0.02 mm or 0.001 in (judgement; printed: up to 0.02 mm
 *  Chrysler Sebring 2000 and Hyundai Sonata 1997, 0.01 mm Kia Sedona 2004, 0.002 to 0.003 in oldengine.org). */
export const usualHoneStock = (unit: LengthUnit): Length => inSystem(unit, { mm: 0.02, in: 0.001 });

export interface WornBore {
  /** D_max [m]. */
  readonly largest: Length;
  /** Depth of the deepest score, s [m]. */
  readonly score?: Length;
  /** Standard uncertainty of D_max [m]. */
  readonly uncertainty?: Length;
}

/** How far the boring axis stands off the middle of the worn bore, e [m]. `worst`: all wear on one wall and the bar on the
 *  original axis, (D_max − original)/2; `none`: even wear, or the bar centred in the worn bore. */
export const barOffset = (offset: BarOffset, largest: Length, original: Length): Length => {
  if (typeof offset === "object") return offset.known;
  return length(offset === "none" ? 0 : Math.max(0, largest - original) / 2);
};

/** The diameter at which the last trace of wear is gone, stock for the hone included.
 *  D_need = D_max + 2e + 2s + h + U, U = 1.645·u: a guard for the reading, 95 % on one side
 *  @param original - of the bore before it wore [m]  @param honeStock - on the diameter, h [m]
 *  @source geometry; h as printed by makers (usualHoneStock) @checked data/reference/teardown-cases.json (computed) */
export const neededDiameter = (
  { largest, score, uncertainty }: WornBore,
  original: Length,
  { offset, honeStock }: { readonly offset: BarOffset; readonly honeStock: Length },
): Length =>
  length(
    largest +
      2 * barOffset(offset, largest, original) +
      2 * (score ?? 0) +
      honeStock +
      guardFactor * (uncertainty ?? 0),
  );

export interface OversizeQuestion {
  readonly cylinders: readonly (WornBore & { readonly label: string })[];
  /** Of the bores before they wore. Of an engine bored before: as it was bored. [m] */
  readonly original: Length;
  /** What the offered sizes count from, where it is not `original`: the standard size of an engine bored before. [m] */
  readonly nominal?: Length;
  readonly offered: readonly Length[];
  readonly offset: BarOffset;
  readonly honeStock: Length;
  /** Measured pistons in hand, by size, and the clearance that they are to have. */
  readonly pistons?: {
    readonly clearance: Length;
    readonly bySize: readonly { readonly size: Length; readonly diameter: Length }[];
  };
}

/** Finished diameter of a size: standard + oversize, or the measured piston + its clearance.
 *  @source Toro ("final bore = standard + oversize"); makers' manuals for the piston in hand */
const finishedOf = ({ nominal, original, pistons }: OversizeQuestion, size: Length): Length => {
  const piston = pistons?.bySize.find((one) => Math.abs(one.size - size) < 1e-6);
  return pistons === undefined || piston === undefined
    ? length((nominal ?? original) + size)
    : length(piston.diameter + pistons.clearance);
};

/** The smallest offered size for each bore alone and for all together, which is the largest of them: most makers bore all
 *  cylinders to one size (Kia, Hyundai, Suzuki, GM), some permit mixing (Johnson 10 hp). `size` is absent where one of
 *  them is not cleaned up by any. */
export const chooseOversize = (question: OversizeQuestion): OversizeAnswer => {
  const { cylinders, original, offered, offset, honeStock } = question;
  const rising = [...offered].sort((a, b) => a - b);
  const each = cylinders.map((cylinder) => {
    const needed = neededDiameter(cylinder, original, { offset, honeStock });
    const size = rising.find((one) => reaches(finishedOf(question, one), needed));
    return { label: cylinder.label, needed, ...(size === undefined ? {} : { size }) };
  });
  const sizes = each.flatMap(({ size }) => (size === undefined ? [] : [size]));
  const all = sizes.length === 0 || sizes.length < each.length ? undefined : length(Math.max(...sizes));
  const named = { offset: typeof offset === "object" ? "known" : offset, cylinders: each } as const;
  if (all === undefined) return named;
  const finished = finishedOf(question, all);
  return { ...named, size: all, finished, boreTo: length(finished - honeStock) };
};

/** Boring size for a piston in hand: P + C − H.
 *  @param clearanceWanted - C [m]  @param honeStock - on the diameter, H [m]
 *  @source a maker's engine manual; Chrysler Sebring 2000, Hyundai alike @checked data/reference/teardown-published.csv */
export const boringSize = (piston: Length, clearanceWanted: Length, honeStock: Length): Length =>
  length(piston + clearanceWanted - honeStock);

/** How near an unworn reading has to be to standard + oversize to look like it: 0.05 mm, judgement. */
const looksLike = 0.05e-3;

/** The oversize that an unworn reading looks like: the engine was bored before. Undefined where it looks like standard or
 *  like none that is offered. */
export const alreadyBored = (
  unworn: Length,
  nominal: Length,
  offered: readonly Length[],
): Length | undefined => {
  const over = unworn - nominal;
  const off = (size: number): number => Math.abs(over - size);
  const nearest = [...offered].sort((a, b) => off(a) - off(b))[0];
  return nearest === undefined || off(nearest) > looksLike || off(0) <= off(nearest) ? undefined : nearest;
};
