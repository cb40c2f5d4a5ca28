// What `gauge calibrate --json` adds to the record of the gauge.

import {
  type HoleCalibration,
  type KnownHole,
  type PressureCorrection,
  type SpeedCalibration,
  fromSi,
} from "@sealtrend/core/parts";
import { kPa } from "../render/units.ts";

const millimetres = (metres: number): number => fromSi(metres, "mm");

const holeRecord = ({ hole, reads, holds }: KnownHole) => ({
  hole_mm: millimetres(hole),
  ...(holds === "pressure" ? { reads_kPa: kPa(reads) } : { lost: reads }),
});

export const holesDocument = (found: HoleCalibration) => {
  const way = { by: "holes", found: found.kind };
  switch (found.kind) {
    case "restrictor":
      return {
        ...way,
        holes: found.holes.map(({ hole, alpha, actsAs, uActsAs, weight }) => ({
          ...holeRecord(hole),
          alpha,
          actsAs_mm: millimetres(actsAs),
          u_actsAs_mm: millimetres(uActsAs),
          weight,
        })),
        holesAre: found.holesAre,
        actsAs_mm: millimetres(found.actsAs),
        u_actsAs_mm: millimetres(found.uActsAs),
        used: found.used,
      };
    case "span":
      return { ...way, holes: [holeRecord(found.least), holeRecord(found.most)] };
    case "one-hole":
      return way;
  }
};

export const speedsDocument = ({
  engine,
  P0,
  uncertainty,
  lossSpeed,
  slow,
  fast,
  takes,
  source,
  correction,
}: SpeedCalibration & {
  readonly takes: { readonly slow: number; readonly fast: number };
  readonly engine: string;
  readonly source: string;
  readonly correction: PressureCorrection;
}) => ({
  by: "two-speeds",
  engine,
  P0_kPa: kPa(P0),
  u_lnP0: uncertainty,
  lossSpeed_rpm: lossSpeed,
  speeds: [
    { at: slow, n: takes.slow },
    { at: fast, n: takes.fast },
  ].map(({ at, n }) => ({
    speed_rpm: at.speed,
    u_lnSpeed: at.uSpeed,
    takes: n,
    mean_kPa: kPa(at.pressure),
    u_lnMean: at.uPressure,
  })),
  source,
  station_kPaAbs: kPa(correction.station),
  factor: correction.factor,
  u_lnFactor: correction.uncertainty,
});
