// The leaks of an engine over the years as holes, across testers of known bore: each with its band, the changes marked.

import {
  type Restrictor,
  alphaUncertainty,
  boreUncertainty,
  judgeLeak,
  leakFigures,
} from "../../leakdown/index.ts";
import { type Length, toSi } from "../../quantity/index.ts";
import type { EngineRecord } from "../../record/index.ts";
import type { CountedTest } from "../years/counted-test.ts";
import { type LeakInstrument, pressuresOf } from "./leak-instrument.ts";
import type { NotCarried } from "./leak-restated.ts";
import type { LeakSeriesTest } from "./leak-series.ts";

export interface Hole {
  readonly hole: Length;
  /** Where the dials leave open whether it leaks at all: it is smaller than this. */
  readonly under?: Length;
  /** Standard uncertainty [m], dials and bore. */
  readonly uHole: number;
  /** Of its logarithm, with what readings differ by from day to day. */
  readonly uBetweenDays: number;
}

export interface HoleChange {
  readonly label: string;
  readonly before: Hole;
  readonly after: Hole;
  readonly lnRatio: number;
  /** By dials and bores. */
  readonly uLnRatio: number;
  /** The same with what readings differ by from day to day: what `shown` goes by. */
  readonly uLnRatioBetweenDays: number;
  /** Whether more than twice its uncertainty, day to day included. */
  readonly shown: "yes" | "no";
}

/** Where the tester, or its supply pressure, changed between two tests that count. */
export interface TesterChange {
  readonly what: "tester" | "supply";
  readonly fromTest: string;
  readonly toTest: string;
  readonly fromGauge?: string;
  readonly toGauge?: string;
  /** Whether the series goes on, its readings restated, or a new one begins. */
  readonly carried: "restated" | "new-history";
  /** Why a new one begins, and the first cylinder that forbids to go on. */
  readonly refused?: { readonly reason: NotCarried["reason"]; readonly label?: string };
  /** Cylinders whose hole is known on both sides, in the engine's order. */
  readonly holes: readonly HoleChange[];
}

/** Between operators and days readings differ by this; judgement on one published series. @source handbook/leakdown.md E */
const dayToDay = toSi(2, "psi");

/** In the engine's order; undefined where the tester tells no size, or nothing is lost. */
export const holesOf = (
  { values }: CountedTest,
  { instrument }: LeakSeriesTest,
): readonly (Hole | undefined)[] => {
  const { bore } = instrument.restrictor;
  return values.cells.map((cell, i) =>
    cell === undefined || cell.pegged || bore === undefined ? undefined : holeOf(instrument, i, cell.value),
  );
};

const holeOf = (instrument: LeakInstrument, cylinder: number, value: number): Hole | undefined => {
  const reading = pressuresOf(instrument, cylinder, value);
  if (reading === undefined || reading.cylinder <= 0 || reading.cylinder >= reading.supply) return undefined;
  const { size } = leakFigures(reading, instrument.restrictor);
  if (size === undefined) return undefined;
  const uDays = alphaUncertainty({
    ...reading,
    uCylinder: Math.hypot(reading.uCylinder ?? 0, dayToDay),
  });
  const uBetweenDays = 0.5 * Math.hypot(uDays, boreUncertainty(instrument.restrictor));
  const judged = judgeLeak(reading, instrument.restrictor);
  const under = judged.kind === "tight" ? judged.limit.equalHole : undefined;
  return {
    hole: size.equalHole,
    ...(under === undefined ? {} : { under }),
    uHole: size.uEqualHole,
    uBetweenDays,
  };
};

export const testerChanges = (
  { engine }: EngineRecord,
  counted: readonly CountedTest[],
  series: readonly LeakSeriesTest[],
): readonly TesterChange[] => {
  const full = counted.flatMap((one, k) => {
    const own = series[k];
    return one.use === "full" && own !== undefined ? [{ one, own }] : [];
  });
  return full.slice(1).flatMap(({ one, own }, k): TesterChange[] => {
    const before = full[k];
    if (before === undefined) return [];
    const isOther = before.own.instrument.gauge !== own.instrument.gauge;
    const isMoved = own.begins !== undefined || isRestated(own) !== isRestated(before.own);
    if (!isOther && !isMoved) return [];
    const [first, then] = [holesOf(before.one, before.own), holesOf(one, own)];
    const [fromGauge, toGauge] = [before.own.instrument.gauge, own.instrument.gauge];
    return [
      {
        what: isOther ? "tester" : "supply",
        fromTest: before.one.test.id,
        toTest: one.test.id,
        ...(fromGauge === undefined ? {} : { fromGauge }),
        ...(toGauge === undefined ? {} : { toGauge }),
        carried: own.begins === undefined ? "restated" : "new-history",
        ...refusedOf(own, engine.cylinders),
        holes: oneMake(before.own.instrument.restrictor, own.instrument.restrictor)
          ? engine.cylinders.flatMap((label, i) => changeOf(label, first[i], then[i]))
          : [],
      },
    ];
  });
};

const isRestated = ({ restated }: LeakSeriesTest): boolean => restated !== undefined;

const refusedOf = (
  { notCarried }: LeakSeriesTest,
  labels: readonly string[],
): Pick<TesterChange, "refused"> => {
  if (notCarried === undefined) return {};
  const { reason, cylinder = -1 } = notCarried;
  const label = labels[cylinder];
  return { refused: { reason, ...(label === undefined ? {} : { label }) } };
};

/** Holes made like two restrictors of one make compare; of two makes only where both coefficients were measured. */
const oneMake = (a: Restrictor, b: Restrictor): boolean =>
  a.cd === undefined && b.cd === undefined && (a.profile ?? "unknown") === (b.profile ?? "unknown");

const changeOf = (label: string, before: Hole | undefined, after: Hole | undefined): HoleChange[] => {
  if (before === undefined || after === undefined) return [];
  const lnRatio = Math.log(after.hole / before.hole);
  const uLnRatio = Math.hypot(before.uHole / before.hole, after.uHole / after.hole);
  const uDays = Math.hypot(before.uBetweenDays, after.uBetweenDays);
  const shown = Math.abs(lnRatio) > 2 * uDays ? "yes" : "no";
  return [{ label, before, after, lnRatio, uLnRatio, uLnRatioBetweenDays: uDays, shown }];
};
