// The dry readings of one test against limits: the maker's and the published ones.

import { type PressureCorrection, speedDoubt } from "../cranking/index.ts";
import { gaugePressure } from "../quantity/index.ts";
import type { Engine, EngineRecord } from "../record/index.ts";
import type { RuleReading } from "../rules/index.ts";
import { type Spread, readingUncertainty } from "../spread/index.ts";
import type { LimitMissed, PressureValue } from "./assessment.ts";
import type { Trust } from "./trust/trust-reason.ts";
import {
  type CylinderPressures,
  type GaugeDoubt,
  comparedPressure,
  isCompared,
} from "./values/pressure-values.ts";
import type { SpeedAssessment } from "./speed/speed-assessment.ts";
import { sweptOf } from "./speed/speed-estimates.ts";

/** Lowest share of the highest reading, where the maker states no limit of his own. @source handbook/statistics.md L.8 */
const usualShare = 0.75;

/** A reading at a limit is not below it, whatever the last digit of the arithmetic says. */
const atMost = 1 - 1e-9;

/** What an absolute limit or a difference in pressure is held against: fully corrected where that was not refused. */
const fullOf = ({ full, corrected }: PressureValue): number => full?.corrected ?? corrected;

/** The limits that a reading misses. @param pressures - of all cylinders of the test */
export const limitsMissed = (
  { engine }: EngineRecord,
  value: PressureValue | undefined,
  {
    spread,
    pressures,
  }: { readonly spread: Spread | undefined; readonly pressures: readonly CylinderPressures[] },
): readonly LimitMissed[] => {
  if (!isCompared(value) || spread === undefined) return [];
  const { minimum, difference, lowestToHighest } = engine.compressionLimits;
  const share = comparedPressure(value) / spread.highest;
  if (minimum === undefined && difference === undefined && lowestToHighest === undefined)
    return share < usualShare * atMost ? ["usual-ratio"] : [];
  const own = fullOf(value);
  const highest = Math.max(...pressures.flatMap(({ dry }) => (isCompared(dry) ? fullOf(dry) : [])));
  const isMinimumMissed = minimum !== undefined && own < minimum * atMost;
  const isTooFar = difference !== undefined && (highest - own) * atMost > difference;
  const isShareMissed = lowestToHighest !== undefined && share < lowestToHighest * atMost;
  return [
    ...(isMinimumMissed ? (["maker-minimum"] as const) : []),
    ...(isTooFar ? (["maker-difference"] as const) : []),
    ...(isShareMissed ? (["maker-ratio"] as const) : []),
  ];
};

/** The dry readings as the rules take them. Where the speed is not corrected its doubt stands in the common part.
 *  @param facts - a test that is void for them carries no rule either */
export const ruleReadings = (
  { engine }: EngineRecord,
  pressures: readonly CylinderPressures[],
  {
    doubt,
    correction,
    speed,
    voids,
  }: {
    readonly doubt: GaugeDoubt;
    readonly correction: PressureCorrection;
    readonly speed: SpeedAssessment | undefined;
    readonly voids: Trust["voids"];
  },
): RuleReading[] =>
  engine.cylinders.map((label, i): RuleReading => {
    const value = pressures[i]?.dry;
    if (value === undefined) return { label, state: "not-taken", ownUncertainty: 0, commonUncertainty: 0 };
    const read = value.value > 0;
    const measured = { pressure: read ? value.value : 1, repeats: value.readings.length };
    const parts = readingUncertainty(measured, doubt, correction.uncertainty);
    const { full } = value;
    return {
      label,
      state: value.pegged
        ? "pegged"
        : value.doubtful || !isCompared(value) || voids === "all"
          ? "doubtful"
          : "taken",
      pressureCorrected: gaugePressure(comparedPressure(value)),
      fullyCorrected: gaugePressure(fullOf(value)),
      ownUncertainty: read ? parts.reading : 0,
      ...(full === undefined ? {} : { fullOwnUncertainty: full.own }),
      commonUncertainty: !read
        ? 0
        : full === undefined
          ? Math.hypot(
              parts.gauge,
              doubt.unknown,
              doubt.hose,
              correction.uncertainty,
              doubtOfSpeed(engine, speed),
            )
          : Math.hypot(full.common, doubt.hose),
    };
  });

/** What the speed may have done to readings that stand as they are. */
export const doubtOfSpeed = (engine: Engine, speed: SpeedAssessment | undefined): number => {
  const { from, to } = speed ?? {};
  const known = from === undefined || to === undefined ? undefined : { from, to };
  return speedDoubt(engine.ignition, sweptOf(engine), known);
};
