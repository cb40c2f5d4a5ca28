// Can a test be trusted? Void, doubtful or trusted, each with its reasons; what was not recorded is listed apart,
// with what it would settle, and makes no test doubtful by itself.

import type { EngineRecord, Test } from "../../record/index.ts";
import { missingOf } from "./missing.ts";
import { type EngineFigures, figuresOf } from "../figures.ts";
import { type Trust, spoilsCranking } from "./trust-reason.ts";
import { trustRules, voidRules } from "./trust-rules.ts";
import type { TrustView } from "./trust-view.ts";
import { valuesOf } from "../values/values.ts";

/** Judges one test of an engine. @param figures - of the record, where they are known already */
export const judgeTrust = (
  record: EngineRecord,
  test: Test,
  figures: EngineFigures = figuresOf(record),
): Trust => {
  const view = viewOf(record, test, figures);
  const reasons = trustRules.flatMap((rule) => rule(view) ?? []);
  if (!reasons.some(({ weight }) => weight === "void"))
    return { code: reasons.length > 0 ? "doubtful" : "trusted", reasons, missing: missingOf(view) };
  const isAll = view.dry === undefined || reasons.some(spoilsCranking);
  return {
    code: "void",
    voids: isAll ? "all" : "leak-down",
    reasons,
    missing: missingOf(view),
  };
};

/** Whether a test tells nothing of one kind of reading; cheaper than the whole judgement. */
export const isVoid = (
  record: EngineRecord,
  test: Test,
  { what, figures }: { readonly what: "dry" | "leak-down"; readonly figures: EngineFigures },
): boolean => {
  const view = viewOf(record, test, figures);
  return voidRules.some((rule) => {
    const reason = rule(view);
    return reason !== undefined && (what === "dry" ? spoilsCranking(reason) : reason.weight === "void");
  });
};

const viewOf = (record: EngineRecord, test: Test, figures: EngineFigures): TrustView => ({
  record,
  test,
  figures,
  others: () => record.tests.filter((other) => other !== test && other.setAside === undefined),
  dry: valuesOf(test, "dry"),
});
