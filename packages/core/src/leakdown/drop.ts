// The drop from supply to cylinder, and whether the two dials can show it.

import type { LeakReading } from "./alpha.ts";

/** Standard uncertainty of the drop [Pa]. */
export const dropUncertainty = ({ uSupply = 0, uCylinder = 0 }: LeakReading): number =>
  Math.hypot(uSupply, uCylinder);

/** P1 − P2 < 2·√(u1² + u2²), or nothing: no leak is shown, only how large it may be. @source handbook/leakdown.md H.2 (f) */
export const isWithinDials = (reading: LeakReading): boolean => {
  const drop = reading.supply - reading.cylinder;
  return drop <= 0 || drop < 2 * dropUncertainty(reading);
};
