// The smallest undersize that cleans up every main, or every pin.

import { type Length, length } from "../../quantity/index.ts";
import type { LengthUnit } from "../../record/index.ts";
import type { Undersize } from "../asked-for.ts";
import { inSystem, smallestOffered } from "./offered.ts";

/** Taken off to clean the journal up where the shop says nothing: 0.05 mm or 0.002 in on the diameter (judgement). */
export const usualGrindStock = (unit: LengthUnit): Length => inSystem(unit, { mm: 0.05, in: 0.002 });

/** How far under the top of the standard range a journal ends up. u_need = J_high − (J_min − k)
 *  @param high - top of the standard range [m]  @param smallest - smallest reading [m]  @param stock - to clean, k [m]
 *  @source geometry @checked data/reference/teardown-cases.json (computed) */
const neededUndersize = (high: Length, smallest: Length, stock: Length): Length =>
  length(high - (smallest - stock));

export interface UndersizeQuestion {
  readonly part: "main" | "pin";
  readonly journals: readonly { readonly label: string; readonly smallest: Length }[];
  /** The standard range. */
  readonly low: Length;
  readonly high: Length;
  readonly offered: readonly Length[];
  readonly unit: LengthUnit;
  /** On the diameter; usualGrindStock where not given. */
  readonly stock?: Length;
  /** Of the shaft, half its runout: it has to come off as well. */
  readonly bend?: Length;
}

/** One size for all journals of a kind, by the one that needs most (grind all of a kind: TM 5-3805-262-34); mains and
 *  pins are chosen apart. Undefined without a journal.
 *  @source undersizes of standard ranges: TM 5-3805-262-34 p. 4-24, TM 10-3930-638-24&P p. 4-29
 *  @checked data/reference/teardown-published.csv, data/reference/teardown-cases.json (computed) */
export const chooseUndersize = (question: UndersizeQuestion): Undersize | undefined => {
  const { part, journals, low, high, offered, unit, stock = usualGrindStock(unit), bend } = question;
  const worst = [...journals].sort((a, b) => a.smallest - b.smallest)[0];
  if (worst === undefined) return undefined;
  const needed = neededUndersize(high, worst.smallest, length(stock + (bend ?? 0)));
  const size = smallestOffered(offered, needed);
  return {
    part,
    unit,
    needed,
    decidedBy: worst.label,
    ...(size === undefined ? {} : { size, ...underRange({ low, high }, size) }),
  };
};

/** The range of a size: J_low − u … J_high − u. */
export const underRange = (
  standard: { readonly low: Length; readonly high: Length },
  size: Length,
): { readonly low: Length; readonly high: Length } => ({
  low: length(standard.low - size),
  high: length(standard.high - size),
});

/** Best target with new shells torqued in the bearing: ground to its bore − the clearance wanted.
 *  @source Infiniti EX35 2012 */
export const grindTo = (bearing: Length, clearanceWanted: Length): Length =>
  length(bearing - clearanceWanted);
