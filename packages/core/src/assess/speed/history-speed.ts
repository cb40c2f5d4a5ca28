// Which value of each test the years are judged by: fully corrected where speed was refused for no test of the stretch, else
// in reference air for all of it. A stretch runs from one work on all cylinders to the next.

import { type SpeedCorrected, usualSpeedEffect } from "../../cranking/index.ts";
import { dayNumber } from "../../quantity/index.ts";
import type { Engine, EngineRecord, Test } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import type { CountedTest } from "../years/counted-test.ts";
import type { EngineFigures } from "../figures.ts";
import { workBreaks } from "../years/history-breaks.ts";
import { doubtOfSpeed } from "../limits.ts";
import { unevenOf } from "./even-speed.ts";
import type { SpeedAssessment } from "./speed-assessment.ts";
import { sweptOf } from "./speed-estimates.ts";
import { pressuresAtSpeed, speedOf } from "./speed.ts";
import type { KindValues } from "../values/values.ts";

/** Which value of one test the years are judged by: brought to the reference speed or in reference air alone. */
export interface TestSpeed {
  /** Absent where the test holds no dry reading to compare. */
  readonly speed?: SpeedAssessment;
  /** `full`: in reference air and at the reference speed; `air`: in reference air alone. */
  readonly counts: "full" | "air";
  /** In reference air = reading x factor. */
  readonly factor: number;
  /** In the engine's order: ln of what the speed adds to the reading in reference air. Where it is not brought to the
   *  reference speed: what brings cylinders that were cranked at differing speeds to one; 0 where they were not. */
  readonly lnFactors: readonly number[];
  /** Standard uncertainty of ln, of what was measured anew in this test: its speed, and the form; or of a speed that is
   *  not known. */
  readonly uncertainty: number;
  /** The same by constants that tests share, by name: P_0, or a speed that was not corrected. */
  readonly shared: Readonly<Record<string, number>>;
}

/** One for each test, in their order. @source handbook/cranking.md I.4, handbook/statistics.md L.7 */
export const historySpeeds = (
  record: EngineRecord,
  counted: readonly CountedTest[],
  figures: EngineFigures,
): readonly TestSpeed[] => {
  const own = counted.map((one) => {
    const speed = speedOf(record, one.test, { correction: one.correction, figures });
    const standing: SpeedStanding =
      speed === undefined ? "none" : speed.refused === undefined ? "corrected" : "refused";
    return { ...one, speed, standing };
  });
  const { stretchOf, isFull } = stretchesOf(record, own);
  const mixed = isFull.includes(true) && isFull.includes(false);
  return own.map(({ test, speed, correction: { factor }, values }, i): TestSpeed => {
    const stretch = stretchOf(i);
    const known = { factor, ...(speed === undefined ? {} : { speed }) };
    if (speed === undefined || speed.refused !== undefined || isFull[stretch] !== true)
      return {
        ...known,
        counts: "air",
        lnFactors: lnEvened(record, test),
        ...asCranked(record.engine, speed, {
          ...amongOthers(
            own.filter((_, k) => stretchOf(k) === stretch),
            test.date,
          ),
          ...(mixed ? { stretch } : {}),
        }),
      };
    return {
      ...known,
      counts: "full",
      lnFactors: lnAtSpeed(
        speed.cylinders.map((one) => one?.pressure),
        values,
        factor,
      ),
      ...doubtsAtSpeed(speed, values),
    };
  });
};

/** The factors of those alone, by the same choices. What a speed leaves in doubt moves all cylinders of a test together, so
 *  that cylinders compared with each other never ask for it. */
export const historySpeedFactors = (
  record: EngineRecord,
  counted: readonly CountedTest[],
  figures: EngineFigures,
): readonly Pick<TestSpeed, "lnFactors">[] => {
  const own = counted.map((one) => {
    const pressures = pressuresAtSpeed(record, one.test, { correction: one.correction, figures });
    const standing: SpeedStanding =
      pressures === undefined ? "none" : pressures === "refused" ? "refused" : "corrected";
    return { use: one.use, test: one.test, factor: one.correction.factor, pressures, standing };
  });
  const { stretchOf, isFull } = stretchesOf(record, own);
  return counted.map(({ test, values }, i) => {
    const { pressures, factor } = own[i] ?? {};
    const isCorrected = pressures !== undefined && pressures !== "refused" && factor !== undefined;
    return {
      lnFactors:
        isCorrected && isFull[stretchOf(i)] === true
          ? lnAtSpeed(pressures, values, factor)
          : lnEvened(record, test),
    };
  });
};

/** Whether the speed of a test was corrected; `none` where it holds no dry reading to compare. */
type SpeedStanding = "corrected" | "refused" | "none";

/** The stretch of each test, and of each stretch whether its tests count fully corrected. */
const stretchesOf = (
  record: EngineRecord,
  own: readonly (Pick<CountedTest, "test" | "use"> & { readonly standing: SpeedStanding })[],
) => {
  const starts = stretches(record, own);
  const stretchOf =
    starts.length === 1
      ? () => 0
      : (place: number): number => starts.findLastIndex((start) => start <= place);
  const isFull = starts.map((_, stretch) => {
    const inIt = own.filter(({ use }, i) => use === "full" && stretchOf(i) === stretch);
    return inIt.length > 0 && inIt.every(({ standing }) => standing !== "refused");
  });
  return { stretchOf, isFull };
};

const lnEvened = (record: EngineRecord, test: Test): readonly number[] =>
  unevenOf(record, test)?.lnFactors ?? record.engine.cylinders.map(() => 0);

interface Among {
  /** When in the years of its stretch: -1 at the first test, 1 at the last, 0 where they are of one day. */
  readonly place: number;
  /** The cranking speed of the test nearest in time whose speed is known [rpm]. */
  readonly nearest?: number;
}

/** What speeds that were not corrected may have done. A known speed has done what the loss makes of its distance to the
 *  reference: one unknown constant over the years, taken for the usual loss and as unsure as it is large. An unknown one is
 *  as that of the test nearest in time, or anywhere that engines crank at, and unsure anew in each test; and it may have
 *  slowed as battery and starter aged: as much again from the middle of the years to their ends (judgement). Between
 *  stretches at one speed and others a habit adds as much.
 *  @source handbook/cranking.md I.5 (0.16 in ln speed), handbook/statistics.md L.7 (computed, no published figure) */
const asCranked = (
  engine: Engine,
  speed: SpeedAssessment | undefined,
  { place, nearest, stretch }: Among & { readonly stretch?: number },
): Pick<TestSpeed, "uncertainty" | "shared"> => {
  const effect = (from: number): Readonly<Record<string, number>> => ({
    speed: usualSpeedEffect(engine.ignition, sweptOf(engine), { from, to: speed?.to ?? from }),
  });
  if (speed?.from !== undefined) return { uncertainty: 0, shared: effect(speed.from) };
  const doubt = doubtOfSpeed(engine, undefined);
  return {
    uncertainty: doubt,
    shared: {
      ...(nearest === undefined ? {} : effect(nearest)),
      "speed over the years": place * doubt,
      ...(stretch === undefined ? {} : { [`speed ${String(stretch)}`]: doubt }),
    },
  };
};

/** @param tests - of its stretch, in order */
const amongOthers = (
  tests: readonly { readonly test: Test; readonly speed: SpeedAssessment | undefined }[],
  date: string,
): Among => {
  const at = dayNumber(date);
  const days = tests.map(({ test, speed }) => ({ day: dayNumber(test.date), from: speed?.from }));
  const [first = at, last = at] = [days[0]?.day, days.at(-1)?.day];
  const [near] = days
    .filter(({ from }) => from !== undefined)
    .toSorted((one, other) => Math.abs(one.day - at) - Math.abs(other.day - at));
  return {
    place: last === first ? 0 : (2 * (at - first)) / (last - first) - 1,
    ...(near?.from === undefined ? {} : { nearest: near.from }),
  };
};

/** Places of the tests that begin a stretch; the first is 0. */
const stretches = (
  record: EngineRecord,
  counted: readonly Pick<CountedTest, "test">[],
): readonly number[] => {
  const all = record.engine.cylinders.length;
  const works = workBreaks(record, counted).filter(({ newBaseline }) => newBaseline.length === all);
  return [...new Set([0, ...works.map(({ afterTests }) => afterTests)])].sort((a, b) => a - b);
};

const lnAtSpeed = (
  pressures: readonly (number | undefined)[],
  { cells }: KindValues,
  factor: number,
): readonly number[] =>
  pressures.map((pressure, i) => {
    const read = cells[i]?.value;
    return pressure === undefined || read === undefined ? 0 : Math.log(pressure / (read * factor));
  });

const doubtsAtSpeed = (
  { cylinders, lossFree }: SpeedAssessment,
  { gauge = "" }: KindValues,
): Pick<TestSpeed, "uncertainty" | "shared"> => {
  const doubts = cylinders.filter((one) => one !== undefined).map((one) => one.doubts);
  const middle = (part: keyof SpeedCorrected["doubts"]): number => median(doubts.map((one) => one[part]));
  // a calibration belongs to one gauge; all else is the same guess at the same engine
  const name = lossFree?.sources.includes("calibration") === true ? `P0 ${gauge}` : "P0";
  return {
    uncertainty: Math.hypot(middle("speed"), middle("form")),
    shared: { [name]: middle("lossFree") },
  };
};
