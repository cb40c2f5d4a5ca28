export { beyondWeather } from "./barometer.ts";
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
export {
  airGamma,
  chokedFlow,
  criticalRatio,
  flowFunction,
  flowFunctionOfDrop,
  gasConstant,
} from "./orifice-flow.ts";
