// A reading on a tester whose restrictor nobody knows, told by the open holes that were read on it.

import { gaugePressure, length } from "../quantity/index.ts";
import type { LeakReading } from "./alpha.ts";
import { usualSupply } from "./dials.ts";
import { readingKind } from "./judge.ts";
import { type HoleOfReading, type HoleReading, holeFromKnownHoles, usualHalfWidth } from "./known-holes.ts";
import { masterMargin } from "./master.ts";

export interface HoleQuestion {
  /** In the kind of the reading. */
  readonly holes: readonly HoleReading[];
  readonly holds: "pressure" | "lost";
  /** Gauge pressure [Pa] or the fraction lost. */
  readonly value: number;
  /** Standard uncertainty of a dial [Pa]. */
  readonly uDial: number;
  /** The same as pressures, where the supply is known. */
  readonly reading?: LeakReading | undefined;
}

/** Two holes and more bracket the reading; one alone serves as a master, for which the supply must be known.
 *  @returns undefined where one hole tells nothing: no supply, or the reading is no leak that the dials can show
 *  @source handbook/leakdown.md H.2 (b), (d) */
export const holeByHoles = ({
  holes,
  holds,
  value,
  uDial,
  reading,
}: HoleQuestion): HoleOfReading | undefined => {
  const [only] = holes;
  if (only !== undefined && holes.length === 1)
    return reading === undefined ? undefined : byOneHole(reading, only, holds);
  const scale = holds === "pressure" ? 1 : (reading?.supply ?? usualSupply);
  return holeFromKnownHoles(holes, value, { uReading: uDial / scale });
};

/** hole·√margin, whatever the restrictor is. */
const byOneHole = (
  reading: LeakReading,
  { hole, reads }: HoleReading,
  holds: HoleQuestion["holds"],
): HoleOfReading | undefined => {
  if (readingKind(reading) !== "measured") return undefined;
  const master = gaugePressure(holds === "pressure" ? reads : reading.supply * (1 - reads));
  if (master <= 0 || master >= reading.supply) return { kind: "contradictory" };
  const { margin, uMargin } = masterMargin(reading, {
    reads: master,
    uReads: reading.uCylinder ?? 0,
    bore: hole,
  });
  const size = length(hole * Math.sqrt(margin));
  const uBore = usualHalfWidth / (hole * Math.sqrt(3));
  return { kind: "measured", hole: size, uHole: size * Math.hypot(uMargin / (2 * margin), uBore) };
};
