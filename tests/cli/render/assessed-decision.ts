// A decision assessed from an engine without records, for tests that put another decision into it.

import { type DecisionAssessment, assessDecision, readEngine } from "@sealtrend/core";

export const assessedDecision = (): DecisionAssessment => {
  const { engine } = readEngine(
    '{ "cylinders": ["1", "2", "3", "4"], "ignition": "spark" }',
    "engine.json",
    "pump",
  );
  if (engine === undefined) throw new Error("the engine is sound");
  const record = { engine, gauges: [], tests: [], services: [], notes: [], measurements: [] };
  return assessDecision(record, { today: "2026-11-25", opened: "pistons-in" });
};
