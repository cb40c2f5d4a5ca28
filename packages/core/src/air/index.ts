export {
  altimeterSetting,
  altitudeAtPressure,
  densityRatioAtAltitude,
  pressureAtAltitude,
  seaLevelPressure,
  seaLevelTemperature,
  stationPressure,
  temperatureAtAltitude,
  temperatureAtPressure,
} from "./standard-atmosphere.ts";
