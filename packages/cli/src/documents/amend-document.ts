// The JSON of `amend`, sealtrend/amend@1: as show, of the test after the change, and what was changed.

import type { Problem, TestAssessment } from "@sealtrend/core";
import type { AmendPlan } from "../commands/amend-steps/amend-plan.ts";
import { showDocument } from "./show-document.ts";

export interface AmendFacts {
  readonly id: string;
  readonly plan: AmendPlan;
  readonly because: string;
  /** The file amended, as shown. */
  readonly file: string;
  /** Absent where other entries have faults: then `problems` names them. */
  readonly assessment: TestAssessment | undefined;
  readonly problems: readonly Problem[];
}

export const amendDocument = ({ id, plan, because, file, assessment, problems }: AmendFacts) => {
  const schema = "sealtrend/amend@1";
  const amended = {
    changes: plan.amendments.map(({ row, line, column, was, is }) => ({
      row,
      line,
      column,
      old: was,
      new: is,
    })),
    because,
    written: { file, rows: new Set(plan.amendments.map(({ line }) => line)).size },
  };
  if (assessment !== undefined) return { ...showDocument(assessment, schema), ...amended };
  return { schema, engine: { id }, test: { id: plan.test }, ...amended, problems };
};
