// gauges.csv: every compression gauge and leak-down tester, typed once.

import type { Problem } from "../problem/index.ts";
import { type PressureUnit, gaugeUnitNamed, gaugeUnits, length, volume } from "../quantity/index.ts";
import { checkGauge } from "./gauge-checks.ts";
import { checkLinks, linkIn } from "./gauge-links.ts";
import { pressureIn } from "./gauge-pressures.ts";
import { knownHolesIn } from "./known-holes.ts";
import { readRows } from "./read-rows.ts";
import type { RowView } from "./row-view.ts";
import type { Gauge } from "./gauge-types.ts";

/** The columns of gauges.csv, in order. */
export const gaugeColumns: readonly string[] = (
  "gauge,kind,unit,full_scale,class_percent,division,reads_high,valve_end,hose_cm3,restrictor_mm,restrictor_length_mm,profile," +
  "restrictor_cd,regulated,dial,matched,known_holes,restrictor_tol_mm,link_to,link_factor,link_u,link_date,note"
).split(",");

/** Reads gauges.csv; rows with a fault are left out and reported. */
export const readGauges = (
  text: string,
  file: string,
): { readonly gauges: readonly Gauge[]; readonly problems: readonly Problem[] } => {
  const seen = new Map<string, RowView>();
  const read = readRows(text, file, {
    columns: gaugeColumns,
    needed: ["gauge", "kind"],
    read: (row): Gauge | undefined => {
      const id = row.text("gauge");
      const line = seen.get(id)?.line;
      if (id === "") row.fault("gauge", "id-missing", { column: "gauge", example: "red" });
      else if (line !== undefined) row.fault("gauge", "gauge-twice", { gauge: id, line });
      else seen.set(id, row);
      return gaugeIn(row, id);
    },
  });
  return checkLinks(read, seen);
};

const gaugeIn = (row: RowView, id: string): Gauge | undefined => {
  const kind = row.neededWord("kind", ["compression", "leak-down"]);
  const unit = unitIn(row);
  const facts = {
    unit,
    fullScale: pressureIn(row, "full_scale", unit),
    division: pressureIn(row, "division", unit),
    classPercent: row.number("class_percent", { of: "accuracy class in percent", least: 0.01, most: 20 }),
    readsHigh: pressureIn(row, "reads_high", unit),
    ...(kind === "leak-down" ? {} : hoseIn(row)),
    ...(kind === "compression" ? {} : testerIn(row, unit)),
    link: linkIn(row),
    note: row.text("note") === "" ? undefined : row.text("note"),
  };
  if (kind === undefined) return undefined;
  const gauge: Gauge = { id, kind, ...stated(facts) };
  checkGauge(row, gauge);
  const knownHoles = kind === "compression" ? undefined : knownHolesIn(row, gauge);
  return knownHoles === undefined ? gauge : { ...gauge, knownHoles };
};

const hoseIn = (row: RowView) => ({
  valveEnd: row.word("valve_end", ["plug", "gauge"]),
  hose: scaled(row.number("hose_cm3", { of: "hose volume in cm3", least: 0, most: 500 }), (cm3) =>
    volume(cm3 * 1e-6),
  ),
});

const testerIn = (row: RowView, unit: PressureUnit | undefined) => ({
  dial: row.word("dial", ["pressure", "percent-lost", "percent-held"]),
  regulated: pressureIn(row, "regulated", unit),
  matched: scaled(row.word("matched", ["yes", "no"]), (word) => word === "yes"),
  ...restrictorIn(row),
});

const restrictorIn = (row: RowView) => {
  const millimetres = (name: string, of: string, least: number, most: number) =>
    scaled(row.number(name, { of, least, most }), (mm) => length(mm / 1000));
  const isUnknown = row.text("restrictor_mm").toLowerCase() === "unknown";
  return {
    restrictor: isUnknown ? undefined : millimetres("restrictor_mm", "restrictor bore in mm", 0.1, 10),
    restrictorTolerance: millimetres("restrictor_tol_mm", "tolerance of the bore in mm", 0, 0.5),
    restrictorLength: millimetres("restrictor_length_mm", "restrictor length in mm", 0.01, 100),
    profile: row.word("profile", ["coned", "square", "thin-plate", "unknown"]),
    restrictorCd: row.number("restrictor_cd", { of: "discharge coefficient", least: 0.3, most: 1 }),
  };
};

const unitIn = (row: RowView): PressureUnit | undefined => {
  const text = row.text("unit");
  if (text === "" || text === "%") return undefined;
  return gaugeUnitNamed(text) ?? row.fault("unit", "unit-unknown", { text, units: gaugeUnits });
};

const scaled = <T, S>(value: T | undefined, make: (value: T) => S): S | undefined =>
  value === undefined ? undefined : make(value);

type Stated<T> = { readonly [K in keyof T]?: Exclude<T[K], undefined> };

/** What is stated: entries that are undefined are left out. */
const stated = <T extends object>(facts: T): Stated<T> =>
  Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined)) as Stated<T>;
