// Whether two gauges stand alike on all cylinders: a link from readings that contradict each other would spoil the years.

import { chiSquareQuantile, mean, median } from "../../statistics/index.ts";
import type { GaugeRatio } from "./gauge-ratios.ts";

/** The cylinders whose ratio lies further from the middle of all than its reach; where none does and all together scatter
 *  more than once in a hundred times, the lowest and the highest.  χ² = Σ (ln ratio − mean)²/(reach/3)²
 *  @returns labels in the engine's order; empty where the ratios go together */
export const disagreeing = (cylinders: readonly GaugeRatio[]): readonly string[] => {
  const logs = cylinders.map(({ ratio }) => Math.log(ratio));
  const middle = median(logs);
  const far = cylinders.filter(({ reach }, i) => Math.abs((logs[i] ?? NaN) - middle) > reach);
  if (far.length > 0) return far.map(({ label }) => label);
  const centre = mean(logs);
  const chiSquare = cylinders.reduce(
    (sum, { reach }, i) => sum + (((logs[i] ?? NaN) - centre) / (reach / 3)) ** 2,
    0,
  );
  if (chiSquare <= chiSquareQuantile(0.99, cylinders.length - 1)) return [];
  const ends = [Math.min(...logs), Math.max(...logs)];
  return cylinders.filter((_, i) => ends.includes(logs[i] ?? NaN)).map(({ label }) => label);
};
