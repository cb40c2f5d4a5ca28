// The tester of a leak-down as the figures need it: its restrictor, its dials, the air of the place.

import { pressureCorrection } from "../../cranking/index.ts";
import {
  type HoleReading,
  type LeakReading,
  type Restrictor,
  classLimit,
  cylinderOfLost,
  dialUncertainty,
  usualSupply,
} from "../../leakdown/index.ts";
import { type AbsolutePressure, type GaugePressure, gaugePressure } from "../../quantity/index.ts";
import { type EngineRecord, type Gauge, type Test, dayOf } from "../../record/index.ts";
import { type KindValues, supplyOf, trueReading } from "../values/values.ts";

export interface LeakInstrument {
  /** Its row of gauges.csv; absent where it is not described. */
  readonly tester?: Gauge;
  /** Name of the tester as the test states it. */
  readonly gauge?: string;
  readonly holds: "pressure" | "lost";
  /** Empty where nothing is known. */
  readonly restrictor: Restrictor;
  /** Standard uncertainty of each dial [Pa]. */
  readonly uDial: number;
  /** Of it what differs from reading to reading: the division [Pa]. */
  readonly uDivision: number;
  readonly ambient: AbsolutePressure;
  /** Supply of each cylinder, in the engine's order: as noted with the test, else as the tester is set. */
  readonly supplies: readonly (GaugePressure | undefined)[];
}

/** @param values - of one kind of leak-down reading of the test */
export const leakInstrument = (record: EngineRecord, test: Test, values: KindValues): LeakInstrument => {
  const { gauge, holds } = values;
  const tester = record.gauges.find(({ id }) => id === gauge);
  const { classPercent, fullScale, division, matched } = tester ?? {};
  const limit =
    classPercent === undefined || fullScale === undefined ? undefined : classLimit(classPercent, fullScale);
  const dial = {
    ...(limit === undefined ? {} : { limit }),
    ...(division === undefined ? {} : { division }),
  };
  return {
    ...(tester === undefined ? {} : { tester }),
    ...(gauge === undefined ? {} : { gauge }),
    holds,
    restrictor: restrictorOf(tester),
    uDial: dialUncertainty({ ...dial, ...(matched === undefined ? {} : { matched }) }),
    uDivision: dialUncertainty({ ...dial, limit: gaugePressure(0) }),
    ambient: pressureCorrection(dayOf(test, gauge)).station,
    supplies: record.engine.cylinders.map((_, i) => supplyOf(test, i, gauge)),
  };
};

/** The restrictor of a tester as far as it is described. */
export const restrictorOf = (tester: Gauge | undefined): Restrictor => {
  const { restrictor, restrictorTolerance, restrictorLength, profile, restrictorCd } = tester ?? {};
  return {
    ...(restrictor === undefined ? {} : { bore: restrictor }),
    ...(restrictorTolerance === undefined ? {} : { tolerance: restrictorTolerance }),
    ...(restrictorLength === undefined ? {} : { length: restrictorLength }),
    ...(profile === undefined ? {} : { profile }),
    ...(restrictorCd === undefined ? {} : { cd: restrictorCd }),
  };
};

/** Its open holes in the kind of a reading, without what its dial reads too high.
 *  @param supply - where it is known, holes read in the other kind count too */
export const openHolesOf = (
  tester: Gauge | undefined,
  holds: "pressure" | "lost",
  supply?: GaugePressure,
): readonly HoleReading[] =>
  (tester?.knownHoles ?? []).flatMap(({ hole, reads: read, holds: own }) => {
    const reads = own === "pressure" ? trueReading(read, tester?.readsHigh ?? 0) : read;
    if (own === holds) return [{ hole, reads }];
    if (supply === undefined) return [];
    return [{ hole, reads: own === "lost" ? supply * (1 - reads) : 1 - reads / supply }];
  });

/** One cylinder's reading as pressures; undefined where its supply is not known.
 *  @param value - gauge pressure [Pa], or the fraction lost, as the instrument holds */
export const pressuresOf = (
  { holds, supplies, ambient, uDial }: LeakInstrument,
  cylinder: number,
  value: number,
): LeakReading | undefined => {
  const supply = supplies[cylinder];
  if (supply === undefined || supply <= 0) return undefined;
  return {
    supply,
    cylinder: holds === "lost" ? cylinderOfLost(supply, value) : gaugePressure(value),
    ambient,
    uSupply: uDial,
    uCylinder: uDial,
  };
};

/** The same with a usual supply where none is known, for ratios of two leaks: they hardly depend on it. */
export const withUsualSupply = (instrument: LeakInstrument): LeakInstrument => ({
  ...instrument,
  supplies: instrument.supplies.map((supply) => supply ?? usualSupply),
});

/** Whether what it measures against is open holes, and whether it has a restrictor at all is not known. */
export const isByHoles = ({ tester, restrictor }: LeakInstrument): boolean =>
  restrictor.bore === undefined && (tester?.knownHoles?.length ?? 0) > 0;

/** Whether the tester tells more than a percent: two dials in pressure, or one in percent behind a known restrictor. */
export const tellsSize = ({ holds, restrictor }: LeakInstrument): boolean =>
  holds === "pressure" || restrictor.bore !== undefined;
