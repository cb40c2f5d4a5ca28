// Where all cylinders are low alike, what is more often the day than the engine: battery, throttle, gauge.

import type { EngineRecord } from "../record/index.ts";
import type { NextTest, TestAssessment } from "./assessment.ts";

type Found = Pick<TestAssessment, "cylinders" | "levelSince" | "levelBelow" | "evidence">;

/** Whether all read low, surely so where only a limit says it, and none stands out among its fellows. */
export const isLowAlike = ({ cylinders, levelSince, levelBelow }: Found): boolean => {
  const read = cylinders.filter(({ dryStanding }) => dryStanding !== undefined);
  const byLimit =
    read.length > 1 && read.every(({ belowLimit, atLimit }) => belowLimit && atLimit === undefined);
  const isLow = levelSince !== undefined || levelBelow !== undefined || byLimit;
  return isLow && !cylinders.some(({ flagged, leakDown }) => flagged || leakDown?.flagged === true);
};

/** As much as the ladder asks of a baseline. @source handbook/trade.md F2 (85 % of the own baseline; judgement) */
const fall = -0.15;

/** All lower than they were by that much, whichever stands out besides. */
const isFarLower = ({ levelSince }: Pick<TestAssessment, "levelSince">): boolean =>
  (levelSince?.change ?? 0) <= fall;

/** That, or all cylinders below the maker's minimum. */
export const isLowEverywhere = (found: Pick<TestAssessment, "cylinders" | "levelSince">): boolean => {
  const read = found.cylinders.filter(({ pressures }) => pressures.dry !== undefined);
  return (
    isFarLower(found) ||
    (read.length > 0 && read.every(({ limitsMissed }) => limitsMissed.includes("maker-minimum")))
  );
};

/** What was not recorded as right that day; nothing where all of it was. Volts alone tell no speed, so that the battery is
 *  charged whatever they were. @source handbook/trade.md C5 (weak battery, throttle, gauge before wear) */
export const toProveFirst = ({ engine }: EngineRecord, found: Found): readonly Omit<NextTest, "by">[] => {
  const known = new Set(found.evidence?.circumstances.map(({ when }) => when));
  if (found.evidence === undefined || !(isLowAlike(found) || isFarLower(found))) return [];
  const parts = [
    ...(known.has("speed recorded and enough") ? [] : ["charge the battery and note the cranking speed"]),
    ...(engine.ignition === "compression" || known.has("throttle open")
      ? []
      : ["block the throttle wide open"]),
    ...(known.has("gauge proved") ? [] : ["prove the gauge beside another"]),
  ];
  const all = found.cylinders.length === 1 ? "test again" : "test all again";
  return parts.length === 0
    ? []
    : [{ code: "conditions", text: `${parts.join(", ")}, then ${all}`, minutes: 20 }];
};
