// The likely causes of what one assessed test found.

import { type Diagnosis, type Evidence, type Faults, diagnose } from "../../diagnosis/index.ts";
import type { EngineFigures } from "../figures.ts";
import type { Assessed } from "./assessed.ts";
import type { HistoryAssessment } from "../years/assess-history.ts";
import { evidenceOf } from "./evidence-of.ts";

export interface DiagnosedTest {
  /** What it goes by. */
  readonly evidence: Evidence;
  readonly diagnosis: Diagnosis;
}

/** Undefined for a test that is void or set aside, or holds nothing that a cause could be told from.
 *  @param faults - the tables to go by  @param history - of the record, where it is known already */
export const diagnoseTest = (
  assessed: Assessed,
  figures: EngineFigures,
  { faults, history }: { readonly faults: Faults; readonly history: HistoryAssessment | undefined },
): DiagnosedTest | undefined => {
  if (assessed.test.setAside !== undefined || assessed.trust.voids === "all") return undefined;
  const evidence = evidenceOf(assessed, figures, history);
  const isEmpty = evidence.cylinders.every(({ dry, leak, heard, running }) =>
    [dry, leak, heard, running].every((found) => found === undefined),
  );
  return isEmpty ? undefined : { evidence, diagnosis: diagnose(evidence, faults) };
};
