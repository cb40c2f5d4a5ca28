// Sizes that can be bought: the smallest that does.

import { type Length, length, toSi } from "../../quantity/index.ts";
import type { LengthUnit } from "../../record/index.ts";

/** Sums of sizes are not exact in binary; nothing is measured to a millionth of a millimetre. */
const slack = 1e-9;

/** Whether a size reaches what is needed, exactly equal ones included. */
export const reaches = (size: Length, needed: Length): boolean => size >= needed - slack;

/** The smallest offered size at or above `needed`; undefined where none is. */
export const smallestOffered = (offered: readonly Length[], needed: Length): Length | undefined =>
  [...offered].sort((a, b) => a - b).find((size) => reaches(size, needed));

/** A size in the system that the sizes are offered in: 0.25 mm is not 0.010 in. */
export const inSystem = (unit: LengthUnit, sizes: { readonly mm: number; readonly in: number }): Length =>
  length(unit === "in" || unit === "thou" ? toSi(sizes.in, "in") : toSi(sizes.mm, "mm"));
