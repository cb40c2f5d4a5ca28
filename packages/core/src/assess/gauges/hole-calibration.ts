// What open holes of known size, read on a leak-down tester, say of it.

import {
  type LeakReading,
  type Restrictor,
  alphaOf,
  alphaUncertainty,
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
import { type Gauge, type KnownHole, holesFault } from "../../record/index.ts";
import { trueReading } from "../values/values.ts";
import { type HoleDoubt, combineHoles } from "./combine-holes.ts";
import { testerDial } from "./tester-dial.ts";

/** One hole, and the bore that the restrictor acts as: it passes what a hole of that bore, made like this one, would. */
export interface HoleFinding {
  readonly hole: KnownHole;
  /** Hole beside restrictor, in effective areas. */
  readonly alpha: number;
  readonly actsAs: Length;
  /** Standard uncertainty. */
  readonly uActsAs: number;
  /** How much it counts beside the others, 0 to 1; together 1. */
  readonly weight: number;
}

/** What open holes of known size, read on a leak-down tester, say of its restrictor or of its supply. */
export type HoleCalibration =
  /** The supply is known: every hole tells the bore that the restrictor acts as. */
  | {
      readonly kind: "restrictor";
      readonly holes: readonly HoleFinding[];
      readonly actsAs: Length;
      readonly uActsAs: number;
      /** `apart`: the holes lie further apart than dials and drills explain; the doubt is widened by it. */
      readonly holesAre: "one" | "together" | "apart";
      /** Where the bore is known: its area used, beside that of the holes, and the discharge coefficient that follows if
       *  the holes have that of their make. */
      readonly used?: { readonly share: number; readonly cd: number; readonly ofHoles: number };
    }
  /** The supply is not known: a reading between these has an equal hole. */
  | { readonly kind: "span"; readonly least: KnownHole; readonly most: KnownHole }
  | { readonly kind: "one-hole" };

/** Half-width of a drilled hole of which nothing is said [m]; judgement. */
const holeHalfWidth = 0.00002;

/** d = d_hole/√α for each hole, and all of them together as combineHoles has it.
 *  @param ambient - air of the place  @returns undefined for a gauge without known holes
 *  @throws RangeError for holes that holesFault refuses, which no file brings  @source handbook/leakdown.md C.4, H.1 */
export const holeCalibration = (gauge: Gauge, ambient: AbsolutePressure): HoleCalibration | undefined => {
  const { knownHoles = [], regulated, restrictor } = gauge;
  const fault = holesFault(knownHoles, gauge);
  if (fault !== undefined) throw new RangeError(`holeCalibration: ${fault.hole}: ${fault.why}`);
  const bySize = knownHoles.toSorted((a, b) => a.hole - b.hole);
  const [least] = bySize;
  const most = bySize.at(-1);
  if (least === undefined || most === undefined) return undefined;
  if (regulated === undefined)
    return bySize.length === 1 ? { kind: "one-hole" } : { kind: "span", least, most };
  const each = bySize.map((hole) => findingOf(hole, gauge, { regulated, ambient }));
  const { ln, uncertainty, weights, chance } = combineHoles(each.map(({ doubt }) => doubt));
  const actsAs = Math.exp(ln);
  return {
    kind: "restrictor",
    holes: each.map(({ found }, i) => ({ ...found, weight: weights[i] ?? 0 })),
    actsAs: length(actsAs),
    uActsAs: actsAs * uncertainty,
    holesAre: each.length === 1 ? "one" : chance,
    ...(restrictor === undefined ? {} : { used: usedOf(actsAs / restrictor) }),
  };
};

const usedOf = (ratio: number): { readonly share: number; readonly cd: number; readonly ofHoles: number } => {
  const drilled: Restrictor = { profile: "unknown" };
  const { cd } = dischargeOf(drilled, 1);
  return { share: ratio ** 2, cd: cd * ratio ** 2, ofHoles: cd };
};

interface Fed {
  readonly regulated: GaugePressure;
  readonly ambient: AbsolutePressure;
}

interface Finding {
  readonly found: Omit<HoleFinding, "weight">;
  readonly doubt: HoleDoubt;
}

/** The class error of the dials is one for all holes; the step of the dial and the drill are each hole's own. */
const findingOf = (hole: KnownHole, gauge: Gauge, { regulated, ambient }: Fed): Finding => {
  const cylinder =
    hole.holds === "lost" ? regulated * (1 - hole.reads) : trueReading(hole.reads, gauge.readsHigh ?? 0);
  const reading: LeakReading = { supply: regulated, cylinder: gaugePressure(cylinder), ambient };
  const alpha = alphaOf(reading);
  const actsAs = hole.hole / Math.sqrt(alpha);
  const byDials = (dial: number): number =>
    alphaUncertainty({ ...reading, uSupply: dial, uCylinder: dial }) / 2;
  const none = gaugePressure(0);
  const shared = byDials(dialUncertainty({ ...testerDial(gauge), division: none }));
  const own = Math.hypot(
    byDials(dialUncertainty({ ...testerDial(gauge), limit: none })),
    holeHalfWidth / (hole.hole * Math.sqrt(3)),
  );
  return {
    found: { hole, alpha, actsAs: length(actsAs), uActsAs: actsAs * Math.hypot(shared, own) },
    doubt: { ln: Math.log(actsAs), shared, own },
  };
};
