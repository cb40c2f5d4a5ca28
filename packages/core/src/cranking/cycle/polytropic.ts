// The simplest model of compression: one exponent for all losses.

import { type AbsolutePressure, absolutePressure } from "../../quantity/index.ts";

/** Pressure of a charge squeezed to 1/ratio of its volume. p = p_a r^n
 *  @param exponent - 1.4 without any loss, 1.2 to 1.3 usual  @source Pagé, Aviation Engines, 1917
 *  @checked data/reference/polytropic-examples.csv */
export const polytropicPressure = (
  before: AbsolutePressure,
  ratio: number,
  exponent: number,
): AbsolutePressure => absolutePressure(before * ratio ** exponent);

/** The exponent that one pressure after a squeeze shows. n = ln(p/p_a)/ln r
 *  @param ratio - above 1  @checked data/reference/polytropic-examples.csv */
export const apparentExponent = (before: AbsolutePressure, after: AbsolutePressure, ratio: number): number =>
  Math.log(after / before) / Math.log(ratio);
