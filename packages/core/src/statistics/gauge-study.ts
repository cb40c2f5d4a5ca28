// Several gauges, each reading every part more than once: how much of the scatter is repeats, how much the gauges.

import { mean } from "./describe.ts";
import { fisherUpperTail } from "./fisher.ts";

/** Standard deviations. */
export interface GaugeStudy {
  /** One gauge, one part, read again (EV). */
  readonly repeats: number;
  /** From gauge to gauge (AV). */
  readonly gauges: number;
  /** Both together (GRR). */
  readonly measuring: number;
  /** From part to part (PV). */
  readonly parts: number;
  /** 1.41 parts/measuring: how many steps between the parts the measuring can tell apart. */
  readonly steps: number;
  /** Whether a gauge reads some parts differently from the others, as a hose or a zero error would make it: F with its
   *  degrees of freedom and the chance of one so large where none does. Absent where no take differs from its cell's. */
  readonly interaction?: {
    readonly f: number;
    readonly df: readonly [upper: number, lower: number];
    readonly p: number;
  };
}

/** Two-way random analysis of variance, the interaction pooled with the repeats:
 *  EV² = (SS_error + SS_interaction)/df, AV² = (MS_gauges − EV²)/(parts·takes), PV² = (MS_parts − EV²)/(gauges·takes);
 *  what comes out negative is 0. Whether there is an interaction at all: F = MS_interaction/MS_error, MS_error of the
 *  repeats alone.
 *  @param cells - for each part, for each gauge, its takes: the same number everywhere
 *  @returns undefined unless there are two parts, two gauges and two takes at least, and as many everywhere
 *  @source the usual gauge study of AIAG MSA, 4th edition, as open test suites carry it @checked tests/published/gauge-study.test.ts */
export const gaugeStudy = (cells: readonly (readonly (readonly number[])[])[]): GaugeStudy | undefined => {
  const parts = cells.length;
  const gauges = cells[0]?.length ?? 0;
  const takes = cells[0]?.[0]?.length ?? 0;
  const isEven = cells.every((part) => part.length === gauges && part.every((cell) => cell.length === takes));
  if (!isEven || parts < 2 || gauges < 2 || takes < 2) return undefined;
  const all = cells.flat(2);
  const centre = mean(all);
  const squares = (values: readonly number[], about: number): number =>
    values.reduce((sum, value) => sum + (value - about) ** 2, 0);
  const partMeans = cells.map((part) => mean(part.flat()));
  const gaugeMeans = (cells[0] ?? []).map((_, g) => mean(cells.flatMap((part) => part[g] ?? [])));
  const ofParts = gauges * takes * squares(partMeans, centre);
  const ofGauges = parts * takes * squares(gaugeMeans, centre);
  const rest = squares(all, centre) - ofParts - ofGauges;
  const error = Math.max(0, rest) / (all.length - parts - gauges + 1);
  const between = (sum: number, groups: number, each: number): number =>
    Math.sqrt(Math.max(0, sum / (groups - 1) - error) / each);
  const repeats = Math.sqrt(error);
  const fromGauges = between(ofGauges, gauges, parts * takes);
  const fromParts = between(ofParts, parts, gauges * takes);
  const measuring = Math.hypot(repeats, fromGauges);
  const within = cells.flat().reduce((sum, cell) => sum + squares(cell, mean(cell)), 0);
  // less than rounding leaves is nothing
  const isNothing = within <= 1e-24 * squares(all, 0);
  const degrees = [(parts - 1) * (gauges - 1), parts * gauges * (takes - 1)] as const;
  return {
    repeats,
    gauges: fromGauges,
    measuring,
    parts: fromParts,
    steps: (1.41 * fromParts) / measuring,
    ...(isNothing ? {} : { interaction: interactionOf(Math.max(0, rest - within), within, degrees) }),
  };
};

/** F = MS_interaction/MS_error against the repeats alone. */
const interactionOf = (
  sum: number,
  within: number,
  df: readonly [upper: number, lower: number],
): NonNullable<GaugeStudy["interaction"]> => {
  const f = sum / df[0] / (within / df[1]);
  return { f, df, p: fisherUpperTail(f, ...df) };
};
