// The dry readings of one test against limits: the maker's and the published ones.

import { type PressureCorrection, speedDoubt } from "../cranking/index.ts";
import { gaugePressure } from "../quantity/index.ts";
import type { EngineRecord } from "../record/index.ts";
import type { RuleReading } from "../rules/index.ts";
import { type Spread, readingUncertainty } from "../spread/index.ts";
import type { LimitMissed, PressureValue } from "./assessment.ts";
import type { TrustCode } from "./trust-reason.ts";
import { type CylinderPressures, type GaugeDoubt, isCompared } from "./pressure-values.ts";

/** Lowest share of the highest reading, where the maker states no limit of his own. @source handbook/statistics.md L.8 */
const usualShare = 0.75;

/** A reading at a limit is not below it, whatever the last digit of the arithmetic says. */
const atMost = 1 - 1e-9;

/** The limits that a reading misses. */
export const limitsMissed = (
  { engine }: EngineRecord,
  value: PressureValue | undefined,
  spread: Spread | undefined,
): readonly LimitMissed[] => {
  if (!isCompared(value) || spread === undefined) return [];
  const { minimum, difference, lowestToHighest } = engine.compressionLimits;
  const share = value.corrected / spread.highest;
  if (minimum === undefined && difference === undefined && lowestToHighest === undefined)
    return share < usualShare * atMost ? ["usual-ratio"] : [];
  const isMinimumMissed = minimum !== undefined && value.corrected < minimum * atMost;
  const isTooFar = difference !== undefined && (spread.highest - value.corrected) * atMost > difference;
  const isShareMissed = lowestToHighest !== undefined && share < lowestToHighest * atMost;
  return [
    ...(isMinimumMissed ? (["maker-minimum"] as const) : []),
    ...(isTooFar ? (["maker-difference"] as const) : []),
    ...(isShareMissed ? (["maker-ratio"] as const) : []),
  ];
};

/** The dry readings as the rules take them. Speed is not corrected, so its doubt stands in the common part.
 *  @param facts - a test that is void carries no rule either */
export const ruleReadings = (
  { engine }: EngineRecord,
  pressures: readonly CylinderPressures[],
  {
    doubt,
    correction,
    trust,
  }: {
    readonly doubt: GaugeDoubt;
    readonly correction: PressureCorrection;
    readonly trust: TrustCode;
  },
): RuleReading[] =>
  engine.cylinders.map((label, i): RuleReading => {
    const value = pressures[i]?.dry;
    if (value === undefined) return { label, state: "not-taken", ownUncertainty: 0, commonUncertainty: 0 };
    const read = value.value > 0;
    const measured = { pressure: read ? value.value : 1, repeats: value.readings.length };
    const parts = readingUncertainty(measured, doubt, correction.uncertainty);
    const corrected = gaugePressure(value.corrected);
    return {
      label,
      state: value.pegged
        ? "pegged"
        : value.doubtful || !isCompared(value) || trust === "void"
          ? "doubtful"
          : "taken",
      pressureCorrected: corrected,
      fullyCorrected: corrected,
      ownUncertainty: read ? parts.reading : 0,
      commonUncertainty: read
        ? Math.hypot(parts.gauge, doubt.unknown, correction.uncertainty, speedDoubt(engine.ignition))
        : 0,
    };
  });
