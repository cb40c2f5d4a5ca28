// What cannot be, among the inputs of the expected pressure: one list, so that a shell refuses exactly what the model would.

import { type CylinderFault, cylinderFault } from "../cycle/cylinder.ts";
import { type KnownOfCylinder, modelInput } from "./model-input.ts";

type Condition = "speed" | "leak" | "wall" | "start" | "airTemperature" | "airPressure" | "gamma" | "hose";

/** An input that cannot be, and the limit that it breaks, in SI (degrees, rpm). */
export interface ExpectedFault extends Omit<CylinderFault, "field"> {
  readonly field: CylinderFault["field"] | Condition;
}

/** What the model can be asked; wider than any engine that a person cranks. */
const limits: Readonly<Record<Condition, readonly [least: number, most: number]>> = {
  speed: [30, 1500],
  leak: [0, 100e-6],
  wall: [200, 500],
  start: [200, 450],
  airTemperature: [200, 340],
  airPressure: [30e3, 120e3],
  gamma: [1.05, 1.67],
  hose: [0, 1e-3],
};
const conditions = [
  "speed",
  "leak",
  "wall",
  "start",
  "airTemperature",
  "airPressure",
  "gamma",
  "hose",
] as const;

/** The first input that cannot be; undefined where all can. A size that was left out is checked as it is assumed, so that a
 *  rod is held against the crank throw even where only one of the two was given. */
export const expectedFault = (known: KnownOfCylinder): ExpectedFault | undefined => {
  const stated = cylinderFault(known);
  if (stated !== undefined) return stated;
  for (const field of conditions) {
    const found = known[field];
    if (found === undefined || found === "variable") continue;
    const [least, most] = limits[field];
    if (!(found >= least)) return { field, found, must: "be-at-least", limit: least };
    if (!(found <= most)) return { field, found, must: "be-at-most", limit: most };
  }
  return cylinderFault(modelInput(known).cylinder);
};

/** @throws RangeError naming the input and its limit */
export const requireKnown = (caller: string, known: KnownOfCylinder): void => {
  const fault = expectedFault(known);
  if (fault === undefined) return;
  const must = fault.must.replaceAll("-", " ");
  throw new RangeError(
    `${caller}: ${fault.field} must ${must} ${String(fault.limit)}, got ${String(fault.found)}`,
  );
};
