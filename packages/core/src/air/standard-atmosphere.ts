// Standard atmosphere of the troposphere (US Standard Atmosphere 1976 = ISO 2533), and the pressure at a place
// from what a weather report or an altimeter tells.

import {
  type AbsolutePressure,
  type Length,
  type Temperature,
  absolutePressure,
  length,
  temperature,
} from "../quantity/index.ts";

/** Sea-level pressure of the standard atmosphere, 101 325 Pa. @source ISO 2533 */
export const seaLevelPressure: AbsolutePressure = absolutePressure(101_325);
/** Sea-level temperature of the standard atmosphere, 288.15 K. @source ISO 2533 */
export const seaLevelTemperature: Temperature = temperature(288.15);

const lapse_K_m = 0.0065;
/** g0 M / (R* L) with the constants of the 1976 standard. */
const exponent = (9.80665 * 0.0289644) / (8.31432 * lapse_K_m);
const lowest_m = -2_000;
const highest_m = 11_000;

const inTroposphere = (altitude: Length, name: string): number => {
  if (altitude < lowest_m || altitude > highest_m)
    throw new RangeError(
      `${name}: altitude must be within ${String(lowest_m)} … ${String(highest_m)} m, got ${String(altitude)} m`,
    );
  return altitude;
};

/** Air temperature at a geopotential height. T = T0 − L·H.
 *  @param altitude - −2000 to 11 000 m @throws RangeError outside @source ISO 2533 @checked data/reference/standard-atmosphere.csv */
export const temperatureAtAltitude = (altitude: Length): Temperature =>
  temperature(seaLevelTemperature - lapse_K_m * inTroposphere(altitude, "temperatureAtAltitude"));

/** Air pressure at a geopotential height. p = p0·(T/T0)^5.255876.
 *  @param altitude - −2000 to 11 000 m @throws RangeError outside @source ISO 2533 @checked data/reference/standard-atmosphere.csv */
export const pressureAtAltitude = (altitude: Length): AbsolutePressure =>
  absolutePressure(seaLevelPressure * (temperatureAtAltitude(altitude) / seaLevelTemperature) ** exponent);

/** Density at a geopotential height as a fraction of that at sea level. σ = (T/T0)^4.255876.
 *  @param altitude - −2000 to 11 000 m @throws RangeError outside @source ISO 2533 @checked data/reference/standard-atmosphere.csv */
export const densityRatioAtAltitude = (altitude: Length): number =>
  (temperatureAtAltitude(altitude) / seaLevelTemperature) ** (exponent - 1);

/** Air temperature where the standard atmosphere has this pressure. T = T0·(p/p0)^0.190263.
 *  @param pressure - 22 632 to 127 774 Pa, the pressures of the troposphere @throws RangeError outside @source ISO 2533 */
export const temperatureAtPressure = (pressure: AbsolutePressure): Temperature => {
  const least = pressureAtAltitude(length(highest_m));
  const most = pressureAtAltitude(length(lowest_m));
  if (pressure < least || pressure > most)
    throw new RangeError(
      `temperatureAtPressure: pressure must be within ${least.toFixed(0)} … ${most.toFixed(0)} Pa, got ${String(pressure)} Pa`,
    );
  return temperature(seaLevelTemperature * (pressure / seaLevelPressure) ** (1 / exponent));
};

/** The height at which the standard atmosphere has this pressure; the inverse of pressureAtAltitude.
 *  H = (T0 − T)/L.
 *  @param pressure - 22 632 to 127 774 Pa @throws RangeError outside @source ISO 2533 */
export const altitudeAtPressure = (pressure: AbsolutePressure): Length =>
  length((seaLevelTemperature - temperatureAtPressure(pressure)) / lapse_K_m);

/** Pressure at a place from an altimeter setting (QNH): the standard atmosphere shifted to pass through it.
 *  p = (QNH^(1/n) − p0^(1/n)·L·H/T0)^n, n = 5.255876.
 *  @param altitude - −2000 to 11 000 m @throws RangeError outside, or where the setting leaves no air at that height
 *  @source US weather-service altimeter form, from memory */
export const stationPressure = (qnh: AbsolutePressure, altitude: Length): AbsolutePressure => {
  const root =
    qnh ** (1 / exponent) -
    (seaLevelPressure ** (1 / exponent) * lapse_K_m * inTroposphere(altitude, "stationPressure")) /
      seaLevelTemperature;
  return absolutePressure(root ** exponent);
};

/** The altimeter setting that belongs to a pressure read at a place; the inverse of stationPressure.
 *  @param altitude - −2000 to 11 000 m @throws RangeError outside */
export const altimeterSetting = (pressure: AbsolutePressure, altitude: Length): AbsolutePressure => {
  const root =
    pressure ** (1 / exponent) +
    (seaLevelPressure ** (1 / exponent) * lapse_K_m * inTroposphere(altitude, "altimeterSetting")) /
      seaLevelTemperature;
  return absolutePressure(root ** exponent);
};
