// Engines whose oil use tells nothing of wear.

import type { Engine } from "./engine-types.ts";

/** Two-strokes that are lubricated by oil in their fuel, or by oil that is injected, burn it all by design; one that ignites by
 *  compression has a sump as a rule. Common practice, no source. */
export const burnsOil = ({ cycle, ignition }: Pick<Engine, "cycle" | "ignition">): boolean =>
  cycle === "two-stroke" && ignition !== "compression";
