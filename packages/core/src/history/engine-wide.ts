// What the engine as a whole did: the only place where wear of all cylinders alike can be seen.

import { studentCdf, studentQuantile } from "../statistics/index.ts";
import { covarianceRows } from "./covariance.ts";
import { generalisedLine } from "./generalised-line.ts";
import type { MergedTest } from "./merge-tests.ts";
import type { Noise } from "./noise.ts";
import { distinctPlaces } from "./series.ts";

export type EngineWideWord = "falling" | "rising" | "no-change-shown" | "too-short-to-tell";

export interface EngineWideSlope {
  /** ln units a year, or a 1000 units of the meter. */
  readonly slope: number;
  /** As the assumed sizes have it. */
  readonly standardError: number;
  /** Q, and phi = (8 + Q)/(8 + T - 2): how the assumed sizes compare with what was seen. From three tests. */
  readonly misfit?: number;
  readonly phi?: number;
  /** t = b/(se sqrt phi) on 8 + T - 2 degrees of freedom; p one-sided, small when the engine loses. */
  readonly t?: number;
  readonly df?: number;
  readonly p?: number;
  /** One-sided 95 % bounds of the loss, each by itself: at most, and at least. */
  readonly lossBound?: number;
  readonly lossLeast?: number;
  /** The slowest loss that these tests would have shown. */
  readonly leastLossShown?: number;
}

export interface EngineWide {
  readonly word: EngineWideWord;
  /** First test since the last work on all cylinders, by place in the list of tests. */
  readonly since: number;
  /** Tests that count. */
  readonly count: number;
  /** Absent below two tests at different places. With two tests it is the change between them, no trend. */
  readonly trend?: EngineWideSlope;
}

/** The same with what it rests on. */
export interface Wide {
  readonly common: EngineWide;
  /** From the first test to the last that it uses, in the unit of slopes. */
  readonly span: number;
  /** a_t, by place of the test; undefined where it does not count. */
  readonly effects: readonly (number | undefined)[];
  /** Of the level of one cylinder from test to test. */
  readonly variance: number;
}

/** The line through the test effects; words from four tests, at one-sided 5 %.
 *  @param x - place on the axis, and `effects` a_t, of each of the tests */
export const engineWide = (
  tests: readonly MergedTest[],
  {
    x,
    effects,
    since,
  }: { readonly x: readonly number[]; readonly effects: readonly number[]; readonly since: number },
  noise: Noise,
): EngineWide => {
  const count = tests.length;
  const line = count < 2 ? undefined : generalisedLine(x, effects, tests.map(covarianceRows(noise)));
  if (line === undefined) return { word: "too-short-to-tell", since, count };
  const { slope, standardError, misfit } = line;
  if (count === 2 || distinctPlaces(x, 0.02) < 3)
    return { word: "too-short-to-tell", since, count, trend: { slope, standardError } };
  const df = 8 + count - 2;
  const phi = (8 + misfit) / df;
  const error = standardError * Math.sqrt(phi);
  const t = slope / error;
  const p = studentCdf(t, df);
  const leastLossShown = studentQuantile(0.95, df) * error;
  const bounds = { lossBound: leastLossShown - slope, lossLeast: -leastLossShown - slope, leastLossShown };
  const trend = { slope, standardError, misfit, phi, t, df, p, ...bounds };
  const rising = studentCdf(-t, df) < 0.05;
  const word = count < 4 ? "too-short-to-tell" : p < 0.05 ? "falling" : rising ? "rising" : "no-change-shown";
  return { word, since, count, trend };
};
