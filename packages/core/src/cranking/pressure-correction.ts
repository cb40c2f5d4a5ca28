// A cranking reading brought to reference air, so that a test on a mountain compares with one at the sea.
// With the same engine state the absolute pressure at the plug is a fixed multiple of the air's, so the gauge
// pressure scales with it exactly; heat to the walls changes the factor by at most 1.3 % at 10 000 ft.

import {
  type AbsolutePressure,
  type GaugePressure,
  type Length,
  type Temperature,
  gaugePressure,
} from "../quantity/index.ts";
import {
  pressureAtAltitude,
  seaLevelPressure,
  seaLevelTemperature,
  stationPressure,
  temperatureAtPressure,
} from "../air/index.ts";

/** `pressure`: by air pressure alone (the physics). `density`: by air density, as the trade's printed factor tables. */
export type CorrectionBasis = "pressure" | "density";

/** What is known of the air at the test; the best of it counts: barometer, weather report with altitude, altitude. */
export interface AirOfTheDay {
  readonly stationPressure?: AbsolutePressure;
  readonly qnh?: AbsolutePressure;
  readonly altitude?: Length;
  readonly airTemperature?: Temperature;
}

/** The factor of a test and what it rests on. */
export interface PressureCorrection {
  readonly basis: CorrectionBasis;
  /** Air pressure at the place, and where it came from. */
  readonly station: AbsolutePressure;
  readonly from: "station" | "qnh" | "altitude" | "assumed";
  readonly reference: AbsolutePressure;
  /** x of (T/T_ref)^x. */
  readonly temperatureExponent: number;
  /** Corrected reading = reading x factor. */
  readonly factor: number;
  /** Standard uncertainty of ln factor. */
  readonly uncertainty: number;
  /** Its parts: of the air's pressure, and of what its temperature does to a reading. */
  readonly uncertaintyOfPressure: number;
  readonly uncertaintyOfTemperature: number;
}

/** Standard uncertainties of ln p; judgement but for the rectangular rule (half-range / sqrt 3). */
const spread = {
  /** A barometer read at the place, within 3 hPa. */
  station: 0.003 / Math.sqrt(3),
  /** A report for the place, within 3 hPa, and its altitude within 30 m. */
  qnh: Math.hypot(0.003, 0.0036) / Math.sqrt(3),
  /** Altitude alone: the weather moves the air by some 25 hPa either way. */
  altitude: 0.025 / Math.sqrt(3),
  /** Nothing known: anywhere from the sea to 2000 m (ln range 0.243). */
  assumed: 0.1213 / Math.sqrt(3),
} as const;

/** How far the temperature exponent of the reading may lie from the basis' own: the cycle model gives 0.05 to 0.28. */
const exponentDoubt = 0.14;
/** Air between -10 and 35 degC where no thermometer was read: half-range of ln T over sqrt 3. */
const temperatureDoubt = 0.0792 / Math.sqrt(3);

const airAt = (air: AirOfTheDay): { station: AbsolutePressure; from: PressureCorrection["from"] } => {
  if (air.stationPressure !== undefined) return { station: air.stationPressure, from: "station" };
  if (air.qnh !== undefined && air.altitude !== undefined)
    return { station: stationPressure(air.qnh, air.altitude), from: "qnh" };
  if (air.altitude !== undefined) return { station: pressureAtAltitude(air.altitude), from: "altitude" };
  return { station: seaLevelPressure, from: "assumed" };
};

/** The factor that brings a gauge reading to 101.325 kPa (and 288.15 K where temperature counts).
 *  P_ref = P · (p_ref/p) · (T/T_ref)^x, x = 0 by pressure, 1 by density, or as chosen. Where temperature counts and
 *  was not read, the air is as warm as the standard has it at that pressure.
 *  @param exponent - x, 0 to 1; the cycle model gives about 0.25 for a hot engine in cool air
 *  @throws RangeError for an altitude outside −2000 … 11 000 m, or x outside 0 … 1
 *  @source cycle model and published tables compared in the handbook; algebra @checked data/reference/altitude-factors.csv */
export const pressureCorrection = (
  air: AirOfTheDay,
  basis: CorrectionBasis = "pressure",
  exponent: number = basis === "density" ? 1 : 0,
): PressureCorrection => {
  const x = exponent;
  if (!(x >= 0 && x <= 1)) throw new RangeError(`pressureCorrection: exponent ${String(x)}, not from 0 to 1`);
  const { station, from } = airAt(air);
  const airTemperature =
    x === 0 ? seaLevelTemperature : (air.airTemperature ?? temperatureAtPressure(station));
  const factor = (seaLevelPressure / station) * (airTemperature / seaLevelTemperature) ** x;
  const thermal =
    air.airTemperature === undefined
      ? temperatureDoubt * Math.max(exponentDoubt, x)
      : exponentDoubt * Math.abs(Math.log(air.airTemperature / seaLevelTemperature));
  return {
    basis,
    station,
    from,
    reference: seaLevelPressure,
    temperatureExponent: x,
    factor,
    uncertainty: Math.hypot(spread[from], thermal),
    uncertaintyOfPressure: spread[from],
    uncertaintyOfTemperature: thermal,
  };
};

/** A gauge reading in reference air. */
export const correctReading = (reading: GaugePressure, { factor }: PressureCorrection): GaugePressure =>
  gaugePressure(reading * factor);
