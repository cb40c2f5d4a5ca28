// A leak that one tester measured, put on another: its reading by the orifice law, by the laminar law, and the doubt.

import type { AbsolutePressure, GaugePressure } from "../quantity/index.ts";
import { dropsOf } from "./alpha.ts";
import type { FlowModel } from "./flow-model.ts";
import { laminarDrop } from "./laminar.ts";
import { type Tester, type TesterReading, balancedDrop, inflowOf, outflowOf, readingAt } from "./reading.ts";
import { cdSteepness } from "./restrictor.ts";

/** As the first tester tells it. */
export interface MeasuredArea {
  /** Effective area in the unit of the throat of the other tester. */
  readonly leak: number;
  /** Standard uncertainty of its logarithm beside the other restrictor: dials, and bores where there are two. */
  readonly uncertainty: number;
  /** Where it was read; the laminar law starts from there. */
  readonly cylinder: GaugePressure;
  readonly ambient: AbsolutePressure;
}

export interface Restated {
  /** By the orifice model. */
  readonly reading: TesterReading;
  /** Fraction lost if the leak is viscous. */
  readonly laminarLost: number;
  /** Standard uncertainty of the part lost, by dials and bores; 0 where nothing is lost: then it is one-sided. */
  readonly uLost: number;
}

/** @param throat - bore area of the restrictor of `to`, or 1 where leaks are told in it */
export const carryLeak = (
  { leak, uncertainty, cylinder, ambient }: MeasuredArea,
  to: Tester,
  { throat, model }: { readonly throat: number; readonly model: FlowModel },
): Restated => {
  const inflow = inflowOf(to, throat, model);
  if (leak === 0) return { reading: readingAt(to, 0, model), laminarLost: 0, uLost: 0 };
  const outflow = outflowOf(leak, to.ambient, model);
  const reading = readingAt(to, balancedDrop({ inflow, outflow }, to.supply), model);
  const flow = outflowOf(leak, ambient, model)(cylinder);
  return {
    reading,
    laminarLost: laminarDrop({ flow, cylinder, ambient }, { ...to, inflow }) / to.supply,
    uLost: uncertainty * lostPerLn(to, reading.cylinder, model),
  };
};

/** d lost / d ln leak = p2/(S·P1) on the tester. */
const lostPerLn = (tester: Tester, cylinder: GaugePressure, model: FlowModel): number => {
  const { restrictor, leak, cylinder: between } = dropsOf({ ...tester, cylinder });
  const steepness = model.steepness(restrictor) + model.steepness(leak);
  const s = 1 + steepness + cdSteepness(tester.restrictor, 1 - restrictor);
  return between / (s * tester.supply);
};
