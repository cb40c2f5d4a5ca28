// One reading judged: a leak with its size, or what the dials say instead of one.

import { type Area, type Length, aboveVacuum, area, gaugePressure, length } from "../quantity/index.ts";
import { type LeakReading, alphaOf } from "./alpha.ts";
import { dropUncertainty, isWithinDials } from "./drop.ts";
import { type FlowModel, isentropicFlow } from "./flow-model.ts";
import { type LeakFigures, leakFigures } from "./leak.ts";
import { type Restrictor, boreArea, dischargeOf } from "./restrictor.ts";

/** A leak is at most so large. */
export interface LeakLimit {
  readonly alpha: number;
  /** Where the bore of the restrictor is known. */
  readonly equalHole?: Length;
  readonly area?: Area;
}

/** One leak-down reading judged: a leak with its size, or what the dials say instead of one. */
export type LeakJudgement =
  | { readonly kind: "measured"; readonly figures: LeakFigures }
  /** The drop is within what the dials leave open: only an upper limit is known, and such cylinders have no order. */
  | { readonly kind: "tight"; readonly limit: LeakLimit; readonly drop: number; readonly uDrop: number }
  /** The cylinder reads above the supply by more than the dials explain [Pa]. */
  | { readonly kind: "disagree"; readonly excess: number; readonly uDrop: number }
  /** The cylinder side shows nothing: the leak takes all that the restrictor gives. */
  | { readonly kind: "no-seal" };

/** What a reading allows to be said, before any size is taken from it. */
export const readingKind = (reading: LeakReading): LeakJudgement["kind"] => {
  const { supply, cylinder, uCylinder = 0 } = reading;
  const open = 2 * dropUncertainty(reading);
  const drop = supply - cylinder;
  if (cylinder <= 0 || (cylinder < 2 * uCylinder && cylinder < supply / 2)) return "no-seal";
  if (drop < -open) return "disagree";
  return isWithinDials(reading) ? "tight" : "measured";
};

/** Tells whether a reading is a leak with a size, too tight to measure, contradictory, or no seal at all.
 *  @param reading - with the uncertainties of its dials @throws RangeError where the supply is not above 0 */
export const judgeLeak = (
  reading: LeakReading,
  restrictor: Restrictor,
  model: FlowModel = isentropicFlow,
): LeakJudgement => {
  if (!(reading.supply > 0)) throw new RangeError("judgeLeak: the supply must be above 0");
  const kind = readingKind(reading);
  const drop = reading.supply - reading.cylinder;
  const uDrop = dropUncertainty(reading);
  switch (kind) {
    case "measured":
      return { kind, figures: leakFigures(reading, restrictor, model) };
    case "tight":
      return { kind, drop, uDrop, limit: limitOf(reading, restrictor, model) };
    case "disagree":
      return { kind, excess: -drop, uDrop };
    case "no-seal":
      return { kind };
  }
};

/** The leak whose drop is the one read and two standard uncertainties more. */
const limitOf = (reading: LeakReading, restrictor: Restrictor, model: FlowModel): LeakLimit => {
  const drop = Math.max(0, reading.supply - reading.cylinder) + 2 * dropUncertainty(reading);
  const most = {
    ...reading,
    cylinder: gaugePressure(reading.supply - Math.min(drop, 0.99 * reading.supply)),
  };
  const alpha = alphaOf(most, model);
  const { bore } = restrictor;
  if (bore === undefined) return { alpha };
  const { cd } = dischargeOf(
    restrictor,
    aboveVacuum(most.cylinder, most.ambient) / aboveVacuum(most.supply, most.ambient),
  );
  return { alpha, equalHole: length(bore * Math.sqrt(alpha)), area: area(alpha * cd * boreArea(bore)) };
};
