// Which value of each test the years are judged by: fully corrected where speed was refused for no test of the stretch, else
// in reference air for all of it. A stretch runs from one work on all cylinders to the next.

import type { EngineRecord } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import { correctionOf } from "../values/correction.ts";
import type { CountedTest } from "../years/counted-test.ts";
import type { EngineFigures } from "../figures.ts";
import { workBreaks } from "../years/history-breaks.ts";
import { doubtOfSpeed } from "../limits.ts";
import type { SpeedAssessment } from "./speed-assessment.ts";
import { speedOf } from "./speed.ts";
import type { KindValues } from "../values/values.ts";

export interface TestSpeed {
  /** Absent where the test holds no dry reading to compare. */
  readonly speed?: SpeedAssessment;
  /** `full`: in reference air and at the reference speed; `air`: in reference air alone. */
  readonly counts: "full" | "air";
  /** In reference air = reading x factor. */
  readonly factor: number;
  /** In the engine's order: ln of what the speed adds to the reading in reference air; 0 where it does not count. */
  readonly lnFactors: readonly number[];
  /** Standard uncertainty of ln, of what was measured anew in this test: its speed, and the form. */
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
    const correction = correctionOf(record, one.test);
    return { ...one, correction, speed: speedOf(record, one.test, { correction, figures }) };
  });
  const starts = stretches(record, counted);
  const stretchOf = (place: number): number => starts.findLastIndex((start) => start <= place);
  const isFull = starts.map((_, stretch) => {
    const inIt = own.filter(({ use }, i) => use === "full" && stretchOf(i) === stretch);
    return inIt.length > 0 && inIt.every(({ speed }) => speed?.refused === undefined);
  });
  const mixed = isFull.includes(true) && isFull.includes(false);
  return own.map(({ speed, correction: { factor }, values }, i): TestSpeed => {
    const stretch = stretchOf(i);
    const known = { factor, ...(speed === undefined ? {} : { speed }) };
    if (speed === undefined || speed.refused !== undefined || isFull[stretch] !== true)
      return {
        ...known,
        counts: "air",
        lnFactors: record.engine.cylinders.map(() => 0),
        uncertainty: 0,
        shared: mixed ? { [`speed ${String(stretch)}`]: doubtOfSpeed(record.engine, speed) } : {},
      };
    return { ...known, counts: "full", ...fullyCorrected(speed, values, factor) };
  });
};

/** Places of the tests that begin a stretch; the first is 0. */
const stretches = (record: EngineRecord, counted: readonly CountedTest[]): readonly number[] => {
  const all = record.engine.cylinders.length;
  const works = workBreaks(record, counted).filter(({ newBaseline }) => newBaseline.length === all);
  return [...new Set([0, ...works.map(({ afterTests }) => afterTests)])].sort((a, b) => a - b);
};

const fullyCorrected = (
  { cylinders, lossFree }: SpeedAssessment,
  { cells, gauge = "" }: KindValues,
  factor: number,
): Pick<TestSpeed, "lnFactors" | "uncertainty" | "shared"> => {
  const middle = (part: (one: NonNullable<(typeof cylinders)[number]>) => number): number =>
    median(cylinders.flatMap((one) => (one === undefined ? [] : part(one))));
  // a calibration belongs to one gauge; all else is the same guess at the same engine
  const name = lossFree?.sources.includes("calibration") === true ? `P0 ${gauge}` : "P0";
  return {
    lnFactors: cylinders.map((one, i) => {
      const read = cells[i]?.value;
      return one === undefined || read === undefined ? 0 : Math.log(one.pressure / (read * factor));
    }),
    uncertainty: Math.hypot(
      middle(({ doubts }) => doubts.speed),
      middle(({ doubts }) => doubts.form),
    ),
    shared: { [name]: middle(({ doubts }) => doubts.lossFree) },
  };
};
