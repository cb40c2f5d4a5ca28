// The JSON of `gauge add` and `gauge list`: sealtrend/gauges@1.

import { type Gauge, fromSi } from "@sealtrend/core";
import { kPa } from "../render/units.ts";

/** What is undefined is left out when the document is written. */
export const gaugesDocument = (
  logbook: string,
  gauges: readonly Gauge[],
  written?: { readonly file: string; readonly rows: number },
) => ({
  schema: "sealtrend/gauges@1",
  logbook,
  gauges: gauges.map(({ id, kind, unit, fullScale, classPercent, division, dial, restrictor, note }) => ({
    id,
    kind,
    unit,
    fullScale_kPa: fullScale === undefined ? undefined : kPa(fullScale),
    class: classPercent === undefined ? undefined : classPercent / 100,
    division_kPa: division === undefined ? undefined : kPa(division),
    dial,
    restrictor_mm: restrictor === undefined ? undefined : fromSi(restrictor, "mm"),
    note,
  })),
  written,
});
