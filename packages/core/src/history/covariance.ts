// How the levels of tests depend on each other: by their gauge, and by constants that they share.

import { type MergedTest, scaleOf } from "./merge-tests.ts";
import { cellVariance, type Noise } from "./noise.ts";
import { meanRepeats } from "./reading-table.ts";
import { varianceOfMedian } from "../statistics/index.ts";

/** V_st = sg^2 [same gauge] + [s=t](sc^2 + s0_t^2 v_(n_t) + u_t^2) + sum_q (g_qs u_q)(g_qt u_q). A gauge not known is
 *  one of its own; a gauge linked to another is the same. Tests are handed over one by one; each gives its row of V, up to
 *  and with itself.  @source handbook/statistics.md L.7 */
export const covarianceRows = (noise: Noise): ((test: MergedTest) => Float64Array) => {
  const shared = sharedRows(noise);
  return (test) => {
    const row = shared(test);
    const own = row.length - 1;
    row[own] = (row[own] ?? NaN) + ownVariance(test, noise);
    return row;
  };
};

/** The same without the part that is a test's own. */
export const sharedRows = (noise: Noise): ((test: MergedTest) => Float64Array) => {
  const names = new Map<string, number>();
  const known: Sharing[] = [];
  return (test) => {
    const one = sharingOf(test, names);
    known.push(one);
    const row = new Float64Array(known.length);
    known.forEach((other, t) => {
      const sameGauge = one === other || (one.scale !== undefined && one.scale === other.scale);
      row[t] = (sameGauge ? noise.gauge ** 2 : 0) + sharedPart(one, other);
    });
    return row;
  };
};

/** sc^2 + s0_t^2 v_(n_t) + u_t^2. */
export const ownVariance = (
  { cells, correctionUncertainty }: Pick<MergedTest, "cells" | "correctionUncertainty">,
  noise: Noise,
): number => {
  const read = cells.filter((cell) => cell.kind === "read").length;
  const middle = cellVariance(noise, meanRepeats([{ cells }])) * varianceOfMedian(read);
  return noise.common ** 2 + middle + correctionUncertainty ** 2;
};

/** What a test shares with others. Names are counted through, so that a pair of tests needs no look-up by text. */
interface Sharing {
  readonly scale: string | undefined;
  /** The places of the test's own constants, in its order, and every constant's size by place; 0 for one it lacks. */
  readonly places: readonly number[];
  readonly sizes: readonly number[];
}

const sharingOf = (test: MergedTest, names: Map<string, number>): Sharing => {
  const places: number[] = [];
  const sizes: number[] = [];
  for (const [name, size] of Object.entries(test.sharedUncertainty ?? {})) {
    const place = names.get(name) ?? names.size;
    names.set(name, place);
    places.push(place);
    while (sizes.length <= place) sizes.push(0);
    sizes[place] = size;
  }
  return { scale: scaleOf(test), places, sizes };
};

const sharedPart = ({ places, sizes }: Sharing, other: Sharing): number => {
  let sum = 0;
  for (const place of places) sum += (sizes[place] ?? 0) * (other.sizes[place] ?? 0);
  return sum;
};
