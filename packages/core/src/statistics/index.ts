export { mean, median, sampleStandardDeviation, scaledMad } from "./describe.ts";
export { normalCdf, normalQuantile } from "./normal.ts";
export { studentCdf, studentQuantile } from "./student.ts";
export { rangeUpperTail } from "./studentised-range.ts";
export { varianceOfMedian } from "./variance-of-median.ts";
export { kendall, type Kendall } from "./kendall.ts";
export { theilSen, type SlopeInterval, type TheilSen } from "./theil-sen.ts";
export {
  leastSquares,
  leastSquaresThroughOrigin,
  type LeastSquares,
  type ThroughOrigin,
} from "./least-squares.ts";
export { pooledRepeatability, repeatabilityLimit, type PooledRepeatability } from "./repeatability.ts";
