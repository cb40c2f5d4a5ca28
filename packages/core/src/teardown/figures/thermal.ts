// A size is a size at 20 °C.

import { type Length, length } from "../../quantity/index.ts";

/** Expansion of an aluminium piston and of the steel of a micrometer [1/K], from memory. */
const expansion = { aluminium: 23e-6, steel: 11.5e-6 } as const;

/** How much too large a steel micrometer reads an aluminium piston when both are off 20 °C: D·(α_piston − α_steel)·ΔT,
 *  0.010 mm of 90 mm at 10 K. An iron part and a steel micrometer nearly cancel.
 *  @param above - of piston and micrometer over 20 °C, either sign [K]
 *  @source reference temperature ISO 1 (from memory) @checked data/reference/teardown-cases.json (computed) */
export const warmPistonError = (diameter: Length, above: number): Length =>
  length(diameter * (expansion.aluminium - expansion.steel) * above);
