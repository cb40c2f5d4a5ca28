// The units of a typed line, in the spellings of a workshop.

import {
  isLengthUnit,
  measuredUnitNamed,
  measuredUnits,
  type MeasuredDimension,
} from "../../record/index.ts";
import type { TypedLengthUnit, TypedUnit } from "./typing.ts";

/** The unit that a text names, of any dimension that is measured here. */
export const typedUnit = (text: string): TypedUnit | undefined =>
  /^tenths?$/i.test(text) ? "tenths" : measuredUnitNamed(text);

export const isTypedLength = (unit: TypedUnit): unit is TypedLengthUnit =>
  unit === "tenths" || isLengthUnit(unit);

export const isOf = (unit: TypedUnit, dimension: MeasuredDimension): boolean =>
  unit === "tenths" ? dimension === "length" : measuredUnits[dimension].includes(unit);

/** As a person types them. */
export const unitNames: Readonly<Record<MeasuredDimension, readonly string[]>> = {
  ...measuredUnits,
  length: ["mm", "in", "th", "tenths", "um"],
};

/** A unit as a person types it. */
export const nameOfUnit = (unit: TypedUnit): string => (unit === "thou" ? "th" : unit);

/** Millimetres and micrometres, or inches and their parts. */
export const isMetric = (unit: TypedUnit): boolean => unit === "mm" || unit === "um";
