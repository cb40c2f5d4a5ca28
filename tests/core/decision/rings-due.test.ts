// Rings that were out and ran too long to go back, whatever the readings say. Inputs invented.

import { type DecisionInput, decide } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { healthyOpen, rows } from "./examples.ts";

test("rings that were disturbed go in new: nothing is compared, and only what needs more goes beyond it", () => {
  const due: DecisionInput = { ...healthyOpen, ringsDue: "yes" };
  const found = decide(due);
  expect(found).toMatchObject({ verdict: "re-ring", basis: "opportunity", reasons: ["rings-disturbed"] });
  // work 620, all of the way in done
  expect(found.due).toEqual({ act: "reRing", price: 620 });
  expect([found.comparison, found.keep, found.ratio, found.margin]).toEqual(new Array(4).fill(undefined));
  expect(decide({ ...due, rows: rows("B2", "I1") })).toMatchObject({
    verdict: "re-ring",
    reasons: ["rings-disturbed", "need-established"],
    // the head with it: 620 and 400
    due: { price: 1020 },
  });
  expect(decide({ ...due, rows: rows("E1", "F1") })).toMatchObject({ verdict: "rebuild", basis: "needed" });
  // open it cannot be tested, so no test holds it back
  expect(decide({ ...due, trust: "void" }).verdict).toBe("re-ring");
  expect(decide({ ...due, trust: "doubtful" }).verdict).toBe("re-ring");
});
