// What open holes of known size, read on a leak-down tester, say of it.

import {
  type LeakReading,
  type Restrictor,
  alphaOf,
  alphaUncertainty,
  classLimit,
  dialUncertainty,
  dischargeOf,
} from "../../leakdown/index.ts";
import {
  type AbsolutePressure,
  type GaugePressure,
  type Length,
  gaugePressure,
  length,
} from "../../quantity/index.ts";
import type { Gauge, KnownHole } from "../../record/index.ts";
import { mean, sampleStandardDeviation } from "../../statistics/index.ts";
import { trueReading } from "../values/values.ts";

/** One hole, and the bore that the restrictor acts as: it passes what a hole of that bore, made like this one, would. */
export interface HoleFinding {
  readonly hole: KnownHole;
  /** Hole beside restrictor, in effective areas. */
  readonly alpha: number;
  readonly actsAs: Length;
  /** Standard uncertainty. */
  readonly uActsAs: number;
}

export type HoleCalibration =
  /** The supply is known: every hole tells the bore that the restrictor acts as. */
  | {
      readonly kind: "restrictor";
      readonly holes: readonly HoleFinding[];
      readonly actsAs: Length;
      readonly uActsAs: number;
      /** Where the bore is known: its area used, beside that of the holes, and the discharge coefficient that follows if
       *  the holes have that of their make. */
      readonly used?: { readonly share: number; readonly cd: number; readonly ofHoles: number };
    }
  /** The supply is not known: a reading between these has an equal hole. */
  | { readonly kind: "span"; readonly least: KnownHole; readonly most: KnownHole }
  | { readonly kind: "one-hole" }
  /** A larger hole did not move the needle further than a smaller one; or all of it, or none, was lost. */
  | { readonly kind: "contradictory" };

/** Half-width of a drilled hole of which nothing is said [m]; judgement. */
const holeHalfWidth = 0.00002;

/** d = d_hole/√α for each hole; together the mean of ln d, with the doubt of the dials, which all holes share, or that of
 *  their scatter where it is larger.
 *  @param ambient - air of the place  @returns undefined for a gauge without known holes  @source handbook/leakdown.md C.4, H.1 */
export const holeCalibration = (gauge: Gauge, ambient: AbsolutePressure): HoleCalibration | undefined => {
  const { knownHoles = [], regulated, restrictor } = gauge;
  const bySize = knownHoles.toSorted((a, b) => a.hole - b.hole);
  const [least] = bySize;
  const most = bySize.at(-1);
  if (least === undefined || most === undefined) return undefined;
  if (!risesWithSize(bySize)) return { kind: "contradictory" };
  if (regulated === undefined)
    return bySize.length === 1 ? { kind: "one-hole" } : { kind: "span", least, most };
  const holes = bySize.flatMap((hole) => findingOf(hole, gauge, { regulated, ambient }) ?? []);
  if (holes.length < bySize.length) return { kind: "contradictory" };
  const logs = holes.map((one) => Math.log(one.actsAs));
  const actsAs = Math.exp(mean(logs));
  const dials = mean(holes.map((one) => one.uActsAs / one.actsAs));
  const scatter = logs.length < 2 ? 0 : sampleStandardDeviation(logs) / Math.sqrt(logs.length);
  const relative = Math.max(dials, scatter);
  return {
    kind: "restrictor",
    holes,
    actsAs: length(actsAs),
    uActsAs: actsAs * relative,
    ...(restrictor === undefined ? {} : { used: usedOf(actsAs / restrictor) }),
  };
};

const usedOf = (ratio: number): { readonly share: number; readonly cd: number; readonly ofHoles: number } => {
  const drilled: Restrictor = { profile: "unknown" };
  const { cd } = dischargeOf(drilled, 1);
  return { share: ratio ** 2, cd: cd * ratio ** 2, ofHoles: cd };
};

const risesWithSize = (bySize: readonly KnownHole[]): boolean =>
  bySize.every((hole, i) => {
    const before = bySize[i - 1];
    if (before === undefined) return true;
    if (before.holds !== hole.holds || !(hole.hole > before.hole)) return false;
    return hole.holds === "lost" ? hole.reads > before.reads : hole.reads < before.reads;
  });

interface Fed {
  readonly regulated: GaugePressure;
  readonly ambient: AbsolutePressure;
}

const findingOf = (hole: KnownHole, gauge: Gauge, { regulated, ambient }: Fed): HoleFinding | undefined => {
  const cylinder =
    hole.holds === "lost" ? regulated * (1 - hole.reads) : trueReading(hole.reads, gauge.readsHigh ?? 0);
  if (!(cylinder > 0 && cylinder < regulated)) return undefined;
  const dial = dialUncertainty(dialOf(gauge));
  const reading: LeakReading = {
    supply: regulated,
    cylinder: gaugePressure(cylinder),
    ambient,
    uSupply: dial,
    uCylinder: dial,
  };
  const alpha = alphaOf(reading);
  const actsAs = hole.hole / Math.sqrt(alpha);
  const drilled = holeHalfWidth / (hole.hole * Math.sqrt(3));
  const uActsAs = actsAs * Math.hypot(alphaUncertainty(reading) / 2, drilled);
  return { hole, alpha, actsAs: length(actsAs), uActsAs };
};

const dialOf = ({ classPercent, fullScale, division, matched }: Gauge) => ({
  ...(classPercent === undefined || fullScale === undefined
    ? {}
    : { limit: classLimit(classPercent, fullScale) }),
  ...(division === undefined ? {} : { division }),
  ...(matched === undefined ? {} : { matched }),
});
