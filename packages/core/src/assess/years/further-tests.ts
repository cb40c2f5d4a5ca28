// What to measure next to know more: how many further tests until a loss of one cylinder, or of all alike, would show.

import {
  type HistoryInput,
  type HistoryResult,
  type LossShown,
  testsUntilShown,
  usualSpacing,
  wholeTestsUntilShown,
} from "../../history/index.ts";
import { mean } from "../../statistics/index.ts";

/** Since when it loses: all along where nothing is known yet, from the last test on where it is steady. */
type Began = "first-test" | "last-test";

/** How soon it would show. */
interface PlannedTests {
  readonly began: Began;
  /** With as many readings as so far; absent where 60 tests do not suffice. */
  readonly asNow?: LossShown;
  /** With three readings of each cylinder; absent where so many are taken already, or 60 tests do not suffice. */
  readonly ofThree?: LossShown;
}

export interface FurtherTests {
  /** The loss sought [ln units a year]. */
  readonly loss: number;
  /** From one test to the next [years]. */
  readonly spacing: number;
  /** `owner`: the usual time between the tests so far; `yearly`: a year, where that is no plan. */
  readonly by: "owner" | "yearly";
  /** Readings of each cylinder in a test so far, on average. */
  readonly repeats: number;
  /** One cylinder against the others; absent where there is nothing to compare. */
  readonly one?: PlannedTests;
  /** All cylinders alike, or the only one; absent where the engine as a whole moves already. `gauge`: further tests are
   *  planned with the last one, where it has a name. */
  readonly whole?: PlannedTests & { readonly gauge?: string };
}

/** A loss that asks for something to be done within a few years; a choice. */
const sought = 0.03;
const three = 3;
/** Tests nearer together repeat each other, tests further apart are no habit [years]; judgement. */
const habit = { least: 0.25, most: 3 } as const;

/** For an engine with two tests or more, none of whose cylinders raises an alarm: what is found needs other tests than more
 *  of the same. The epoch is the one that most cylinders are in, of equals the later.
 *  @returns undefined where there is nothing to plan from
 *  @source handbook/statistics.md F, I (testsUntilShown), L.7 (wholeTestsUntilShown) */
export const furtherTests = (input: HistoryInput, result: HistoryResult): FurtherTests | undefined => {
  const { cylinders } = result;
  const least = Math.min(2, cylinders.length);
  const full = result.tests.flatMap(({ use, years, gauge }, place) => {
    const read = cylinders.filter(({ levels }) => levels[place] !== undefined).length;
    return use === "full" && read >= least
      ? [{ years, place, read, ...(gauge === undefined ? {} : { gauge }) }]
      : [];
  });
  const usual = usualSpacing(full.map(({ years }) => years));
  if (usual === undefined || cylinders.some(({ alarms }) => alarms.length > 0)) return undefined;
  const by = usual >= habit.least && usual <= habit.most ? "owner" : "yearly";
  const habits = { spacing: by === "owner" ? usual : 1, repeats: repeatsOf(input) };
  const one = oneOf(input, result, { full, ...habits });
  const whole = wholeOf(input, result, habits);
  const gauge = full.at(-1)?.gauge;
  if (one === undefined && whole === undefined) return undefined;
  return {
    loss: sought,
    by,
    ...habits,
    ...(one === undefined ? {} : { one }),
    ...(whole === undefined ? {} : { whole: { ...whole, ...(gauge === undefined ? {} : { gauge }) } }),
  };
};

interface Habits {
  readonly spacing: number;
  readonly repeats: number;
}

interface Made {
  readonly years: number;
  readonly place: number;
  readonly read: number;
}

const oneOf = (
  { kind }: HistoryInput,
  { cylinders, scatter }: HistoryResult,
  { full, spacing, repeats }: Habits & { readonly full: readonly Made[] },
): PlannedTests | undefined => {
  if (cylinders.length < 2) return undefined;
  const from = mostCommon(cylinders.map(({ since = Infinity }) => since));
  const made = full.flatMap(({ years, place }) => (place >= from ? [years] : []));
  const open = cylinders.filter(({ course }) => course === "too-short-to-tell");
  const began = 2 * open.length > cylinders.length ? "first-test" : "last-test";
  const read = Math.max(...full.map((one) => one.read));
  const plan = {
    kind,
    cylinders: read,
    repeats,
    made,
    spacing,
    loss: sought,
    began,
    scatter: scatter.s,
  } as const;
  return planned(began, repeats, (readings) => testsUntilShown({ ...plan, planned: readings }));
};

const wholeOf = (
  input: HistoryInput,
  { common: { word, trend }, cylinders }: HistoryResult,
  { spacing, repeats }: Habits,
): PlannedTests | undefined => {
  if (word === "falling" || word === "rising") return undefined;
  const isKnown = cylinders.length === 1 ? cylinders[0]?.course === "steady" : word === "no-change-shown";
  const began = isKnown ? "last-test" : "first-test";
  const plan = {
    spacing,
    loss: sought,
    began,
    ...(trend?.phi === undefined ? {} : { phi: trend.phi }),
  } as const;
  return planned(began, repeats, (readings) => wholeTestsUntilShown(input, { ...plan, repeats: readings }));
};

const planned = (
  began: Began,
  repeats: number,
  shown: (readings: number) => LossShown | undefined,
): PlannedTests | undefined => {
  const asNow = shown(repeats);
  const ofThree = repeats < three ? shown(three) : undefined;
  if (asNow === undefined && ofThree === undefined) return undefined;
  return {
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
