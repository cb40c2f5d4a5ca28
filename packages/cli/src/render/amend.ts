// The screen of `amend`: what stood there, what stands there now, and what the test says since.

import type { TestAssessment } from "@sealtrend/core";
import type { Amendment, AmendPlan } from "../commands/amend-steps/amend-plan.ts";
import { clean } from "./clean.ts";
import { savedLine } from "./saved-line.ts";
import { showHeadline } from "./show/show-headline.ts";
import { wrapText } from "./table.ts";

export interface AmendScreen {
  readonly id: string;
  readonly plan: AmendPlan;
  readonly because: string;
  readonly undo: "possible" | "not-possible";
  /** Absent where other entries have faults. */
  readonly assessment: TestAssessment | undefined;
  /** Whether the day was amended, to which the name of the test no longer fits. */
  readonly keepsName: boolean;
}

/** Lines without line ends. */
export const amendLines = (screen: AmendScreen, width: number): readonly string[] => {
  const { id, plan, because, undo, assessment } = screen;
  const changes = plan.amendments.flatMap((one) => wrapText(changeLine(one), width, "  "));
  return [
    savedLine(`amended  ${id} ${clean(plan.test)}`, undo, width),
    ...changes,
    ...wrapText(`because ${clean(because, 2000)}`, width, "  "),
    "",
    ...(screen.keepsName ? wrapText(`The test keeps its name, ${plan.test}.`, width) : []),
    ...(assessment === undefined
      ? wrapText("It is amended, but other entries have faults, so nothing can be said of it yet:", width)
      : verdict(assessment, width)),
  ];
};

/** `dry take 1 by red, cylinder 4: 131 -> 141`. */
const changeLine = ({ row, column, was, is }: Amendment): string => {
  const where = /^c(?!rank_)/.test(column) ? `cylinder ${column.slice(1)}` : column;
  return `${row}, ${where}: ${was === "" ? "nothing" : was} -> ${is === "" ? "nothing" : is}`;
};

const verdict = (assessment: TestAssessment, width: number): readonly string[] => {
  const { test, record } = assessment;
  return [
    ...wrapText(showHeadline(assessment), width),
    "",
    ...wrapText(`sealtrend show ${record.engine.id} --test ${test.id}`, width, "next   "),
  ];
};
