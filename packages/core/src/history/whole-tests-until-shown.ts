// How many more tests until a loss of the engine as a whole would show: of one cylinder alone, or of all alike. A plan made
// beforehand, from the tests made and those to come.

import { studentQuantile } from "../statistics/index.ts";
import { at } from "./at.ts";
import { chanceBeyond } from "./chance-of-alarm.ts";
import { covarianceRows } from "./covariance.ts";
import { type DependentPlaces, dependentPlaces } from "./generalised-line.ts";
import type { HistoryInput } from "./input.ts";
import { layOut, wholeRows } from "./layout.ts";
import type { MergedTest } from "./merge-tests.ts";
import { distinctPlaces } from "./series.ts";
import { type LossPlan, type LossShown, mostTests, wantedChance } from "./tests-until-shown.ts";

export interface WholeLossPlan extends Pick<LossPlan, "spacing" | "loss" | "began"> {
  /** Readings of each cylinder in each further test, 1 or more. */
  readonly repeats: number;
  /** Misfit that the tests so far show beside the assumed sizes (`EngineWideSlope.phi`); absent = none. */
  readonly phi?: number;
}

/** The first further test at which the word `falling` would stand with 8 chances in 10. Further tests are as the last one
 *  that counts: its gauge, its cylinders, what its correction leaves in doubt. That an earlier look might have said so
 *  already is left out.
 *  @returns undefined where 60 tests do not suffice, or none counts yet
 *  @throws RangeError on a spacing, loss or number of repeats out of range
 *  @source handbook/statistics.md L.7, B  @checked tests/core/history/whole-tests-until-shown.test.ts: powers printed there,
 *  and tests/bench/simulate.mjs */
export const wholeTestsUntilShown = (input: HistoryInput, plan: WholeLossPlan): LossShown | undefined => {
  const { spacing, loss, repeats } = plan;
  if (!(spacing > 0 && loss > 0 && repeats >= 1 && spacing < Infinity && loss < Infinity))
    throw new RangeError("wholeTestsUntilShown: spacing and loss above 0, repeats from 1");
  const layout = layOut(input);
  const made = wholeRows(layout).map((row) => at(layout.tests, row));
  const last = made.at(-1);
  if (last === undefined) return undefined;
  const rowOf = covarianceRows(layout.noise);
  const x: number[] = [];
  const places = dependentPlaces();
  const add = (test: MergedTest): void => {
    x.push(test.years);
    places.add(test.years, rowOf(test));
  };
  for (const test of made) add(test);
  for (let tests = 1; tests <= mostTests; tests += 1) {
    add(likeLast(last, tests * spacing, repeats));
    if (x.length >= 4 && chanceOfFalling(x, places, { ...plan, last }) >= wantedChance)
      return { tests, years: tests * spacing };
  }
  return undefined;
};

const likeLast = (last: MergedTest, later: number, repeats: number): MergedTest => ({
  ...last,
  years: last.years + later,
  cells: last.cells.map((cell) => (cell.kind === "read" ? { ...cell, repeats } : cell)),
});

/** P(t < -t(.95; df)) with t = b/(se sqrt phi), df = 8 + T - 2: b about the slope of the loss, phi about
 *  (8 + phi0 (T - 2) + Q)/df, where Q is what the loss leaves beside its line. */
const chanceOfFalling = (
  x: readonly number[],
  places: DependentPlaces,
  { loss, began, last, phi = 1 }: WholeLossPlan & { readonly last: MergedTest },
): number => {
  const onset = began === "first-test" ? at(x, 0) : last.years;
  const lost = x.map((years) => -loss * Math.max(0, years - onset));
  const line = distinctPlaces(x, 0.02) < 3 ? undefined : places.lineThrough(lost);
  if (line === undefined) return 0;
  const df = 8 + x.length - 2;
  const misfit = (8 + phi * (x.length - 2) + line.misfit) / df;
  return chanceBeyond(studentQuantile(0.95, df), {
    size: -line.slope / (line.standardError * Math.sqrt(phi)),
    width: 1,
    inflation: Math.sqrt(misfit / phi),
    df,
  });
};
