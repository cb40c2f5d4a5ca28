// What no engine at all has, from a model's to a ship's: outside of it a figure is a slip, whatever else is known.

import type { MeasuredPart } from "../../record/index.ts";

interface Bounds {
  /** [m] */
  readonly low: number;
  readonly high: number;
}

const mm = 0.001;
/** Sizes of parts. */
const size = (low: number, high: number): Bounds => ({ low: low * mm, high: high * mm });
/** What lies between two parts, or is worn off one: it may be nothing. */
const gap = (high: number): Bounds => size(0, high);

/** Wide on purpose (judgement). Volumes, forces, cracks and what an oil clearance can be are told elsewhere or not at all. */
const bounds: Readonly<Partial<Record<MeasuredPart, Readonly<Record<string, Bounds>>>>> = {
  bore: { diameter: size(5, 1000), ridge: gap(3), "score depth": gap(5) },
  piston: { diameter: size(5, 1000) },
  ring: { "end gap": gap(15), "side clearance": gap(2) },
  main: { diameter: size(2, 600) },
  pin: { diameter: size(2, 600) },
  "main bearing": { bore: size(2, 600) },
  "rod bearing": { bore: size(2, 600) },
  housing: { bore: size(2, 700) },
  rod: { "side clearance": gap(10) },
  crank: { "end play": gap(3), runout: gap(3) },
  deck: { gap: gap(5) },
  head: { gap: gap(5) },
  guide: { bore: size(1, 60), rocking: gap(5) },
  stem: { diameter: size(1, 60) },
  seat: { width: gap(30), runout: gap(3) },
  valve: { margin: gap(20) },
  spring: { "free length": size(5, 500), squareness: gap(20) },
};

/** Undefined where anything may be. @source judgement of this project */
export const ofAnyEngine = (part: MeasuredPart, quantity: string): Bounds | undefined =>
  bounds[part]?.[quantity];
