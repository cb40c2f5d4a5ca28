// What a cranking speed that was not brought to the reference speed may do to a reading.

import type { Volume } from "../../quantity/index.ts";
import { type IgnitionKind, usualLossSpeed } from "./loss-speed.ts";

/** Standard uncertainty of ln P where the cranking speed is not corrected: N_s/(N + N_s/2) · 0.16, with the usual loss speed
 *  N_s and N = 250 rpm known to 40 rpm. Where the speed is known and yet refused, no less than what the usual loss makes of
 *  its distance to the reference: N_s/(N + N_s/2) · |ln N/N_ref|.
 *  @param known - the speed of the test and the reference speed [rpm]
 *  @source cycle model of the handbook (computed, no published figure) */
export const speedDoubt = (
  ignition: IgnitionKind,
  swept?: Volume,
  known?: { readonly from: number; readonly to: number },
): number => {
  const { value } = usualLossSpeed(ignition, swept);
  const blank = (value / (250 + value / 2)) * 0.16;
  if (known === undefined || !(known.from > 0) || !(known.to > 0)) return blank;
  return Math.max(blank, (value / (known.from + value / 2)) * Math.abs(Math.log(known.from / known.to)));
};

/** ln of what the usual loss makes of a reading taken at one speed in place of another:
 *  2 ln((1 + N_s/2N_to)/(1 + N_s/2N_from)), below 0 where it was taken slower.
 *  @param step - both speeds above 0 [rpm]
 *  @source cycle model of the handbook (computed, no published figure) */
export const usualSpeedEffect = (
  ignition: IgnitionKind,
  swept: Volume | undefined,
  { from, to }: { readonly from: number; readonly to: number },
): number => {
  const { value } = usualLossSpeed(ignition, swept);
  return 2 * Math.log((1 + value / (2 * to)) / (1 + value / (2 * from)));
};
