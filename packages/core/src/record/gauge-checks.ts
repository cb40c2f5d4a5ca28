// Cells of one gauge that do not go together, and cells that only the other kind of gauge has.

import { type Length, type PressureUnit, fromSi } from "../quantity/index.ts";
import type { Gauge } from "./gauge-types.ts";
import type { RowView } from "./row-view.ts";

const onlyOf: Readonly<Record<Gauge["kind"], readonly string[]>> = {
  compression: ["valve_end", "hose_cm3"],
  "leak-down": [
    "restrictor_mm",
    "restrictor_length_mm",
    "profile",
    "restrictor_cd",
    "regulated",
    "dial",
    "matched",
    "known_holes",
    "restrictor_tol_mm",
  ],
};
/** Cells that say nothing of either kind. */
const saysNothing = ["", "x", "unknown", "pressure"];

/** Notes at each cell what does not go with the rest of the row. */
export const checkGauge = (row: RowView, gauge: Gauge): void => {
  checkKind(row, gauge);
  checkScale(row, gauge);
  checkBore(row, gauge);
};

/** A cell of the other kind is not used: a caution. */
const checkKind = (row: RowView, { kind }: Gauge): void => {
  const other = kind === "compression" ? "leak-down" : "compression";
  for (const column of onlyOf[other])
    if (!saysNothing.includes(row.text(column).toLowerCase()))
      row.fault(column, "gauge-other-kind", { column, kind, other }, "caution");
};

const checkScale = (row: RowView, { unit, fullScale, division, readsHigh, regulated }: Gauge): void => {
  if (fullScale === undefined || unit === undefined) return;
  const scale = pressureText(fullScale, unit);
  const misfit = (column: string, value: number, why: "division" | "offset" | "supply"): undefined =>
    row.fault(column, "gauge-misfit", { why, value: pressureText(value, unit), other: scale });
  if (division !== undefined && division > fullScale / 2) misfit("division", division, "division");
  if (readsHigh !== undefined && Math.abs(readsHigh) > fullScale / 4)
    misfit("reads_high", readsHigh, "offset");
  if (regulated !== undefined && regulated > fullScale * hair) misfit("regulated", regulated, "supply");
};

const checkBore = (row: RowView, { restrictor, restrictorTolerance }: Gauge): void => {
  if (restrictorTolerance === undefined) return;
  const value = millimetres(restrictorTolerance);
  if (restrictor === undefined) row.fault("restrictor_tol_mm", "gauge-misfit", { why: "no-bore", value });
  else if (restrictorTolerance > restrictor / 2)
    row.fault("restrictor_tol_mm", "gauge-misfit", {
      why: "tolerance",
      value,
      other: millimetres(restrictor),
    });
};

/** What a conversion of units may add to a figure that is the same. */
const hair = 1 + 1e-4;

const pressureText = (value: number, unit: PressureUnit): string =>
  `${String(Number(fromSi(value, unit).toPrecision(5)))} ${unit}`;

const millimetres = (value: Length): string => `${String(Number(fromSi(value, "mm").toPrecision(5)))} mm`;
