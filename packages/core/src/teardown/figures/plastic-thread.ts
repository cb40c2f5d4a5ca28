// Plastic gauging thread: its volume stays and its length hardly changes, so the wider it is crushed the thinner it is.

import { type Area, type Length, area, length } from "../../quantity/index.ts";

/** Section of the thread before it is crushed. A = π·d²/4 round, side² square.
 *  @source the page of a thread seller, "how it works" @checked data/reference/teardown-published.csv */
export const threadSection = (thread: { readonly round: Length } | { readonly square: Length }): Area =>
  area("round" in thread ? (Math.PI / 4) * thread.round ** 2 : thread.square ** 2);

/** Clearance under a crushed thread. c = A/w; dc/dw = −c²/A: fine where c is small, coarse where it is large.
 *  A card is its own calibration: A = w·c of any of its marks.
 *  @param width - at the widest place, above 0 [m] @throws RangeError otherwise
 *  @source the page of a thread seller, "how it works" @checked data/reference/teardown-cases.json (computed) */
export const threadClearance = (section: Area, width: Length): Length => {
  if (!(width > 0)) throw new RangeError(`threadClearance: width must be above 0 m, got ${String(width)}`);
  return length(section / width);
};

/** A figure with its standard uncertainty [m]. */
export interface Sure {
  readonly value: Length;
  readonly uncertainty: Length;
}

/** Standard uncertainty of the clearance under a round thread. u(c) = c·√((2·u_d/d)² + (u_w/w)²)
 *  @source GUM, product of powers @checked data/reference/teardown-cases.json (computed) */
export const threadUncertainty = (diameter: Sure, width: Sure): Length => {
  const c = threadClearance(threadSection({ round: diameter.value }), width.value);
  return length(
    c * Math.hypot((2 * diameter.uncertainty) / diameter.value, Math.abs(width.uncertainty / width.value)),
  );
};

/** Share by which a strip reads low that lies beside the crown of an eccentric clearance. 1 − (1 + cos θ)/2, θ = 2·x/D:
 *  1.1 % of it at 6.35 mm off the crown of a 60 mm journal.
 *  @param diameter - of the journal, D [m]  @param off - along the surface from the crown, x [m]  @returns 0 … 1
 *  @checked data/reference/teardown-cases.json (computed) */
export const threadReadsLow = (diameter: Length, off: Length): number =>
  1 - (1 + Math.cos((2 * off) / diameter)) / 2;
