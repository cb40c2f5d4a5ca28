// Does the leak of a cylinder explain its low cranking reading? Compared with its fellows, never as an absolute pressure.

import type { Area, Speed, Volume } from "../quantity/index.ts";

/** A leak as an effective area [m2] with its doubt. */
export interface MeasuredLeak {
  /** Cd·A. */
  readonly area: Area;
  /** u(ln alpha): by the dials alone. */
  readonly uncertainty: number;
}

/** A cylinder's leak and its cranking reading, each beside its fellows, with the engine it is in. */
export interface CrankingLeak {
  readonly compressionRatio: number;
  /** Displacement of one cylinder. */
  readonly displacement: Volume;
  readonly speed: Speed;
  readonly speedFrom: "measured" | "assumed";
  readonly leak: MeasuredLeak;
  /** The middle one of its fellows. */
  readonly fellows: MeasuredLeak;
  /** u(ln area) common to all of them: bore and discharge coefficient of the tester. */
  readonly uCommon: number;
  /** Cranking reading of the cylinder over the median of its fellows. */
  readonly observed: number;
  /** All cylinders that were read, the judged one too; at least 2. */
  readonly cylinders: number;
}

/** Whether a leak explains a low cranking reading, as ratios of cylinder to fellows. */
export interface LeakExplanation {
  /** `worse`: the leak is larger than the cranking reading shows. */
  readonly kind: "nothing" | "does-not-explain" | "worse" | "explains" | "perhaps-part";
  /** What the leaks make of cylinder over fellows. */
  readonly expected: number;
  readonly uExpected: number;
  readonly uObserved: number;
  readonly z: number;
  /** Cranking reading lost to the leak: x/(1+x), of the cylinder and of its fellows. */
  readonly lost: number;
  readonly lostFellows: number;
}

/** Scatter of cranking readings among sound cylinders. */
const sigmaReadings = 0.03;
const uModel = 0.05;
const uSpeed = { measured: 0.05, assumed: 0.1 } as const;
/** Oil seals a moving ring: the least that is left of the standing leak. */
const leastFactor = 0.7;

/** How a standing leak carries over to the moving engine: from oil-sealed to laminar, log-uniform.
 *  f = √(0.7·0.16·CR^1.23) @source fit to the handbook's cycle model, computed */
const carryOver = (compressionRatio: number) => {
  const most = Math.max(leastFactor, 0.16 * compressionRatio ** 1.23);
  return {
    factor: Math.sqrt(leastFactor * most),
    uncertainty: Math.log(most / leastFactor) / Math.sqrt(12),
  };
};

/** k of x = f·k·Cd·A/(V·N) [rpm·L/mm2]. @source fit to the handbook's cycle model, computed, ±6 % for CR 6.5 … 22 */
const leakWeight = (compressionRatio: number): number => 5.3 * compressionRatio ** 0.755;

/** Kept fraction of the reading K = 1/(1+x); expected ratio R = (1+x0)/(1+x1).
 *  u(R)/R = √((g1−g0)²·(u_f² + u_N² + u_k² + u_A²) + (g1·u_α1)² + (g0·u_α0)²), g = x/(1+x)
 *  @throws RangeError with one cylinder, a standing crank or no compression
 *  @source handbook, computed @checked tests/core/leakdown/explains-cranking.test.ts */
export const leakExplains = (input: CrankingLeak): LeakExplanation => {
  const { compressionRatio, displacement, speed, speedFrom, observed, cylinders } = input;
  if (!(compressionRatio > 1 && displacement > 0 && speed > 0 && cylinders >= 2))
    throw new RangeError(
      "leakExplains: needs two cylinders, a turning crank, and a compression ratio above 1",
    );
  const { factor, uncertainty: uFactor } = carryOver(compressionRatio);
  const weight = (factor * leakWeight(compressionRatio)) / (displacement * 1_000 * speed);
  const x1 = weight * input.leak.area * 1e6;
  const x0 = weight * input.fellows.area * 1e6;
  const lost = x1 / (1 + x1);
  const lostFellows = x0 / (1 + x0);
  const expected = (1 + x0) / (1 + x1);
  const uExpected =
    expected *
    Math.hypot(
      (lost - lostFellows) * Math.hypot(uFactor, uSpeed[speedFrom], uModel, input.uCommon),
      lost * input.leak.uncertainty,
      lostFellows * input.fellows.uncertainty,
    );
  const uObserved = sigmaReadings * Math.sqrt(1 + 1 / (cylinders - 1));
  const z = (observed - expected) / Math.hypot(uExpected, uObserved);
  const kind = kindOf({ observed, expected, uObserved, z });
  return { kind, expected, uExpected, uObserved, z, lost, lostFellows };
};

const kindOf = ({
  observed,
  expected,
  uObserved,
  z,
}: Pick<LeakExplanation, "expected" | "uObserved" | "z"> & {
  readonly observed: number;
}): LeakExplanation["kind"] => {
  if (Math.abs(observed - 1) <= 2 * uObserved) return "nothing";
  if (z < -2) return "does-not-explain";
  if (z > 2) return "worse";
  return 1 - expected >= 0.5 * (1 - observed) ? "explains" : "perhaps-part";
};
