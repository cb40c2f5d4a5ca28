// One test out of step (guard G3): which, which cylinder in it, and by how much.

import { ladder } from "../../decision/index.ts";
import { median } from "../../statistics/index.ts";
import type { CylinderAssessment, TestAssessment } from "../assessment.ts";
import { listed } from "../labels.ts";
import { type SwappedOrder, swappedOrder } from "../swapped-order.ts";
import type { Deciding } from "./deciding.ts";
import { type Row, percent, theOthers } from "./row.ts";

/** One test out of step with the engine's others or with its fellows, to be read again before anything follows from
 *  it. */
export interface OddTest {
  /** Id and date of the test to read again. */
  readonly test: string;
  readonly date: string;
  readonly cylinder: string;
  readonly kind: "dry" | "leak-down";
  /** What it is out of step with: its fellows that day, its own past, or the low reading of the test before. */
  readonly against: "others" | "own-past" | "test-before";
  /** Fraction: how far below; of a leak-down how much more is lost; beside the test before how much higher. */
  readonly by: number;
  /** The test before, where one of the two is odd. */
  readonly before?: string;
  /** The test before said the same of another cylinder: likely two readings changed places. */
  readonly swapped?: SwappedOrder;
  /** As told to a mechanic. */
  readonly text: string;
}

type Odd = Pick<OddTest, "cylinder" | "kind" | "against" | "by" | "before">;

/** Flagged once and by one instrument only, however far; out of its own past in this one test, with nothing confirmed; or low in the test
 *  before and sound again with no work in between, so that one of the two is odd. A cylinder that another line of evidence
 *  speaks against as well is none of these: two that agree are not one that is odd. The widest stands for all.
 *  @source handbook/decision.md 2, G3 */
export const oddTestOf = (deciding: Deciding, rows: readonly Row[]): OddTest | undefined => {
  const { main } = deciding;
  if (main === undefined) return undefined;
  const isShown = (one: CylinderAssessment): boolean =>
    one.standing === "lagging" && !isLaggingOnce(one, deciding);
  if (main.cylinders.some(isShown)) return undefined;
  const found = [flaggedOnce(main, deciding), fallen(main, deciding), recovered(main, deciding)]
    .map((odd) => odd.filter((one) => !isBorneOut(one, rows, deciding)))
    .find((odd) => odd.length > 0);
  const widest = found?.reduce((a, b) => (b.by > a.by ? b : a));
  if (widest === undefined) return undefined;
  const { id, date } = main.test;
  const swapped = widest.kind === "dry" ? swappedOrder(deciding.record, main.test) : undefined;
  const others = theOthers(main.cylinders.length);
  return {
    test: id,
    date,
    ...widest,
    ...(swapped === undefined ? {} : { swapped }),
    text:
      swapped === undefined
        ? textOf(widest, id, { others, deciding })
        : swappedText(widest, swapped, { id, others }),
  };
};

/** Both are named, and the likeliest reason first. Common practice, no source. */
const swappedText = (
  { cylinder, by }: Odd,
  { pair, before, by: then }: SwappedOrder,
  { id, others }: { readonly id: string; readonly others: string },
): string => {
  const other = pair.find((label) => label !== cylinder) ?? "";
  return `cylinder ${cylinder} read ${percent(by)} below ${others} in ${id} and cylinder ${other} ${percent(then)} below ${cylinder} in ${before}, as if once entered in swapped order`;
};

/** Below a limit in this one reading, and no years, no oil and no leak-down beside it.
 *  @source handbook/statistics.md L.8 (below a limit it lags at once), handbook/decision.md 2, G3 (repeat it) */
const isLaggingOnce = (one: CylinderAssessment, { history, leakDown }: Deciding): boolean => {
  const { label, dryStanding, flagged, confirmed, pressures, heard } = one;
  const years = history.cranking?.result.cylinders.find((other) => other.label === label)?.alarms ?? [];
  return (
    dryStanding === "lagging" &&
    flagged &&
    confirmed !== true &&
    pressures.wet === undefined &&
    heard === undefined &&
    leakDown === undefined &&
    years.every((alarm) => alarm === "no-compression")
  );
};

const flaggedOnce = ({ cylinders }: TestAssessment, deciding: Deciding): readonly Odd[] =>
  cylinders.flatMap((one): Odd[] => {
    const { label, dryStanding, belowOthers, leakDown, pressures } = one;
    const isDryOnce = dryStanding === "suspect" || isLaggingOnce(one, deciding);
    if (isDryOnce === (leakDown?.standing === "suspect")) return [];
    const found = { cylinder: label, against: "others" } as const;
    // where the others hold nothing either there is nothing to be below
    const nothing = pressures.dry?.value === 0 ? 1 : 0;
    if (isDryOnce) return [{ ...found, kind: "dry", by: belowOthers ?? nothing }];
    const others = cylinders.flatMap((one) =>
      one.label === label || one.leakDown === undefined ? [] : [one.leakDown.lost],
    );
    const usual = others.length === 0 ? 0 : median(others);
    return [{ ...found, kind: "leak-down", by: (leakDown?.lost ?? 0) - usual }];
  });

const placeIn = ({ history }: Deciding, { test }: TestAssessment): number =>
  (history.cranking?.result.tests ?? []).findIndex(({ ids }) => ids.includes(test.id));

const fallen = (main: TestAssessment, deciding: Deciding): readonly Odd[] => {
  const now = placeIn(deciding, main);
  return (deciding.history.cranking?.result.cylinders ?? []).flatMap(({ label, alarms, change }): Odd[] =>
    alarms.length === 0 && change?.flagged === true && change.change < 0 && change.test === now
      ? [{ cylinder: label, kind: "dry", against: "own-past", by: -Math.expm1(change.change) }]
      : [],
  );
};

/** So much higher than in the test before, ln, is no scatter and no healing; judgement. */
const recovery = 0.1;

const recovered = (main: TestAssessment, deciding: Deciding): readonly Odd[] => {
  const { tests = [], cylinders: years = [] } = deciding.history.cranking?.result ?? {};
  const now = placeIn(deciding, main);
  const before = tests.findLastIndex(({ use }, at) => use === "full" && at < now);
  const id = tests[before]?.ids[0];
  return main.cylinders.flatMap(({ label, flagged, flaggedBefore }): Odd[] => {
    const ratios = years.find((one) => one.label === label)?.ratios ?? [];
    const rise = (ratios[now] ?? 0) - (ratios[before] ?? 0);
    return flaggedBefore && !flagged && rise > recovery && id !== undefined
      ? [{ cylinder: label, kind: "dry", against: "test-before", by: Math.expm1(rise), before: id }]
      : [];
  });
};

/** Whether a row of another line speaks for wear of the same cylinder. What was risen again speaks for none. */
const isBorneOut = ({ cylinder, kind, against }: Odd, rows: readonly Row[], { record }: Deciding): boolean =>
  against !== "test-before" &&
  rows.some(
    ({ row, cylinder: of }) =>
      ladder[row].line !== (kind === "dry" ? "cranking" : "leak-down") &&
      (of === cylinder || record.engine.cylinders.length === 1) &&
      Object.values(ladder[row].points).some((points) => points > 0),
  );

const textOf = (
  odd: Odd,
  id: string,
  { others, deciding }: { readonly others: string; readonly deciding: Deciding },
): string => {
  const { cylinder, kind, against, by, before = "" } = odd;
  const share = percent(by);
  // of two losses the difference is no share of either
  const points = share.replace(/ ?%$/, " percentage points");
  const beside = besideText(odd, deciding);
  if (against === "test-before")
    return `cylinder ${cylinder} read low in ${before} and ${share} higher in ${id}, with no work in between: one of the two is out of step`;
  const isAlone = deciding.record.engine.cylinders.length === 1;
  if (kind === "leak-down")
    return `cylinder ${cylinder} lost ${isAlone ? share : `${points} more than ${others}`} in the leak-down of ${id}${beside}`;
  if (by === 1) return `cylinder ${cylinder} held nothing in ${id}${beside}`;
  const [other] = deciding.record.engine.cylinders.filter((label) => label !== cylinder);
  if (against === "own-past" && other !== undefined && deciding.record.engine.cylinders.length === 2)
    return `cylinder ${cylinder} read ${share} lower against ${other} than before in ${id}, or ${other} has gained${beside}`;
  // alone, or where all are low, it is below no other
  if (against === "others" && (isAlone || share === percent(0)))
    return `cylinder ${cylinder} read low in ${id}${beside}`;
  return against === "others"
    ? `cylinder ${cylinder} read ${share} below ${others} in ${id}${beside}`
    : `cylinder ${cylinder} read ${share} lower than before in ${id}${beside}`;
};

/** Whether it stands alone: what the same instrument says besides is no second method, and yet it is something. */
const besideText = ({ cylinder, kind }: Odd, { main, history }: Deciding): string => {
  const own = main?.cylinders.find(({ label }) => label === cylinder);
  const places = kind === "dry" ? [] : (own?.heard ?? []).map(({ place }) => place);
  const heard = places.filter((place) => place !== "none");
  const air = heard.length === 0 ? "" : `, with its air at ${listed(heard.map(placeText))}`;
  const years = (kind === "dry" ? history.cranking : history.leakDown)?.result.cylinders;
  const isOld = years?.some(({ label, alarms }) => label === cylinder && alarms.length > 0) === true;
  const instrument = kind === "dry" ? "cranking" : "the leak-down";
  if (isOld) return `${air}; the years say so too, but all by ${instrument}`;
  return air === "" ? ", and nothing else says so" : `${air}, and no other test says so`;
};

const placeText = (place: string): string =>
  place === "neighbour" || place === "plug"
    ? `a ${place}`
    : place === "outside"
      ? "the outside"
      : `the ${place}`;
