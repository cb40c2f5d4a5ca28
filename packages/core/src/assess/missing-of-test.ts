// What is not known of a test, with what only its likely causes would want to know.

import type { TestAssessment } from "./assessment.ts";
import { isLow } from "./causes/assessed.ts";
import { isWorthExplaining } from "./causes/worth-explaining.ts";

type Found = Pick<TestAssessment, "record" | "trust" | "cylinders" | "high" | "diagnosis" | "evidence">;

/** Which cylinders stand side by side is asked for where something is to be explained and a gasket is shared; first where
 *  several are low, for then it may lie between two of them. */
export const missingOfTest = (found: Found): readonly string[] => {
  const { record, trust, cylinders, evidence } = found;
  const { engine } = record;
  const isShared = engine.sharedGasket && cylinders.length > 1 && evidence?.banks.length === 0;
  if (!isShared || !isWorthExplaining(found)) return trust.missing;
  const text = "which cylinders stand side by side, banks (without it no gasket between two can be found)";
  return cylinders.filter(isLow).length > 1 ? [text, ...trust.missing] : [...trust.missing, text];
};
