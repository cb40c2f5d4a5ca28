export { dateOfDay, dayNumber, daysInYear, isPlainDay, yearsBetween } from "./day.ts";
export {
  aboveVacuum,
  absolutePressure,
  angle,
  area,
  force,
  gaugePressure,
  length,
  speed,
  temperature,
  volume,
  type AbsolutePressure,
  type Angle,
  type Area,
  type Force,
  type GaugePressure,
  type Length,
  type Quantity,
  type Speed,
  type Temperature,
  type Volume,
} from "./quantity.ts";
export {
  dimensionOf,
  fromSi,
  gaugeUnitNamed,
  gaugeUnits,
  toSi,
  unitNamed,
  unitsOf,
  type Dimension,
  type PressureUnit,
  type UnitName,
  type UnitOf,
} from "./units.ts";
export { digitsValue, lettersAsDigits, readNumber, type NumberFault, type NumberReading } from "./number.ts";
export {
  readQuantity,
  writeNumber,
  writeQuantity,
  type QuantityFault,
  type QuantityReading,
} from "./text.ts";
