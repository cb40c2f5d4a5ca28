// From the years to the chance: each cylinder against the others, and the one nearest to the maker's minimum.

import { countingWithin, type Wear, type WearLine } from "../../decision/index.ts";
import { believedPerYear, believing, chanceAbove } from "../../history/index.ts";
import { dateOfDay, dayNumber, daysInYear, yearsBetween } from "../../quantity/index.ts";
import { leastSquares } from "../../statistics/index.ts";
import type { KindHistory } from "../years/assess-history.ts";
import { type Deciding, renewedAfter } from "./deciding.ts";
import { levelPoints } from "./level-line.ts";

/** The chance that a cylinder passes a limit within the horizon, by wear, from the line through its years. */
export interface WearChannel {
  /** Label of the cylinder. */
  readonly label: string;
  readonly against: "ratio-to-others" | "maker-minimum";
  /** A share of the others, or a pressure [Pa gauge]. */
  readonly limit: number;
  /** `usual`: a rule of thumb, below which many engines run on. */
  readonly limitFrom: "maker" | "usual";
  /** ISO dates of the first and last test of the line, and how many there are. */
  readonly from: string;
  readonly to: string;
  readonly tests: number;
  /** Chance of passing the limit within the horizon. Wear only. */
  readonly probability: number;
}

export interface WearFound {
  readonly wear: Wear;
  readonly channels: readonly WearChannel[];
  /** Why the chance is unknown, as a sentence. */
  readonly unknown?: string;
  /** Wear of all cylinders alike shows only against a minimum of pressure. */
  readonly evenWear: "can be seen" | "cannot be seen";
}

/** @param years - the horizon  @source handbook/decision.md 3; handbook/statistics.md C.7, E, L.7 */
export const wearOf = (deciding: Deciding, years: number): WearFound => {
  const { cranking } = deciding.history;
  const why = cranking === undefined ? noCranking(deciding) : hindrance(deciding, cranking);
  if (cranking === undefined || why !== undefined) return unknown(why ?? noCranking(deciding));
  const ratios = ratioLines(deciding, cranking);
  const levels = levelLines(deciding, cranking);
  const nearest = levels.toSorted((a, b) => passed(b.line, years) - passed(a.line, years))[0];
  const lines = [...ratios, ...(nearest === undefined ? [] : [nearest])];
  const found = lines.map((one) => ({ ...one, probability: passed(one.line, years) }));
  if (found.length === 0) return unknown(tooFew(deciding));
  return {
    wear: countingWithin(
      [...ratios, ...levels].map(({ line }) => line),
      years,
    ),
    channels: found.map((one): WearChannel => channelOf(one)),
    evenWear: nearest === undefined ? "cannot be seen" : "can be seen",
  };
};

/** For a trend of the level, at three dates. */
const leastTests = 4;

type Found = Omit<WearChannel, "probability"> & { readonly line: WearLine };

const channelOf = ({ line: _line, ...channel }: Found & WearChannel): WearChannel => channel;

const unknown = (why: string): WearFound => ({
  wear: { kind: "unknown" },
  channels: [],
  unknown: why,
  evenWear: "cannot be seen",
});

const noCranking = ({ history }: Deciding): string =>
  history.leakDown === undefined
    ? "no cranking test counts yet"
    : "leak-down readings scatter too much from test to test to be drawn on; cranking tests over the years would tell";

/** Where no cylinder is held to its fellows: for want of a limit, or of tests. */
const tooFew = ({ record: { engine }, history: { cranking } }: Deciding): string => {
  const isOne = engine.cylinders.length === 1;
  const tests = cranking?.counted.filter(({ use }) => use === "full").length ?? 0;
  return engine.compressionLimits.minimum === undefined && (isOne || tests >= leastTests)
    ? `${isOne ? "one cylinder alone" : "each cylinder"} is held to the maker's minimum, which is not known: sealtrend engine set ${engine.id} limits.compression.minimum VALUE`
    : "too few tests for a trend, which takes four at three dates";
};

/** Why no line may be drawn on, though there are tests. */
const hindrance = ({ record, today }: Deciding, { result, counted }: KindHistory): string | undefined => {
  const last = counted.findLast(({ use }) => use === "full")?.test;
  if (last === undefined) return "no cranking test counts yet";
  if (renewedAfter({ record }, { date: last.date, today }).size > 0)
    return "nothing was tested since the last work on it";
  if (yearsAt(result) === undefined)
    return "less than a year of tests: nobody knows how much it runs in a year";
  const dead = result.cylinders.find(
    ({ course, alarms }) => alarms.includes("no-compression") && course !== "stepped-down",
  );
  if (dead !== undefined)
    return `cylinder ${dead.label} held nothing in any test, and nothing cannot be drawn on`;
  const stepped = result.cylinders.find(
    ({ course, shape, alarms, change }) =>
      course === "stepped-down" ||
      shape?.shape === "sudden" ||
      (alarms.length === 0 && change?.flagged === true && change.change < 0),
  );
  if (stepped === undefined) return undefined;
  if (stepped.cameBack !== undefined)
    return `cylinder ${stepped.label} was low and is back, and what comes and goes cannot be drawn on`;
  const moved =
    stepped.wentOn === undefined
      ? "moved in one step"
      : "moved in a step or steadily, which cannot be told yet";
  return `cylinder ${stepped.label} ${moved}, and a step cannot be drawn on`;
};

/** Places of the tests in years; on a meter by how much it runs in a year. */
const yearsAt = ({ axis, tests }: KindHistory["result"]): readonly number[] | undefined =>
  axis.perYear === undefined ? undefined : tests.map(({ x }) => x / axis.slopePer / (axis.perYear ?? 1));

interface Points {
  readonly places: readonly number[];
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** What counts of a channel in its current epoch. */
const pointsOf = (
  { result }: KindHistory,
  values: readonly (number | undefined)[],
  since: number,
): Points => {
  const years = yearsAt(result) ?? [];
  const places = result.tests.flatMap(({ use }, at) =>
    use === "full" && at >= since && values[at] !== undefined ? [at] : [],
  );
  return {
    places,
    x: places.map((at) => years[at] ?? 0),
    y: places.map((at) => values[at] ?? 0),
  };
};

const ratioLines = (deciding: Deciding, history: KindHistory): readonly Found[] => {
  const { scatter, cylinders } = history.result;
  return cylinders.flatMap(({ label, limit, ratios, since = 0 }): Found[] => {
    const points = pointsOf(history, ratios, since);
    if (limit === undefined || points.x.length === 0) return [];
    const line = {
      label,
      x: points.x,
      y: points.y,
      variance: scatter.s ** 2,
      df: scatter.df,
      limit: Math.log(limit.value),
      now: nowOf(deciding, history, points),
    };
    const stated = deciding.record.engine.compressionLimits.lowestToHighest;
    const limitFrom = stated === undefined ? "usual" : "maker";
    return [
      { label, against: "ratio-to-others", limit: limit.value, limitFrom, ...spanOf(history, points), line },
    ];
  });
};

/** Only where a trend of its own is known (from four tests at three places on). */
const levelLines = (deciding: Deciding, history: KindHistory): readonly Found[] => {
  const { result } = history;
  return result.cylinders.flatMap(({ label, absolute, levels, since = 0 }): Found[] => {
    const points = pointsOf(history, levels, since);
    if (absolute?.trend === undefined || points.x.length < leastTests) return [];
    const gauges = new Set(points.places.map((at) => result.tests[at]?.countsAs ?? result.tests[at]?.gauge))
      .size;
    const carried = levelPoints(
      { x: points.x, y: points.y },
      { trend: absolute.trend, perYear: result.axis.perYear ?? 1, gauges },
    );
    const { df } = absolute.trend;
    const now = nowOf(deciding, history, points);
    const line = { label, ...carried, df, limit: absolute.minimum, now, oneOf: "level" };
    const limit = Math.exp(absolute.minimum);
    return [{ label, against: "maker-minimum", limit, limitFrom: "maker", ...spanOf(history, points), line }];
  });
};

const spanOf = ({ result, start }: KindHistory, { places }: Points) => {
  const dateAt = (at: number): string => dateOf(start, result.tests[at]?.years ?? 0);
  return { from: dateAt(places[0] ?? 0), to: dateAt(places.at(-1) ?? 0), tests: places.length };
};

const dateOf = (start: string, years: number): string => dateOfDay(dayNumber(start) + years * daysInYear);

/** Today on the axis of the line: the last test of it, and the years since. */
const nowOf = ({ today }: Deciding, { result, start }: KindHistory, { places, x }: Points): number => {
  const last = dateOf(start, result.tests[places.at(-1) ?? 0]?.years ?? 0);
  return (x.at(-1) ?? 0) + Math.max(0, yearsBetween(last, today));
};

/** As the decision reckons it: least squares, the variance from outside, losses believed beforehand. */
const passed = (line: WearLine, years: number): number => {
  const { slope, meanX, meanY, sxx } = leastSquares(line.x, line.y);
  const { variance, df } = line;
  const plain = {
    meanX,
    meanY,
    slope,
    levelVariance: variance / line.x.length,
    slopeVariance: variance / sxx,
    df,
  };
  const known = believing(plain, believedPerYear);
  const today = line.now ?? line.x.at(-1) ?? 0;
  const below = (ahead: number): number => 1 - chanceAbove(known, line.limit, today + ahead);
  return Math.max(below(0), below(years));
};
