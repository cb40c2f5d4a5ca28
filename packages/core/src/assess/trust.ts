// Can a test be trusted? Void, doubtful or trusted, each with its reasons; what was not recorded is listed apart,
// with what it would settle, and makes no test doubtful by itself.

import type { EngineRecord, Test } from "../record/index.ts";
import { missingOf } from "./missing.ts";
import { type EngineFigures, figuresOf } from "./figures.ts";
import type { Trust } from "./trust-reason.ts";
import { trustRules } from "./trust-rules.ts";
import { valuesOf } from "./values.ts";

/** Judges one test of an engine. @param figures - of the record, where they are known already */
export const judgeTrust = (
  record: EngineRecord,
  test: Test,
  figures: EngineFigures = figuresOf(record),
): Trust => {
  const others = record.tests.filter((other) => other !== test && other.setAside === undefined);
  const view = { record, test, others, dry: valuesOf(test, "dry"), figures };
  const reasons = trustRules.flatMap((rule) => rule(view) ?? []);
  const isVoid = reasons.some(({ weight }) => weight === "void");
  return {
    code: isVoid ? "void" : reasons.length > 0 ? "doubtful" : "trusted",
    reasons,
    missing: missingOf(view),
  };
};
