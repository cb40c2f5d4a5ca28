// The pressures of gauges.csv: in the unit of the dial, each within what such a figure can be.

import {
  type GaugePressure,
  type UnitName,
  fromSi,
  gaugePressure,
  readQuantity,
  toSi,
  type PressureUnit,
} from "../quantity/index.ts";
import type { RowView } from "./row-view.ts";

/** What is believed [Pa]; judgement. The supply is that of regulated_psi in tests.csv: 5 to 200 psi. */
const believed = {
  full_scale: [7e3, 20e6],
  division: [100, 5e6],
  /** A gauge that reads low reads high by less than nothing: 1 bar of that at most, as no gauge pressure lies lower. */
  reads_high: [-1e5, 5e5],
  regulated: [toSi(5, "psi"), toSi(200, "psi")],
} as const;

type PressureColumn = keyof typeof believed;

/** A pressure in the unit of the dial; the supply pressure, which a dial in percent does not show, may carry its own. */
export const pressureIn = (
  row: RowView,
  name: PressureColumn,
  unit: PressureUnit | undefined,
): GaugePressure | undefined => {
  const text = row.text(name);
  const own = name === "regulated" ? readQuantity(text, "pressure") : undefined;
  if (own?.ok === true) {
    const bounds = boundsIn(name, own.unit);
    return own.value >= bounds.least && own.value <= bounds.most
      ? gaugePressure(own.si)
      : row.fault(name, "number-range", { text, ...bounds });
  }
  const bounds = unit === undefined ? { of: name, least: -1e9, most: 1e9 } : boundsIn(name, unit);
  const value = row.number(name, bounds);
  if (value === undefined) return undefined;
  if (unit !== undefined) return gaugePressure(toSi(value, unit));
  const faultInUnit = !["", "%"].includes(row.text("unit"));
  return faultInUnit ? undefined : row.fault(name, "unit-missing", { text });
};

const boundsIn = (name: PressureColumn, unit: UnitName) => {
  const [least, most] = believed[name];
  const round = (si: number): number => Number(fromSi(si, unit).toPrecision(2));
  return { of: `${name} in ${unit}`, least: round(least), most: round(most) };
};
