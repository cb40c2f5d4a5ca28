// What goes with the work: the valves and guides that were measured past their limit, beside new rings.

import type { DecisionAssessment, FoundRow } from "@sealtrend/core";
import { expect, test } from "vitest";
import { nextLines } from "../../../packages/cli/src/render/decide/decide-next.ts";
import { assessedDecision } from "./assessed-decision.ts";

const past = (text: string): FoundRow => ({
  row: "J7",
  line: "measured",
  text,
  from: "teardown 1, 2026-11-22",
  points: { top: 4, rings: 0, bore: 0, bottom: 0 },
  status: "published",
  source: "",
  use: "counted",
});

const reRing = (evidence: readonly FoundRow[]): string => {
  const base = assessedDecision();
  const assessment: DecisionAssessment = {
    ...base,
    evidence,
    decision: { ...base.decision, verdict: "re-ring", basis: "opportunity" },
  };
  return nextLines(assessment, 200).join(" ").replace(/\s+/g, " ");
};

test("a guide past its limit is told beside the re-ring, and how many more there are", () => {
  const guide = "guide 2 intake clearance 0.20 mm, limit 0.15 mm";
  expect(reRing([past(guide)])).toContain(`work the valves and their guides as well: ${guide} next `);
  expect(reRing([past(guide), past("guide 3 intake clearance 0.18 mm, limit 0.15 mm")])).toContain(
    `${guide}, and 1 more`,
  );
  expect(reRing([])).not.toContain("valves");
});
