// Whether there is anything to explain: a cylinder that stands out, or an engine that is not what it was.

import type { TestAssessment } from "../assessment.ts";
import { isLow } from "./assessed.ts";

/** From here on a chance is told. @source handbook/diagnosis.md 5.3 (possible), judgement */
const possible = 0.35;

/** Causes are told, and tests for them proposed, where a cylinder is not even or a few read high; where something of the
 *  whole engine is possible, all its states together; and in an engine of one cylinder where a fault is. */
export const isWorthExplaining = ({
  cylinders,
  high,
  diagnosis,
}: Pick<TestAssessment, "cylinders" | "high" | "diagnosis">): boolean => {
  if (diagnosis === undefined) return false;
  if (high !== undefined || cylinders.some(isLow)) return true;
  const ofEngine = diagnosis.states.reduce((sum, { probability }) => sum + probability, 0);
  return ofEngine >= possible || (cylinders.length === 1 && 1 - diagnosis.groups.nothing >= possible);
};
