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
