// How likely a noisy reading is within a class. No threshold is ever put to a reading: its own doubt blurs the bounds.

import { normalCdf, normalDensity } from "../../statistics/index.ts";
import type { ClassShape } from "../faults/faults.ts";

/** A blunder is never impossible: added to the density of every class. @source judgement of the handbook */
export const blunder = 1e-4;

/** Density of the reading x in each class, aligned with the shapes. The true value lies evenly in [a, b] and the error is
 *  normal: f = [Φ((x−a)/u) − Φ((x−b)/u)]/(b−a); round a middle: f = φ((x−m)/s)/s, s = √(d² + u²).
 *  @param u - standard uncertainty of x, above 0
 *  @source handbook/diagnosis.md 3 (convolution of a uniform with a normal) */
export const classDensities = (shapes: readonly ClassShape[], x: number, u: number): number[] => {
  // neighbours share a bound, and with it the tail beyond it
  let bound = NaN;
  let tail = 0;
  return shapes.map((shape) => {
    if (shape.kind === "around")
      return blunder + around(x, shape.middle, Math.sqrt(shape.deviation ** 2 + u ** 2));
    const { low, high } = shape;
    const fromLow = (x - low) / u;
    const fromHigh = (x - high) / u;
    const lowTail = low === bound ? tail : tailBeyond(fromLow);
    bound = high;
    tail = tailBeyond(fromHigh);
    return blunder + areaBetween(fromLow, lowTail, fromHigh, tail) / (high - low);
  });
};

/** Standard deviations beyond which less than 1e-19 of the normal is left: nothing beside a blunder. */
const farOff = 9;

const tailBeyond = (z: number): number => (Math.abs(z) > farOff ? 0 : normalCdf(-Math.abs(z)));

/** Φ(low) − Φ(high), from the tails beyond each: on the side where they are small, so that nothing cancels. */
const areaBetween = (low: number, lowTail: number, high: number, highTail: number): number => {
  if (high > 0) return highTail - lowTail;
  return low > 0 ? 1 - lowTail - highTail : lowTail - highTail;
};

/** Normal density. */
export const around = (x: number, middle: number, deviation: number): number =>
  normalDensity((x - middle) / deviation) / deviation;

/** Σ P(class | cause)·f(class). */
export const mixed = (chances: readonly number[], densities: readonly number[]): number => {
  let sum = 0;
  for (let i = 0; i < chances.length; i += 1) sum += (chances[i] ?? 0) * (densities[i] ?? 0);
  return sum;
};
