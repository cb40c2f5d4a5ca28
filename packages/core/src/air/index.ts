export {
  altimeterSetting,
  altitudeAtPressure,
  densityRatioAtAltitude,
  pressureAtAltitude,
  seaLevelPressure,
  seaLevelTemperature,
  stationPressure,
  temperatureAtAltitude,
} from "./standard-atmosphere.ts";
