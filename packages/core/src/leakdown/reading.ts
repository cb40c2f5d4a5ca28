// From a leak to what a tester would read: the pressure at which as much flows in as out.

import {
  type AbsolutePressure,
  type Area,
  type GaugePressure,
  aboveVacuum,
  gaugePressure,
} from "../quantity/index.ts";
import { type FlowModel, isentropicFlow } from "./flow-model.ts";
import { type Restrictor, boreArea, dischargeOf } from "./restrictor.ts";
import { type Warmth, noWarmth } from "./warmth.ts";

/** A tester at work: its restrictor, its supply, the air around it. */
export interface Tester {
  readonly supply: GaugePressure;
  readonly restrictor: Restrictor;
  readonly ambient: AbsolutePressure;
}

/** What a tester would show of a leak. */
export interface TesterReading {
  readonly cylinder: GaugePressure;
  /** Fraction lost. */
  readonly lost: number;
  readonly chokedRestrictor: boolean;
  readonly chokedLeak: boolean;
}

/** What passes the restrictor and the leak, in one unit of the caller's choice. */
export interface Balance {
  /** By the drop from the supply [Pa]; rises. */
  readonly inflow: (drop: number) => number;
  /** By the gauge pressure in the cylinder [Pa]; rises. */
  readonly outflow: (cylinder: number) => number;
}

const mostHalvings = 200;

/** The drop from the supply at which in and out agree, by halving until the numbers are next to each other.
 *  @returns [Pa], 0 … supply */
export const balancedDrop = ({ inflow, outflow }: Balance, supply: number): number => {
  let low = 0;
  let high = supply;
  for (let i = 0; i < mostHalvings; i += 1) {
    const middle = low + (high - low) / 2;
    if (middle === low || middle === high) break;
    if (inflow(middle) < outflow(supply - middle)) low = middle;
    else high = middle;
  }
  return outflow(supply) === 0 ? 0 : high;
};

/** Flow through the restrictor without √(R·T). @param throat - its bore area [m2], or 1 where leaks are told in it */
export const inflowOf =
  ({ supply, ambient, restrictor }: Tester, throat: number, model: FlowModel) =>
  (drop: number): number => {
    const before = aboveVacuum(supply, ambient);
    const part = drop / before;
    return dischargeOf(restrictor, 1 - part).cd * throat * before * model.flow(part);
  };

/** Flow through a leak that is a hole, without √(R·T). @param leak - its effective area in the unit of the throat */
export const outflowOf =
  (leak: number, ambient: number, model: FlowModel) =>
  (cylinder: number): number =>
    leak * (cylinder + ambient) * model.flow(cylinder / (cylinder + ambient));

/** What drop means as a reading. */
export const readingAt = ({ supply, ambient }: Tester, drop: number, model: FlowModel): TesterReading => {
  const cylinder = gaugePressure(supply - drop);
  return {
    cylinder,
    lost: drop / supply,
    chokedRestrictor: 1 - drop / aboveVacuum(supply, ambient) <= model.criticalRatio,
    chokedLeak: ambient / aboveVacuum(cylinder, ambient) <= model.criticalRatio,
  };
};

/** The reading that a leak of an effective area gives. The other way round: leakFigures.
 *  @param leak - Cd·A @throws RangeError where the bore is not known or the supply not above 0
 *  @checked tests/published/leakdown.test.ts */
export const readingOn = (
  tester: Tester,
  leak: Area,
  {
    model = isentropicFlow,
    warmth = noWarmth,
  }: { readonly model?: FlowModel; readonly warmth?: Warmth } = {},
): TesterReading => {
  if (!(tester.supply > 0)) throw new RangeError("readingOn: the supply must be above 0");
  if (tester.restrictor.bore === undefined)
    throw new RangeError("readingOn: the bore of the restrictor is needed");
  const drop = balancedDrop(
    {
      inflow: inflowOf(tester, boreArea(tester.restrictor.bore), model),
      outflow: outflowOf(leak / warmth.factor, tester.ambient, model),
    },
    tester.supply,
  );
  return readingAt(tester, drop, model);
};

/** The reading of a leak `alpha` times as large as the restrictor, whatever its bore. @throws RangeError below 0 */
export const readingOfAlpha = (
  tester: Pick<Tester, "supply" | "ambient">,
  alpha: number,
  model: FlowModel = isentropicFlow,
): TesterReading => {
  if (!(tester.supply > 0) || !(alpha >= 0))
    throw new RangeError("readingOfAlpha: the supply must be above 0 and alpha at least 0");
  const whole: Tester = { ...tester, restrictor: { cd: 1 } };
  const drop = balancedDrop(
    { inflow: inflowOf(whole, 1, model), outflow: outflowOf(alpha, tester.ambient, model) },
    tester.supply,
  );
  return readingAt(whole, drop, model);
};
