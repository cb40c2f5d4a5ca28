// Several holes read on one tester, as one figure: never less sure than the surest of them.

import { chiSquareQuantile } from "../../statistics/index.ts";

export interface HoleDoubt {
  /** ln of the bore that the restrictor acts as by this hole. */
  readonly ln: number;
  /** Standard uncertainty of ln that all holes share: the dials. */
  readonly shared: number;
  /** The same of this hole alone: its drill, the step of the dial. */
  readonly own: number;
}

export interface CombinedHoles {
  readonly ln: number;
  /** Standard uncertainty of ln. */
  readonly uncertainty: number;
  /** In the order given; they sum to 1. */
  readonly weights: readonly number[];
  /** `apart`: they scatter more than once in a hundred times. */
  readonly chance: "together" | "apart";
}

/** ln = Σ w ln_i, w ∝ 1/u_i², u_i² = shared² + own²;  u² = (Σ w shared)² + Σ (w own)², since what the holes share does
 *  not shrink, and at most that of the surest hole: a dial is not wrong by the same everywhere, so that a further hole
 *  takes nothing away. Where χ² = Σ (ln_i − ln)²/u_i² lies above its 99 % point, u grows by √(χ²/(n − 1)).
 *  @throws RangeError without a hole  @source weighted mean with a common part (GUM, JCGM 100:2008, 5.2, from memory) */
export const combineHoles = (holes: readonly HoleDoubt[]): CombinedHoles => {
  if (holes.length === 0) throw new RangeError("combineHoles: no hole");
  const variances = holes.map(({ shared, own }) => shared ** 2 + own ** 2);
  const all = variances.reduce((sum, one) => sum + 1 / one, 0);
  const weights = variances.map((one) => 1 / one / all);
  const sum = (of: (hole: HoleDoubt, i: number) => number): number =>
    holes.reduce((total, hole, i) => total + of(hole, i), 0);
  const weight = (i: number): number => weights[i] ?? 0;
  const ln = sum((hole, i) => weight(i) * hole.ln);
  const together = Math.hypot(
    sum(({ shared }, i) => weight(i) * shared),
    Math.sqrt(sum(({ own }, i) => (weight(i) * own) ** 2)),
  );
  const uncertainty = Math.min(together, Math.sqrt(Math.min(...variances)));
  const chiSquare = sum((hole, i) => (hole.ln - ln) ** 2 / (variances[i] ?? NaN));
  const degrees = holes.length - 1;
  return degrees > 0 && chiSquare > chiSquareQuantile(0.99, degrees)
    ? { ln, uncertainty: uncertainty * Math.sqrt(chiSquare / degrees), weights, chance: "apart" }
    : { ln, uncertainty, weights, chance: "together" };
};
