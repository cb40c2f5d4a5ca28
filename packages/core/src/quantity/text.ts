// A quantity with its unit, as text: read from a person, written for a person.

import { readNumber } from "./number.ts";
import { type Dimension, type UnitName, dimensionOf, fromSi, toSi, unitNamed } from "./units.ts";

/** Why a text is no quantity of the kind that was asked for. */
export type QuantityFault = "empty" | "number" | "two-ways" | "unit-missing" | "unit-unknown" | "unit-wrong";
/** A quantity as it was read: in SI and as it was written, or why it is none. */
export type QuantityReading =
  | { readonly ok: true; readonly si: number; readonly value: number; readonly unit: UnitName }
  | { readonly ok: false; readonly fault: QuantityFault; readonly unit?: string };

const shape = /^([+-]?[\d.,]+(?:[eE]\S*)?)\s*(.*)$/;

/** Reads `86mm`, `26 bar`, `-5C`, `.040in`: a number of the grammar and a unit of `dimension`.
 *  A comma before three digits could be a thousands mark and is refused ("two-ways"): `1,200m`; a point is decimal.
 *  A bare number is a fault ("unit-missing") unless `assumed` names the unit it stands in. */
export const readQuantity = (text: string, dimension: Dimension, assumed?: UnitName): QuantityReading => {
  const trimmed = text.trim();
  if (trimmed === "") return { ok: false, fault: "empty" };
  const match = shape.exec(trimmed);
  const number = match?.[1] === undefined ? undefined : readNumber(match[1]);
  if (match === null || !number?.ok) return { ok: false, fault: "number" };
  if (number.thousands?.mark === ",") return { ok: false, fault: "two-ways" };
  const unitText = (match[2] ?? "").trim();
  const unit = unitText === "" ? assumed : unitNamed(unitText);
  if (unit === undefined)
    return { ok: false, fault: unitText === "" ? "unit-missing" : "unit-unknown", unit: unitText };
  if (dimensionOf(unit) !== dimension) return { ok: false, fault: "unit-wrong", unit };
  return { ok: true, si: toSi(number.value, unit), value: number.value, unit };
};

const decimals: Partial<Record<UnitName, number>> = {
  Pa: 0,
  hPa: 1,
  kPa: 0,
  MPa: 2,
  bar: 1,
  psi: 0,
  "kgf/cm2": 1,
  inHg: 2,
  C: 0,
  F: 0,
  K: 0,
  m: 0,
  ft: 0,
  mm: 2,
  in: 4,
  rpm: 0,
  V: 1,
  ml: 0,
  cm3: 1,
};

/** The number alone in `unit`, rounded as an instrument of that unit is read; `-0` is written `0`. */
export const writeNumber = (si: number, unit: UnitName, places = decimals[unit] ?? 2): string => {
  const text = fromSi(si, unit).toFixed(places);
  return /^-0(\.0+)?$/.test(text) ? text.slice(1) : text;
};

/** The quantity with its unit: `131 psi`. */
export const writeQuantity = (si: number, unit: UnitName, places?: number): string =>
  `${writeNumber(si, unit, places)} ${unit}`;
