// What cannot be, among the inputs of the expected pressure: one list, so that a shell refuses exactly what the model would.

import { type CylinderFault, cylinderFault } from "../cycle/cylinder.ts";
import { type KnownOfCylinder, type Moved, cylinderOf } from "./model-input.ts";

type Condition = "speed" | "leak" | "wall" | "start" | "airTemperature" | "airPressure" | "gamma" | "hose";

/** An input that cannot be, and the limit that it breaks, in SI (degrees, rpm). */
export interface ExpectedFault extends Omit<CylinderFault, "field"> {
  readonly field: CylinderFault["field"] | Condition;
  /** Where the limit follows from a size that nobody stated. */
  readonly assumed?: "stroke";
}

/** Plain numbers in SI, as they were typed: what cannot be is found before it is made a quantity. */
export type StatedNumbers = Readonly<Partial<Record<ExpectedFault["field"], number>>>;

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

/** The first stated number that cannot be; undefined where all can. */
export const statedFault = (stated: StatedNumbers): ExpectedFault | undefined => {
  const sizes = cylinderFault(stated);
  if (sizes !== undefined) return sizes;
  for (const field of conditions) {
    const found = stated[field];
    if (found === undefined) continue;
    const [least, most] = limits[field];
    if (!(found >= least)) return { field, found, must: "be-at-least", limit: least };
    if (!(found <= most)) return { field, found, must: "be-at-most", limit: most };
  }
  return undefined;
};

/** The first input that cannot be; undefined where all can. A rod is held against the crank throw even where the stroke was
 *  left out, and then against the longest stroke that the assumption is moved to. */
export const expectedFault = (known: KnownOfCylinder): ExpectedFault | undefined => {
  const { gamma, ...others } = known;
  return (
    statedFault(gamma === undefined || gamma === "variable" ? others : { ...others, gamma }) ??
    rodFault(known)
  );
};

const moves: readonly Moved[] = [{}, { size: 1 }, { size: -1 }, { shape: 1 }, { shape: -1 }];

const rodFault = (known: KnownOfCylinder): ExpectedFault | undefined => {
  const { rod, stroke } = known;
  if (rod === undefined || stroke !== undefined) return undefined;
  const limit = Math.max(...moves.map((moved) => cylinderOf(known, moved).stroke)) / 2;
  return rod > limit ? undefined : { field: "rod", found: rod, must: "be-above", limit, assumed: "stroke" };
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
