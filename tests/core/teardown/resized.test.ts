// Limits of parts that were bored or ground: shifted by the size. Source: TM 5-3805-262-34 p. 4-24 for journals (P11 of
// data/reference); bores: Toro ("final bore = standard + oversize"). Engine invented.

import { expect, test } from "vitest";
import type { Engine, TeardownAssessment } from "@sealtrend/core";
import { bore, codes, find, journal, judgedAs, limit, measured, saw } from "./judge-samples.ts";

const worn: Engine = {
  ...saw,
  clearances: [
    limit("bore", "diameter", { fresh: [86.5, 86.53], wear: [undefined, 86.6] }),
    limit("bore", "wear", { wear: [undefined, 0.1] }),
    limit("pin", "diameter", { fresh: [57.982, 58], wear: [57.95, undefined] }),
    limit("piston", "diameter", { fresh: [86.46, 86.48] }),
  ],
};
const after = { state: "after machining" } as const;
const limitsOf = (assessment: TeardownAssessment, part: string, quantity: string) =>
  find(assessment.items, part, quantity)
    .filter(({ at }) => at?.startsWith("unworn") !== true)
    .map(({ verdicts }) =>
      verdicts.map(({ kind, low = 0, high = 0, verdict, limitFor }) => [
        kind,
        ...[low, high].map((size) => Number((size * 1000).toFixed(3))),
        verdict,
        limitFor,
      ]),
    );

test("a bore whose unworn spot reads +0.50 is held against the limits for +0.50", () => {
  const judged = judgedAs(
    measured([["bore", "1", "unworn/thrust", "diameter", 87.01], ...bore("1", 87.05)]),
    worn,
  );
  expect(limitsOf(judged, "bore", "diameter")).toEqual([
    [
      ["new", 87, 87.03, "outside", "limits for +0.50 mm"],
      ["wear", 0, 87.1, "inside", "limits for +0.50 mm"],
    ],
  ]);
  expect(find(judged.derived, "bore", "wear")[0]?.value).toBeCloseTo(0.00004, 9);
  expect(codes(judged)).not.toContain("bore-oversize");
});

test("a bore as the shop gave it back at +0.50 is inside; one 0.06 mm too large is outside", () => {
  const right = judgedAs(measured(bore("1", 87.015, 87.015), after), worn);
  expect(limitsOf(right, "bore", "diameter")[0]?.[0]?.slice(0, 4)).toEqual(["new", 87, 87.03, "inside"]);
  expect(find(right.derived, "bore", "wear")[0]?.verdicts).toMatchObject([{ verdict: "inside" }]);
  const large = judgedAs(measured(bore("1", 87.06, 87.06), after), worn);
  expect(limitsOf(large, "bore", "diameter")[0]?.[0]?.slice(0, 4)).toEqual(["new", 87, 87.03, "outside"]);
  const larger = judgedAs(
    measured([...bore("1", 87.01), ...bore("2", 87.01), ...bore("3", 87.09)], after),
    worn,
  );
  expect(limitsOf(larger, "bore", "diameter")[2]?.[0]?.slice(0, 4)).toEqual(["new", 87, 87.03, "outside"]);
});

// P11: 2.748 to 2.749 less 0.010 is 2.738 to 2.739, here in mm with -0.25
test("pins after grinding are held against the range less the undersize", () => {
  const ground = judgedAs(measured(journal("pin", "1", 57.74), after), worn);
  expect(limitsOf(ground, "pin", "diameter")).toEqual([
    [
      ["new", 57.732, 57.75, "inside", "limits for -0.25 mm"],
      ["wear", 57.7, 0, "inside", "limits for -0.25 mm"],
    ],
  ]);
  const thin = judgedAs(measured(journal("pin", "1", 57.69), after), worn);
  expect(limitsOf(thin, "pin", "diameter")[0]?.[0]?.slice(0, 4)).toEqual(["new", 57.732, 57.75, "outside"]);
});

test("new pistons of the oversize have its limits, worn parts of standard size keep theirs", () => {
  const pistons = judgedAs(measured([["piston", "1", "", "diameter", 86.97]], { state: "new part" }), worn);
  expect(limitsOf(pistons, "piston", "diameter")[0]).toEqual([
    ["new", 86.96, 86.98, "inside", "limits for +0.50 mm"],
  ]);
  const standard = judgedAs(measured(bore("1", 86.74)), worn);
  expect(limitsOf(standard, "bore", "diameter")[0]?.[1]).toEqual(["wear", 0, 86.6, "outside", undefined]);
});
