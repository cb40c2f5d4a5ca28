// The space above the piston: what is swept, what is left at top dead centre, and what stands at any crank angle.

import { type Angle, type Length, type Volume, angle, volume } from "../../quantity/index.ts";

/** Sizes of one cylinder. The pin is taken to lie on the cylinder's axis. */
export interface Cylinder {
  readonly bore: Length;
  readonly stroke: Length;
  /** Centre to centre. */
  readonly rod: Length;
  /** (swept + clearance)/clearance. */
  readonly compressionRatio: number;
}

/** Sizes of a cylinder as far as somebody stated them. */
export type CylinderSizes = Partial<Cylinder> & {
  /** Of the crank after bottom dead centre. */
  readonly intakeCloses?: Angle;
};

/** The first size that cannot be, and the limit that it breaks; metres, degrees or a plain ratio, as the field has. */
export interface CylinderFault {
  readonly field: "bore" | "stroke" | "rod" | "compressionRatio" | "intakeCloses";
  readonly found: number;
  /** `found` is not above, not below, less than, or more than `limit`. */
  readonly must: "be-above" | "be-below" | "be-at-least" | "be-at-most";
  readonly limit: number;
}

/** Least and most of the sizes that one may be assumed from the other [m]. */
export const sizeRange = { bore: [0.005, 2], stroke: [0.005, 5] } as const;

type Limits = readonly (readonly [CylinderFault["must"], number])[];
const sizeLimits = {
  bore: [
    ["be-at-least", sizeRange.bore[0]],
    ["be-at-most", sizeRange.bore[1]],
  ],
  stroke: [
    ["be-at-least", sizeRange.stroke[0]],
    ["be-at-most", sizeRange.stroke[1]],
  ],
  rod: [
    ["be-above", 0],
    ["be-at-most", 12],
  ],
  compressionRatio: [
    ["be-above", 1],
    ["be-at-most", 40],
  ],
  intakeCloses: [
    ["be-at-least", -90],
    ["be-below", 180],
  ],
} as const satisfies Record<CylinderFault["field"], Limits>;
const fields = ["bore", "stroke", "rod", "compressionRatio", "intakeCloses"] as const;

const holds = (found: number, must: CylinderFault["must"], limit: number): boolean => {
  switch (must) {
    case "be-above":
      return found > limit;
    case "be-below":
      return found < limit;
    case "be-at-least":
      return found >= limit;
    case "be-at-most":
      return found <= limit;
  }
};

/** What is impossible about these sizes; undefined where nothing is. The intake must close before top dead centre
 *  (180 deg after bottom), and the rod must be longer than the crank throw, half the stroke.
 *  @param sizes - plain numbers in SI, so that they can be asked about before they are made quantities */
export const cylinderFault = (
  sizes: Readonly<Partial<Record<CylinderFault["field"], number>>>,
): CylinderFault | undefined => {
  for (const field of fields) {
    const found = sizes[field];
    if (found === undefined) continue;
    const limits: Limits = sizeLimits[field];
    const broken = limits.find(([must, limit]) => !holds(found, must, limit));
    if (broken !== undefined) return { field, found, must: broken[0], limit: broken[1] };
  }
  const { rod, stroke } = sizes;
  return rod !== undefined && stroke !== undefined && rod <= stroke / 2
    ? { field: "rod", found: rod, must: "be-above", limit: stroke / 2 }
    : undefined;
};

/** Guards a formula against sizes that cannot be. @throws RangeError naming the size and its limit */
export const requirePossible = (caller: string, sizes: CylinderSizes): void => {
  const fault = cylinderFault(sizes);
  if (fault === undefined) return;
  const must = fault.must.replaceAll("-", " ");
  throw new RangeError(
    `${caller}: ${fault.field} must ${must} ${String(fault.limit)}, got ${String(fault.found)}`,
  );
};

/** Swept volume. V_d = π/4 · B² · S  @throws RangeError for a bore or stroke below 5 mm @source geometry */
export const sweptVolume = ({ bore, stroke }: Pick<Cylinder, "bore" | "stroke">): Volume => {
  requirePossible("sweptVolume", { bore, stroke });
  return volume((Math.PI / 4) * bore * bore * stroke);
};

/** Volume left at top dead centre. V_c = V_d/(CR − 1)  @throws RangeError for impossible sizes @source geometry */
export const clearanceVolume = (cylinder: Cylinder): Volume => {
  requirePossible("clearanceVolume", cylinder);
  return volume(sweptVolume(cylinder) / (cylinder.compressionRatio - 1));
};

/** Volume above the piston. V(θ) = V_c + π/4 · B² · (a(1 − cos θ) + l − √(l² − a² sin² θ)), a = S/2, l = rod.
 *  @param crankAngle - 0 at top dead centre, either sign @throws RangeError for impossible sizes
 *  @source slider-crank geometry, any engine textbook @checked tests/published/cranking-model.test.ts */
export const volumeAt = (cylinder: Cylinder, crankAngle: Angle): Volume => {
  const clearance = clearanceVolume(cylinder);
  const { bore, stroke, rod } = cylinder;
  const theta = (crankAngle * Math.PI) / 180;
  const throwLength = stroke / 2;
  const side = throwLength * Math.sin(theta);
  const travel = throwLength * (1 - Math.cos(theta)) + rod - Math.sqrt(rod * rod - side * side);
  return volume(clearance + (Math.PI / 4) * bore * bore * travel);
};

/** The crank angle from top dead centre at which the intake closes. θ = −(180 − φ) */
export const closingAngle = (intakeCloses: Angle): Angle => angle(intakeCloses - 180);

/** Volume at intake closing as a multiple of that at top dead centre, both with the hose ahead of the check valve.
 *  r' = (V(−(180 − φ)) + V_h)/(V_c + V_h)
 *  @param intakeCloses - of the crank after bottom dead centre, −90 to below 180 @throws RangeError for impossible sizes
 *  @source slider-crank geometry, any engine textbook @checked tests/published/cranking-model.test.ts */
export const trappedRatio = (cylinder: Cylinder, intakeCloses: Angle, hose: Volume = volume(0)): number => {
  requirePossible("trappedRatio", { ...cylinder, intakeCloses });
  const closing = volumeAt(cylinder, closingAngle(intakeCloses));
  return (closing + hose) / (clearanceVolume(cylinder) + hose);
};
