// A leak as figures: beside the restrictor, as a hole made like it, as an effective area, as air a minute.

import { gasConstant } from "../air/index.ts";
import { type Area, type Length, area, gaugePressure, length } from "../quantity/index.ts";
import { type LeakReading, alphaOf, alphaUncertainty, dropsOf, lostUncertainty } from "./alpha.ts";
import { dropUncertainty } from "./drop.ts";
import { type FlowModel, isentropicFlow } from "./flow-model.ts";
import {
  type Restrictor,
  boreArea,
  boreUncertainty,
  cdSteepness,
  dischargeOf,
  dischargeUncertainty,
} from "./restrictor.ts";
import { usualSupplyTemperature } from "./warmth.ts";

/** Air of the laboratory: 20 °C, 100 kPa, 65 % humidity [kg/m3]. @source ISO 8778, from memory */
const normalDensity = 1.185;

/** Needs the bore of the restrictor. `u…` are standard uncertainties in the unit of the figure. */
export interface LeakSize {
  /** The leak passes what a hole of this bore, made like the restrictor, would pass: d·√α. */
  readonly equalHole: Length;
  readonly uEqualHole: number;
  /** Effective area Cd·A. */
  readonly area: Area;
  readonly uArea: number;
  /** The discharge coefficient of the restrictor that `area` rests on. */
  readonly cd: number;
  readonly cdHalfWidth: number;
  /** [m3/s] of air at 20 °C, 100 kPa, 65 % humidity. */
  readonly flow: number;
}

/** A leak as figures: beside its restrictor, as the part lost, and as a hole where the bore is known. */
export interface LeakFigures {
  /** Leak beside restrictor, in effective areas. */
  readonly alpha: number;
  readonly uAlpha: number;
  /** Fraction lost by the gauge pressures. */
  readonly lost: number;
  readonly uLost: number;
  readonly chokedRestrictor: boolean;
  readonly chokedLeak: boolean;
  /** Absent where the bore of the restrictor is not known. */
  readonly size?: LeakSize;
}

/** Where the drop is below its own uncertainty the doubts are one-sided, upward. @throws RangeError unless 0 < P2 ≤ P1 */
export const leakFigures = (
  reading: LeakReading,
  restrictor: Restrictor,
  model: FlowModel = isentropicFlow,
): LeakFigures => {
  const drops = dropsOf(reading);
  const alpha = alphaOf(reading, model);
  const uAlpha = isOneSided(reading)
    ? Math.hypot(stepUp(reading, model) - alpha, alpha * (reading.warmth?.uncertainty ?? 0))
    : alpha * alphaUncertainty(reading, model);
  const { bore } = restrictor;
  return {
    alpha,
    uAlpha,
    lost: (reading.supply - reading.cylinder) / reading.supply,
    uLost: lostUncertainty(reading),
    chokedRestrictor: 1 - drops.restrictor <= model.criticalRatio,
    chokedLeak: 1 - drops.leak <= model.criticalRatio,
    ...(bore === undefined
      ? {}
      : { size: sizeOf(reading, { ...restrictor, bore }, { alpha, uAlpha, model }) }),
  };
};

/** A drop below its own uncertainty. */
const isOneSided = (reading: LeakReading): boolean => {
  const drop = reading.supply - reading.cylinder;
  return drop <= 0 || drop < dropUncertainty(reading);
};

/** The leak whose drop is larger by the uncertainty of the two dials. Where the drop is below that the slope
 *  at the reading, infinite where nothing is lost, says nothing: the doubt is this step, upward. */
const stepUp = (reading: LeakReading, model: FlowModel): number => {
  const drop = reading.supply - reading.cylinder + dropUncertainty(reading);
  return alphaOf(
    { ...reading, cylinder: gaugePressure(reading.supply - Math.min(drop, 0.99 * reading.supply)) },
    model,
  );
};

interface Measured {
  readonly alpha: number;
  readonly uAlpha: number;
  readonly model: FlowModel;
}

const sizeOf = (
  reading: LeakReading,
  restrictor: Restrictor & { readonly bore: Length },
  { alpha, uAlpha, model }: Measured,
): LeakSize => {
  const { supply, restrictor: drop, cylinder } = dropsOf(reading);
  const discharge = dischargeOf(restrictor, 1 - drop);
  const own = discharge.cd * boreArea(restrictor.bore);
  const equalHole = length(restrictor.bore * Math.sqrt(alpha));
  const leakArea = area(alpha * own);
  const uBore = boreUncertainty(restrictor);
  // The coefficient of a thin plate moves with the reading, and takes its error along.
  const shift = cdSteepness(restrictor, 1 - drop);
  const uShift =
    shift * Math.hypot((reading.uCylinder ?? 0) / cylinder, (reading.uSupply ?? 0) / supply) * alpha;
  return {
    equalHole,
    uEqualHole: isOneSided(reading)
      ? Math.hypot(restrictor.bore * Math.sqrt(alpha + uAlpha) - equalHole, 0.5 * equalHole * uBore)
      : 0.5 * equalHole * Math.hypot(uAlpha / alpha, uBore),
    area: leakArea,
    uArea: Math.hypot(own * (uAlpha + uShift), leakArea * uBore, leakArea * dischargeUncertainty(discharge)),
    cd: discharge.cd,
    cdHalfWidth: discharge.halfWidth,
    flow:
      massFlow(own, {
        pressure: supply,
        psi: model.flow(drop),
        temperature: reading.supplyTemperature ?? usualSupplyTemperature,
      }) / normalDensity,
  };
};

interface Before {
  readonly pressure: number;
  readonly psi: number;
  readonly temperature: number;
}

/** [kg/s] */
const massFlow = (effectiveArea: number, { pressure, psi, temperature }: Before): number =>
  (effectiveArea * pressure * psi) / Math.sqrt(gasConstant * temperature);

/** Leaks side by side add as areas: alpha of all from alpha of each, or areas from areas. */
export const inParallel = (leaks: readonly number[]): number => leaks.reduce((sum, one) => sum + one, 0);

/** The part of a leak that oil or a lower piston closed: dry less wet in alpha, with its standard uncertainty. */
export const partClosed = (
  open: Pick<LeakFigures, "alpha" | "uAlpha">,
  closed: Pick<LeakFigures, "alpha" | "uAlpha">,
): { readonly alpha: number; readonly uAlpha: number } => ({
  alpha: open.alpha - closed.alpha,
  uAlpha: Math.hypot(open.uAlpha, closed.uAlpha),
});
