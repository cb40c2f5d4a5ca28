// What is not known of a test and its engine, each with what it would settle.

import { type Engine, type Test, dayOf } from "../../record/index.ts";
import type { TrustView } from "./trust-view.ts";
import { type KindValues, supplyOf, valuesOf } from "../values/values.ts";

type Gap = readonly [boolean, string];

/** The most telling first. */
export const missingOf = ({ record, test, dry }: Pick<TrustView, "record" | "test" | "dry">): string[] => {
  const leak = valuesOf(test, "leak-down");
  const gaps = [
    ...(dry === undefined ? [] : crankingGaps(record.engine, test, dry)),
    ...(leak === undefined ? [] : leakGaps(record, test, leak)),
    ...(dry === undefined ? [warmthGap(test)] : []),
  ];
  return gaps.filter(([lacks]) => lacks).map(([, text]) => text);
};

const crankingGaps = (engine: Engine, test: Test, dry: KindValues): readonly Gap[] => {
  const { conditions, perCylinder } = test;
  const { minimum, new: asNew } = engine.compressionLimits;
  const release = engine.compressionRelease === "automatic" || engine.compressionRelease === "manual";
  return [
    [release && conditions.release === undefined, releaseText(engine)],
    [
      conditions.crankSpeed === undefined && perCylinder.speed === undefined,
      conditions.crankVolts === undefined
        ? "cranking speed (a tired battery lowers all, a leaking cylinder most)"
        : "cranking speed (the volts alone do not tell it)",
    ],
    [
      conditions.altitude === undefined && conditions.stationPressure === undefined,
      "altitude or barometer (thin air lowers all readings alike, 3.5 % each 1000 ft)",
    ],
    warmthGap(test),
    [
      test.rows.some(({ what }) => what === "wet") && perCylinder.oil === undefined,
      "how much oil went in (its room alone raises a reading)",
    ],
    [engine.ignition === "spark" && conditions.throttle === undefined, "throttle (closed, it lowers all)"],
    [
      conditions.plugsOut === undefined && engine.cylinders.length > 1,
      "plugs out, all or one (it changes the cranking speed)",
    ],
    [
      conditions.strokes === undefined && perCylinder.strokes === undefined,
      "strokes (too few stop short of the final reading)",
    ],
    [dry.gauge === undefined, gaugeText(engine.cylinders.length)],
    [
      minimum === undefined && asNew === undefined,
      "the maker's minimum (cylinders that are worn alike look even without it)",
    ],
  ];
};

/** One worked by hand is asked for, and its odds are not guessed: only who cranked knows whether it was open. */
const releaseText = ({ compressionRelease }: Engine): string =>
  compressionRelease === "manual"
    ? "compression release, open or shut (open, a cylinder reads next to nothing)"
    : "compression release, active or defeated";

const gaugeText = (cylinders: number): string =>
  `gauge (another one may read 3 % off${cylinders > 1 ? "; the cylinders of one test still compare" : ""})`;

/** The share lost is that of one tester at one supply. @source handbook/leakdown.md */
const leakGaps = (
  { engine, gauges }: TrustView["record"],
  test: Test,
  { cells, gauge, holds }: KindValues,
): readonly Gap[] => {
  const tester = gauges.find(({ id }) => id === gauge);
  const supplyKnown =
    tester?.regulated !== undefined ||
    engine.cylinders.some((_, i) => supplyOf(test, i, gauge) !== undefined);
  return [
    [
      cells.some((cell) => cell !== undefined) && !supplyKnown,
      holds === "pressure"
        ? "supply pressure of the leak-down (without it no share lost can be told)"
        : "supply pressure of the leak-down (at another one the same leak shows another percent)",
    ],
    [
      engine.use === "aircraft" && hasNoLimit(engine, test, gauge),
      "the maker's limit, a master orifice, or the bore (which tester the aviation rule asks for goes by it)",
    ],
    gauge === undefined
      ? [true, "tester (another one shows another percent; the cylinders of one test still compare)"]
      : [
          tester?.restrictor === undefined,
          "restrictor of the tester (it decides what percent a leak shows as; or read a drilled hole of known size on it)",
        ],
    [
      engine.use !== "aircraft" && hasNoMakersLimit(engine, test, gauge),
      "the maker's leak-down limit, or a master orifice read that day (cylinders that are worn alike look even without it)",
    ],
  ];
};

const hasNoLimit = (engine: Engine, test: Test, gauge: string | undefined): boolean =>
  hasNoMakersLimit(engine, test, gauge) && engine.geometry.bore === undefined;

/** Neither the maker's limit is known nor was a master orifice read that day. */
const hasNoMakersLimit = (engine: Engine, test: Test, gauge: string | undefined): boolean => {
  const { master, masterLost } = dayOf(test, gauge);
  return master === undefined && masterLost === undefined && engine.leakDownLimits.lost === undefined;
};

const warmthGap = ({ rows, conditions }: Test): Gap => {
  const kinds = new Set<string>(rows.map(({ what }) => what));
  const isCranked = ["dry", "wet", "first-stroke"].some((what) => kinds.has(what));
  const isLeak = [...kinds].some((what) => what.startsWith("leak-down"));
  return [
    conditions.engineTemp === undefined && conditions.engineTemperature === undefined,
    isCranked
      ? "engine temperature (cold reads some 10 % lower)"
      : isLeak
        ? "engine temperature (cold, a sound cylinder leaks more than warm)"
        : "engine temperature (only warm compares with warm)",
  ];
};
