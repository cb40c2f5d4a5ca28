export { byKey } from "./by-key.ts";
export { byName } from "./by-name.ts";
export { byText } from "./by-text.ts";
export { bad, good, type Outcome } from "./outcome.ts";
export {
  byPlace,
  problem,
  type Facts,
  type Place,
  type Problem,
  type ProblemCode,
  type Severity,
  type Words,
} from "./problem.ts";
export { problemCodes } from "./catalogue.ts";
export { nearest } from "./nearest.ts";
export { type HolesFault } from "./words/gauge-misfits.ts";
export { type LinkFault } from "./words/gauges.ts";
export { type TypedDeviationFault, type TypedFigureFault } from "./words/typed-lines.ts";
