// How many more tests until the loss of one cylinder would show: a plan made beforehand, from the design of the tests alone.

import { median, varianceOfMedian } from "../statistics/index.ts";
import { at } from "./at.ts";
import { chanceOfAlarm, type Design } from "./chance-of-alarm.ts";
import type { HistoryKind } from "./input.ts";
import { cellVariance, noiseOf } from "./noise.ts";

export interface LossPlan {
  readonly kind: HistoryKind;
  /** Read in every test; with fewer than 2 there is nothing to compare. */
  readonly cylinders: number;
  /** Readings of each cylinder in a test, 1 or more. */
  readonly repeats: number;
  /** The same in each further test; absent = as before. */
  readonly planned?: number;
  /** When the tests of the epoch were made [years, from any fixed day], in order; may be empty. */
  readonly made: readonly number[];
  /** From one further test to the next [years], above 0. */
  readonly spacing: number;
  /** The loss sought [ln units a year], above 0: .03 for 3 % a year. */
  readonly loss: number;
  /** When the cylinder began to lose: with the first test, or with the last one made, healthy until then. */
  readonly began: "first-test" | "last-test";
  /** Scatter of one contrast as the history shows it (`HistoryResult.scatter.s`); absent = as usually assumed. */
  readonly scatter?: number;
}

export interface LossShown {
  /** Further tests that raise the alarm with 8 chances in 10. */
  readonly tests: number;
  /** From the last test made to the last of these [years]; where none was made, from the first of them. */
  readonly years: number;
}

/** What "shows" means in a plan. */
export const wantedChance = 0.8;
/** More than any history holds. */
export const mostTests = 60;

/** The usual time between the tests of an engine: the middle one of the gaps [years]; undefined below two tests. */
export const usualSpacing = (years: readonly number[]): number | undefined => {
  const gaps = years.slice(1).map((later, k) => later - at(years, k));
  return gaps.length === 0 ? undefined : median(gaps);
};

/** The first further test at which the alarm would be raised with 8 chances in 10 (chance-of-alarm.ts).
 *  @returns undefined where 60 tests do not suffice, and below two cylinders
 *  @throws RangeError on a spacing, loss, scatter or number of repeats out of range
 *  @checked tests/bench/simulate.mjs, for cranking: 12 of 13 plans from 2 to 12 cylinders agree with simulated histories to
 *  the test, bad readings among them; tests every three months come out one early (78 of 100 were found by then) */
export const testsUntilShown = (plan: LossPlan): LossShown | undefined => {
  check(plan);
  if (plan.cylinders < 2) return undefined;
  const { made, spacing } = plan;
  const last = made.at(-1);
  for (let tests = 1; tests <= mostTests; tests += 1) {
    const further = Array.from({ length: tests }, (_, k) =>
      last === undefined ? k * spacing : last + (k + 1) * spacing,
    );
    const x = [...made, ...further];
    if (x.length >= 4 && chanceOfAlarm(designOf(plan, x)) >= wantedChance)
      return { tests, years: at(further, tests - 1) - (last ?? 0) };
  }
  return undefined;
};

const check = ({ cylinders, repeats, planned = repeats, spacing, loss, scatter = 1 }: LossPlan): void => {
  const isRight =
    [spacing, loss, scatter].every((value) => value > 0 && value < Infinity) && repeats >= 1 && planned >= 1;
  if (!isRight || !Number.isInteger(cylinders))
    throw new RangeError(
      "testsUntilShown: spacing, loss and scatter above 0, repeats from 1, whole cylinders",
    );
};

const designOf = (plan: LossPlan, x: readonly number[]): Design => {
  const { kind, cylinders, repeats, planned = repeats, loss, made } = plan;
  const onset = plan.began === "first-test" ? at(x, 0) : (made.at(-1) ?? at(x, 0));
  const lost = x.map((place) => loss * Math.max(0, place - onset));
  const further = 1 - made.length / x.length;
  const noise = noiseOf[kind];
  const contrast = 1 + varianceOfMedian(cylinders - 1);
  const assumed = cellVariance(noise, repeats + further * (planned - repeats)) * contrast;
  // other repeats change the share of the reading in the scatter, as usually assumed; tests of both kinds are averaged
  const before = cellVariance(noise, repeats);
  const share = 1 + further * (cellVariance(noise, planned) / before - 1);
  const variance = share * (plan.scatter === undefined ? before * contrast : plan.scatter ** 2);
  return { x, lost, cylinders, assumed, variance };
};
