// Whether a test was made cold while what it is held against was warm.

import type { EngineRecord, Test } from "../../record/index.ts";
import { valuesOf } from "../values/values.ts";

/** Below 40 degC, or so named; warm from 60 degC. Between them nothing is said (judgement). */
export const isCold = ({ conditions }: Test): boolean =>
  conditions.engineTemp === "cold" || (conditions.engineTemperature ?? Infinity) < 313.15;
export const isWarm = ({ conditions }: Test): boolean =>
  conditions.engineTemp === "warm" || (conditions.engineTemperature ?? 0) >= 333.15;

/** Other tests of the engine that count, or the maker's figures, which are for a warm engine unless the manual says cold;
 *  undefined where the test was not cold, or nothing of the kind is known. */
export const coldAgainst = (
  record: EngineRecord,
  test: Test,
): "other-tests" | "makers-figures" | undefined => {
  if (!isCold(test)) return undefined;
  const { minimum, new: asNew } = record.engine.compressionLimits;
  if (record.tests.some((other) => other !== test && other.setAside === undefined && isWarm(other)))
    return "other-tests";
  const held = minimum !== undefined || asNew !== undefined;
  return held && valuesOf(test, "dry") !== undefined ? "makers-figures" : undefined;
};
