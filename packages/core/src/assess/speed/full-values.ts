// The dry readings in reference air and at the reference speed, with what the air, the gauge and the speed leave in doubt.

import { type PressureCorrection, type SpeedCorrected, commonSpeedDoubt } from "../../cranking/index.ts";
import { readingUncertainty } from "../../spread/index.ts";
import type { FullyCorrected, PressureValue } from "../assessment.ts";
import type { CylinderPressures, GaugeDoubt } from "../values/pressure-values.ts";
import type { SpeedAssessment } from "./speed-assessment.ts";
import type { Uneven } from "./even-speed.ts";
import { interaction } from "./speeds.ts";

/** Adds the fully corrected value to every dry reading that has one. */
export const withSpeed = (
  pressures: readonly CylinderPressures[],
  speed: SpeedAssessment | undefined,
  facts: { readonly correction: PressureCorrection; readonly doubt: GaugeDoubt },
): readonly CylinderPressures[] =>
  pressures.map((own, i) => {
    const corrected = speed?.cylinders[i];
    return own.dry === undefined || corrected === undefined
      ? own
      : { ...own, dry: { ...own.dry, full: fullOf(own.dry, corrected, facts) } };
  });

/** Adds to every dry reading its value at the middle speed of the test, where the cylinders' speeds differ. */
export const withEven = (
  pressures: readonly CylinderPressures[],
  uneven: Uneven | undefined,
): readonly CylinderPressures[] =>
  uneven === undefined || uneven.refused !== undefined
    ? pressures
    : pressures.map((own, i) =>
        own.dry === undefined
          ? own
          : { ...own, dry: { ...own.dry, even: own.dry.corrected * Math.exp(uneven.lnFactors[i] ?? 0) } },
      );

/** A gauge or barometer that is out takes P_0 along with it, so that its part never shrinks below itself. */
const fullOf = (
  { value, readings }: PressureValue,
  { pressure, lossSpeed, sensitivity, doubts }: SpeedCorrected,
  { correction, doubt }: { readonly correction: PressureCorrection; readonly doubt: GaugeDoubt },
): FullyCorrected => {
  const measured = { pressure: value, repeats: readings.length };
  const parts = readingUncertainty(measured, doubt, correction.uncertainty);
  const own = Math.hypot(sensitivity * Math.hypot(parts.reading, interaction), doubts.leak);
  const shared = Math.max(1, sensitivity) * Math.hypot(parts.gauge, doubt.unknown, correction.uncertainty);
  const common = Math.hypot(shared, commonSpeedDoubt(doubts));
  return { corrected: pressure, uncertainty: pressure * Math.hypot(own, common), own, common, lossSpeed };
};
