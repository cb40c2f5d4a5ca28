// gauges.csv: every compression gauge and leak-down tester, typed once.

import type { Problem } from "../problem/index.ts";
import {
  type PressureUnit,
  gaugePressure,
  gaugeUnitNamed,
  gaugeUnits,
  length,
  toSi,
} from "../quantity/index.ts";
import { readRows } from "./read-rows.ts";
import type { RowView } from "./row-view.ts";
import type { Gauge } from "./types.ts";

export const gaugeColumns: readonly string[] = (
  "gauge,kind,unit,full_scale,class_percent,division,reads_high,valve_end,hose_cm3,restrictor_mm,restrictor_length_mm,profile," +
  "restrictor_cd,regulated,dial,matched,known_holes,restrictor_tol_mm,link_to,link_factor,link_u,link_date,note"
).split(",");

/** Reads gauges.csv; rows with a fault are left out and reported. */
export const readGauges = (
  text: string,
  file: string,
): { readonly gauges: readonly Gauge[]; readonly problems: readonly Problem[] } => {
  const lines = new Map<string, number>();
  const { rows, problems } = readRows(text, file, {
    columns: gaugeColumns,
    needed: ["gauge", "kind"],
    read: (row): Gauge | undefined => {
      const id = row.text("gauge");
      const line = lines.get(id);
      if (id === "") row.fault("gauge", "id-missing", { column: "gauge", example: "red" });
      else if (line !== undefined) row.fault("gauge", "gauge-twice", { gauge: id, line });
      else lines.set(id, row.line);
      return gaugeIn(row, id);
    },
  });
  return { gauges: rows, problems };
};

const gaugeIn = (row: RowView, id: string): Gauge | undefined => {
  const kind = row.neededWord("kind", ["compression", "leak-down"]);
  const unit = unitIn(row);
  const hasUnit = !["", "%"].includes(row.text("unit"));
  const inUnit = (name: string) => {
    const value = row.number(name, { of: name, least: 0, most: 100_000 });
    if (value === undefined) return undefined;
    if (unit === undefined)
      return hasUnit ? undefined : row.fault(name, "unit-missing", { text: row.text(name) });
    return gaugePressure(toSi(value, unit));
  };
  const fullScale = inUnit("full_scale");
  const division = inUnit("division");
  const classPercent = row.number("class_percent", {
    of: "accuracy class in percent",
    least: 0.01,
    most: 20,
  });
  const dial = row.word("dial", ["pressure", "percent-lost", "percent-held"]);
  const restrictor =
    row.text("restrictor_mm").toLowerCase() === "unknown"
      ? undefined
      : row.number("restrictor_mm", { of: "restrictor bore in mm", least: 0.1, most: 10 });
  const note = row.text("note");
  if (kind === undefined) return undefined;
  return {
    id,
    kind,
    ...(unit === undefined ? {} : { unit }),
    ...(fullScale === undefined ? {} : { fullScale }),
    ...(division === undefined ? {} : { division }),
    ...(classPercent === undefined ? {} : { classPercent }),
    ...(dial === undefined ? {} : { dial }),
    ...(restrictor === undefined ? {} : { restrictor: length(restrictor / 1000) }),
    ...(note === "" ? {} : { note }),
  };
};

const unitIn = (row: RowView): PressureUnit | undefined => {
  const text = row.text("unit");
  if (text === "" || text === "%") return undefined;
  return gaugeUnitNamed(text) ?? row.fault("unit", "unit-unknown", { text, units: gaugeUnits });
};
