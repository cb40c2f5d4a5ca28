// The end gap of a ring opens with the circle that it lies in.

import { type Length, length } from "../../quantity/index.ts";

/** Δgap = π·ΔD; the ring follows the mean of the two directions at its depth. Printed rules are rounded: 0.003 in for each
 *  0.001 in, 0.08 mm for each 0.03 mm.
 *  @source geometry of a circle; Engine Builder June 2012 prints the rounded rules @checked data/reference/teardown-published.csv */
export const gapChange = (diameterChange: Length): Length => length(Math.PI * diameterChange);

/** ΔD = Δgap/π; the inverse of gapChange. */
export const diameterChange = (change: Length): Length => length(change / Math.PI);

/** The gap of the same ring in another bore, or at another depth. g' = g + π·(D' − D) */
export const gapInBore = (gap: Length, from: Length, to: Length): Length =>
  length(gap + gapChange(length(to - from)));

/** Taper of a bore by one ring at two depths, signed; wear of the ring cancels. D_top − D_bottom = (gap_top − gap_bottom)/π */
export const taperFromRing = (gapTop: Length, gapBottom: Length): Length =>
  diameterChange(length(gapTop - gapBottom));

/** Least gap where the maker names none: 0.0035 of the bore.
 *  @source Hastings, service tip on oversize cylinders @checked data/reference/teardown-published.csv */
export const leastRingGap = (bore: Length): Length => length(0.0035 * bore);
