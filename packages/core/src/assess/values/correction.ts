// How the readings of a test are brought to reference air: as the owner chose for the engine, else by pressure.

import { type PressureCorrection, pressureCorrection } from "../../cranking/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";

export const correctionOf = (
  { engine }: Pick<EngineRecord, "engine">,
  { conditions }: Pick<Test, "conditions">,
): PressureCorrection => {
  const { basis, temperatureExponent } = engine.correction;
  return pressureCorrection(conditions, basis, temperatureExponent);
};
