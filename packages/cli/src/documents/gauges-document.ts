// The JSON of `gauge add` and `gauge list`: sealtrend/gauges@1.

import { type Gauge, fromSi } from "@sealtrend/core";
import { kPa } from "../render/units.ts";

/** What is undefined is left out when the document is written. */
export const gaugesDocument = (
  logbook: string,
  gauges: readonly Gauge[],
  written?: { readonly file: string; readonly rows: number },
) => ({ schema: "sealtrend/gauges@1", logbook, gauges: gauges.map(gaugeRecord), written });

/** One gauge by its fields. */
const gaugeRecord = (gauge: Gauge) => ({
  id: gauge.id,
  kind: gauge.kind,
  unit: gauge.unit,
  fullScale_kPa: optional(gauge.fullScale, kPa),
  class: optional(gauge.classPercent, (percent) => percent / 100),
  division_kPa: optional(gauge.division, kPa),
  readsHigh_kPa: optional(gauge.readsHigh, kPa),
  valveEnd: gauge.valveEnd,
  hose_cm3: optional(gauge.hose, (volume) => fromSi(volume, "cm3")),
  dial: gauge.dial,
  regulated_kPa: optional(gauge.regulated, kPa),
  matched: gauge.matched,
  restrictor_mm: optional(gauge.restrictor, millimetres),
  restrictorTolerance_mm: optional(gauge.restrictorTolerance, millimetres),
  restrictorLength_mm: optional(gauge.restrictorLength, millimetres),
  profile: gauge.profile,
  cd: gauge.restrictorCd,
  knownHoles: gauge.knownHoles?.map(({ hole, reads, holds }) => ({
    hole_mm: millimetres(hole),
    ...(holds === "pressure" ? { reads_kPa: kPa(reads) } : { lost: reads }),
  })),
  link: optional(gauge.link, ({ to, factor, uncertainty, date }) => ({
    to,
    factor,
    u_lnFactor: uncertainty,
    date,
  })),
  note: gauge.note,
});

const millimetres = (metres: number): number => fromSi(metres, "mm");

const optional = <T, S>(value: T | undefined, make: (value: T) => S): S | undefined =>
  value === undefined ? undefined : make(value);
