export {
  correctReading,
  pressureCorrection,
  type AirOfTheDay,
  type CorrectionBasis,
  type PressureCorrection,
} from "./pressure-correction.ts";
export { speedDoubt } from "./speed-doubt.ts";
