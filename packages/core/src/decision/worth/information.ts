// What finding out more is worth before deciding between two acts.

import { normalCdf, normalQuantile } from "../../statistics/index.ts";
import { bivariateNormal } from "./bivariate-normal.ts";

export interface Information {
  /** Chance that the answer turns the choice. */
  readonly change: number;
  /** Worth of the test, as a share of K. */
  readonly evsi: number;
  /** Worth of knowing for certain, as a share of K: no test of any kind is worth more. */
  readonly evpi: number;
}

/** The level at the horizon is taken as normal, the test takes away the share rho^2 of its variance:
 *  z_c = (z_p - sqrt(1 - rho^2) z*)/rho,
 *  EVSI/K = Phi2(z_p, z_c; rho) - p* Phi(z_c) - max(0, p - p*),  change = Phi(z_c) if p < p*, else 1 - Phi(z_c),
 *  EVPI/K = min(p (1 - p*), p* (1 - p)).
 *  @param p - chance of need, p* - at break-even; nothing to find out where either is 0 or 1 or beyond
 *  @param share - rho^2, 0 to 1
 *  @source handbook/decision.md 5 (derived; checked there against quadrature) */
export const informationOf = (p: number, breakEven: number, share: number): Information => {
  const open = (chance: number): boolean => chance > 0 && chance < 1;
  if (!open(p) || !open(breakEven)) return { change: 0, evsi: 0, evpi: 0 };
  const evpi = Math.min(p * (1 - breakEven), breakEven * (1 - p));
  if (share <= 0) return { change: 0, evsi: 0, evpi };
  if (share >= 1) return { change: p < breakEven ? p : 1 - p, evsi: evpi, evpi };
  const rho = Math.sqrt(share);
  const need = normalQuantile(p);
  const cut = (need - Math.sqrt(1 - share) * normalQuantile(breakEven)) / rho;
  const acts = normalCdf(cut);
  const evsi = bivariateNormal(need, cut, rho) - breakEven * acts - Math.max(0, p - breakEven);
  return {
    change: p < breakEven ? acts : 1 - acts,
    // rounding can carry it past the ends
    evsi: Math.min(evpi, Math.max(0, evsi)),
    evpi,
  };
};
