// Did an alarmed cylinder fall at once or bit by bit?

import { mean } from "../statistics/index.ts";
import { at } from "./at.ts";
import { lineThrough, type Series } from "./series.ts";

export type Shape = "none" | "sudden" | "gradual" | "cannot-tell";

export interface StepOrLine {
  readonly shape: Shape;
  /** Contrasts before the best place of a step; absent where no place shows a fall. */
  readonly before?: number;
  /** Size of that step, ln units, positive for a fall. */
  readonly fall?: number;
}

/** One-sided 95 % point of max_k (mean before - mean after) / (s sqrt(1/k + 1/(n-k))) for n readings without a step;
 *  computed for this project, 300,000 runs a row. */
const critical: readonly (readonly [n: number, z: number])[] = [
  [4, 2.053],
  [5, 2.15],
  [6, 2.218],
  [7, 2.267],
  [8, 2.321],
  [9, 2.35],
  [10, 2.376],
  [12, 2.428],
  [15, 2.487],
  [20, 2.553],
  [30, 2.622],
  [40, 2.681],
];

/** Linear between the rows; beyond 40 the line through 30 and 40 goes on in ln n (a choice).
 *  @throws RangeError below 4 */
const stepCritical = (n: number): number => {
  if (!(n >= 4)) throw new RangeError(`stepCritical: needs at least 4 readings, got ${String(n)}`);
  const found = critical.findIndex(([rowN]) => rowN >= n);
  const upper = found === -1 ? critical.length - 1 : Math.max(1, found);
  const [n0, z0] = at(critical, upper - 1);
  const [n1, z1] = at(critical, upper);
  const share = n > n1 ? Math.log(n / n0) / Math.log(n1 / n0) : (n - n0) / (n1 - n0);
  return z0 + share * (z1 - z0);
};

/** Gl = (SSE0 - SSE_line)/s^2 (0 for a rising line), Gs = (SSE0 - least SSE_step)/s^2 (falls only);
 *  none if max(Gl, Gs) < z.95(n)^2 + 1.5; D = (Gs - 2) - Gl: sudden above 2, gradual below -2, else it cannot be told.
 *  2 is the price of searching the place, 1.5 that of two shapes: choices, tuned by simulation.
 *  @param variance - s^2 of the successive-difference scale  @source handbook/statistics.md D */
export const stepOrLine = (series: Series, variance: number): StepOrLine => {
  const { contrasts } = series;
  const level = mean(contrasts);
  const line = lineThrough(series);
  const flat = contrasts.reduce((sum, r) => sum + (r - level) ** 2, 0);
  const gainLine = line === undefined || line.slope > 0 ? 0 : (flat - line.sse) / variance;
  const step = bestFall(contrasts);
  const gainStep = step === undefined ? 0 : step.gain / variance;
  const place = step === undefined ? {} : { before: step.before, fall: step.fall };
  if (Math.max(gainLine, gainStep) < stepCritical(contrasts.length) ** 2 + 1.5)
    return { shape: "none", ...place };
  const difference = gainStep - 2 - gainLine;
  return { shape: difference > 2 ? "sudden" : difference < -2 ? "gradual" : "cannot-tell", ...place };
};

interface Fall {
  readonly before: number;
  readonly fall: number;
  /** SSE0 - SSE_step = k (n-k)/n fall^2. */
  readonly gain: number;
}

const bestFall = (contrasts: readonly number[]): Fall | undefined => {
  const n = contrasts.length;
  const total = contrasts.reduce((sum, r) => sum + r, 0);
  let best: Fall | undefined;
  let sum = 0;
  for (let k = 1; k < n; k += 1) {
    sum += at(contrasts, k - 1);
    const fall = sum / k - (total - sum) / (n - k);
    const gain = ((k * (n - k)) / n) * fall * fall;
    if (fall > 0 && (best === undefined || gain > best.gain)) best = { before: k, fall, gain };
  }
  return best;
};
