// What a throttle that was not open takes from a reading. Only where somebody measured the pressure in the manifold.

import { type AbsolutePressure, type GaugePressure, gaugePressure } from "../../quantity/index.ts";

/** The reading of an engine that draws from a manifold below the air around it.
 *  P_g = k p_ivc − p_amb, so that a deficit of the manifold counts k/(k − 1) times.
 *  @param multiple - k, absolute pressure at top dead centre over that at intake closing; above 1
 *  @param manifold - at intake closing @param air - around the gauge @throws RangeError for a multiple of 1 or less
 *  @source a fixed multiple of the trapped air, derived in the handbook @checked tests/published/fill-and-oil.test.ts (computed) */
export const throttledReading = (
  multiple: number,
  manifold: AbsolutePressure,
  air: AbsolutePressure,
): GaugePressure => {
  if (!(multiple > 1))
    throw new RangeError(`throttledReading: multiple must be above 1, got ${String(multiple)}`);
  return gaugePressure(multiple * manifold - air);
};
