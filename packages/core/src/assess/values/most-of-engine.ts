// The most that a cylinder makes while cranking: above it no cause is drawn from a reading.

import type { Ignition } from "../../record/index.ts";

/** [Pa gauge]; judgement, no source: makers state 1 to 1.5 MPa for spark engines and 2 to 4 MPa for diesels. Where the ignition
 *  is not known the larger counts. */
export const mostOfEngine: Readonly<Record<Ignition, number>> = {
  spark: 2.5e6,
  compression: 7e6,
  unknown: 7e6,
};
