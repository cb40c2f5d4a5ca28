export { mean, median, sampleStandardDeviation, scaledMad } from "./describe.ts";
export { keeping } from "./kept.ts";
export { normalCdf, normalDensity, normalQuantile } from "./normal.ts";
export { studentCdf, studentQuantile } from "./student.ts";
export { chiSquareQuantile } from "./chi-square.ts";
export { fisherUpperTail } from "./fisher.ts";
export { gaugeStudy, type GaugeStudy } from "./gauge-study.ts";
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
export {
  pooledRepeatability,
  repeatabilityInterval,
  repeatabilityLimit,
  repeatsTrend,
  type PooledRepeatability,
} from "./repeatability.ts";
