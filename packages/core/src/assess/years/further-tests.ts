// What to measure next to know more: how many further tests until a loss of one cylinder would show.

import {
  type HistoryInput,
  type HistoryResult,
  type LossShown,
  testsUntilShown,
  usualSpacing,
} from "../../history/index.ts";
import { mean } from "../../statistics/index.ts";

export interface FurtherTests {
  /** The loss sought [ln units a year]. */
  readonly loss: number;
  /** From one test to the next [years]. */
  readonly spacing: number;
  /** `owner`: the usual time between the tests so far; `yearly`: a year, where that is no plan. */
  readonly by: "owner" | "yearly";
  /** Readings of each cylinder in a test so far, on average. */
  readonly repeats: number;
  /** Since when the cylinder loses: all along where nothing is known yet, from the last test on where it is steady. */
  readonly began: "first-test" | "last-test";
  /** With as many readings as so far; absent where 60 tests do not suffice. */
  readonly asNow?: LossShown;
  /** With three readings of each cylinder; absent where so many are taken already. */
  readonly ofThree?: LossShown;
}

/** A loss that asks for something to be done within a few years; a choice. */
const sought = 0.03;
const three = 3;
/** Tests nearer together repeat each other, tests further apart are no habit [years]; judgement. */
const habit = { least: 0.25, most: 3 } as const;

/** For an engine with two tests or more that compare cylinders, none of which raises an alarm: what is found needs other
 *  tests than more of the same. The epoch is the one that most cylinders are in, of equals the later.
 *  @returns undefined where there is nothing to plan from  @source handbook/statistics.md F, I (testsUntilShown) */
export const furtherTests = (input: HistoryInput, result: HistoryResult): FurtherTests | undefined => {
  const { cylinders, scatter } = result;
  const full = result.tests.flatMap(({ use, years }, place) => {
    const read = cylinders.filter(({ levels }) => levels[place] !== undefined).length;
    return use === "full" && read >= 2 ? [{ years, place, read }] : [];
  });
  const usual = usualSpacing(full.map(({ years }) => years));
  if (usual === undefined || cylinders.some(({ alarms }) => alarms.length > 0)) return undefined;
  const from = mostCommon(cylinders.map(({ since = Infinity }) => since));
  const made = full.flatMap(({ years, place }) => (place >= from ? [years] : []));
  const by = usual >= habit.least && usual <= habit.most ? "owner" : "yearly";
  const spacing = by === "owner" ? usual : 1;
  const repeats = repeatsOf(input);
  const open = cylinders.filter(({ course }) => course === "too-short-to-tell");
  const began = 2 * open.length > cylinders.length ? "first-test" : "last-test";
  const plan = {
    kind: input.kind,
    cylinders: Math.max(...full.map(({ read }) => read)),
    repeats,
    made,
    spacing,
    loss: sought,
    began,
    scatter: scatter.s,
  } as const;
  const asNow = testsUntilShown(plan);
  const ofThree = repeats < three ? testsUntilShown({ ...plan, planned: three }) : undefined;
  if (asNow === undefined && ofThree === undefined) return undefined;
  return {
    loss: sought,
    spacing,
    by,
    repeats,
    began,
    ...(asNow === undefined ? {} : { asNow }),
    ...(ofThree === undefined ? {} : { ofThree }),
  };
};

const repeatsOf = ({ tests }: HistoryInput): number => {
  const counts = tests.flatMap(({ use, cells }) =>
    use === "full" ? cells.flatMap((cell) => (cell.kind === "read" ? [cell.repeats] : [])) : [],
  );
  return counts.length === 0 ? 1 : mean(counts);
};

/** Of equally common ones the largest. */
const mostCommon = (numbers: readonly number[]): number => {
  const count = (number: number): number => numbers.filter((one) => one === number).length;
  return numbers.toSorted((a, b) => count(b) - count(a) || b - a)[0] ?? 0;
};
