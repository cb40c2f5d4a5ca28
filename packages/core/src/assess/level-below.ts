// Whether all cylinders read below what a sound engine would: what they share, which no comparison among them can show.

import type { PressureCorrection } from "../cranking/index.ts";
import type { Evidence, Faults } from "../diagnosis/index.ts";
import { median } from "../statistics/index.ts";
import type { CylinderAssessment, LevelBelow } from "./assessment.ts";
import { comparedPressure, isCompared } from "./values/pressure-values.ts";

/** Absent unless every dry reading is below the maker's figure for a new engine, or the estimate where he gives none, and the
 *  middle one by more than twice the uncertainty: u^2 = u_X^2 + u^2(ln factor of the air). The engine's own first tests are
 *  left to `levelSince`. @source handbook/diagnosis.md 3 (u_X, judgement) */
export const levelBelow = (
  cylinders: readonly CylinderAssessment[],
  {
    expected,
    correction,
    faults,
  }: {
    readonly expected: Evidence["expected"];
    readonly correction: PressureCorrection;
    readonly faults: Pick<Faults, "settings">;
  },
): LevelBelow | undefined => {
  if (expected === undefined || expected.from === "baseline") return undefined;
  const levels = cylinders.flatMap(({ pressures: { dry } }) =>
    // what holds nothing tells of itself, not of all
    isCompared(dry) && dry.value > 0 ? [comparedPressure(dry)] : [],
  );
  if (levels.length === 0 || levels.some((level) => level >= expected.level)) return undefined;
  const { makerDoubt, estimateDoubt } = faults.settings;
  const doubt = expected.from === "maker" ? makerDoubt : estimateDoubt;
  const uncertainty = Math.hypot(doubt, correction.uncertainty);
  const share = median(levels) / expected.level;
  return share < Math.exp(-2 * uncertainty)
    ? { from: expected.from, expected: expected.level, change: share - 1, uncertainty }
    : undefined;
};
