// A tester without a restrictor, calibrated by open holes of known size: its reading as a hole.

import { type Length, length } from "../quantity/index.ts";

/** What the tester read with an open hole on its hose: a gauge pressure [Pa] or the part lost, all in one kind. */
export interface HoleReading {
  readonly hole: Length;
  readonly reads: number;
}

/** A reading as the hole that gives it, by the open holes a tester was read with, or why none follows. [m] */
export type HoleOfReading =
  | { readonly kind: "measured"; readonly hole: Length; readonly uHole: number }
  /** Beyond the smallest or the largest hole: nothing is said there. */
  | { readonly kind: "outside"; readonly from: number; readonly to: number }
  /** At least two holes are needed. */
  | { readonly kind: "too-few" }
  /** A larger hole did not move the needle further than a smaller one. */
  | { readonly kind: "contradictory" };

/** Half-width of a drilled hole where nothing is said: 0.02 mm, judgement. */
export const usualHalfWidth = 0.00002;

interface Doubt {
  /** Standard uncertainty of the reading, in its own kind. */
  readonly uReading?: number;
  /** Half-width of the holes [m], rectangular. */
  readonly holeHalfWidth?: number;
}

/** ln d on a straight line of the reading between the two holes beside it; inside the calibrated span only. */
export const holeFromKnownHoles = (
  holes: readonly HoleReading[],
  reading: number,
  { uReading = 0, holeHalfWidth = usualHalfWidth }: Doubt = {},
): HoleOfReading => {
  const bySize = [...holes].sort((a, b) => a.hole - b.hole);
  const steps = bySize.slice(1).map((larger, i) => [bySize[i] ?? larger, larger] as const);
  const signs = new Set(steps.map(([smaller, larger]) => Math.sign(larger.reads - smaller.reads)));
  if (steps.length === 0) return { kind: "too-few" };
  if (signs.size > 1 || signs.has(0) || steps.some(([a, b]) => a.hole === b.hole || !(a.hole > 0)))
    return { kind: "contradictory" };
  const step = steps.find(([a, b]) => (reading - a.reads) * (reading - b.reads) <= 0);
  const readings = bySize.map(({ reads }) => reads);
  if (step === undefined) return { kind: "outside", from: Math.min(...readings), to: Math.max(...readings) };
  const [smaller, larger] = step;
  const part = (reading - smaller.reads) / (larger.reads - smaller.reads);
  const slope = Math.log(larger.hole / smaller.hole) / (larger.reads - smaller.reads);
  const hole = Math.exp(Math.log(smaller.hole) + slope * (reading - smaller.reads));
  const uLn = (one: HoleReading): number => holeHalfWidth / (one.hole * Math.sqrt(3));
  const relative = Math.hypot(slope * uReading, (1 - part) * uLn(smaller), part * uLn(larger));
  return { kind: "measured", hole: length(hole), uHole: hole * relative };
};
