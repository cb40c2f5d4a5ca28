// Limits of parts that were bored or ground: shifted by the size. Source: TM 5-3805-262-34 p. 4-24 for journals (P11 of
// data/reference); bores: Toro ("final bore = standard + oversize"). Engine invented.

import { expect, test } from "vitest";
import type { Engine, TeardownAssessment } from "@sealtrend/core";
import { mm } from "./consistency-samples.ts";
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

const asFound = (...sizes: readonly number[]) =>
  measured(
    sizes.flatMap((size, i) => journal("pin", String(i + 1), size)),
    { state: "as found" },
  );
const groundPins: Engine = {
  ...worn,
  clearances: worn.clearances.filter(({ part }) => part === "pin"),
  offered: {
    pin: { unit: "mm", sizes: [0.25, 0.5].map(mm) },
  },
};

// by hand: 57.982 to 58.000 less 0.25 is 57.732 to 57.750, worn to 57.950 - 0.25 = 57.700
test("pins that were ground before they came apart are held against that size, and it is said", () => {
  const judged = judgedAs(asFound(57.74, 57.735, 57.72, 57.745), groundPins);
  expect(limitsOf(judged, "pin", "diameter")[2]).toEqual([
    ["new", 57.732, 57.75, "outside", "limits for -0.25 mm"],
    ["wear", 57.7, 0, "inside", "limits for -0.25 mm"],
  ]);
  expect(judged.conflicts).toMatchObject([
    {
      code: "ground-before",
      part: "pin",
      weight: "doubtful",
      text: "pins look like -0.25 mm already: 4 figures lie in its range and are held against it",
      mend: "see the mark on the crank or on the back of the shells",
    },
  ]);
  expect(codes(judged)).not.toContain("grind-crank");
  expect(judged.undersizes).toEqual([]);
});

test("a slip among them waits by itself, the others keep their size", () => {
  const judged = judgedAs(asFound(57.74, 577.35, 57.74, 57.745), groundPins);
  expect(judged.conflicts.map(({ code }) => code)).toEqual(["likely-slip", "ground-before"]);
  expect(codes(judged)).not.toContain("grind-crank");
});

test("a crank with one pin of standard size, or worn between the sizes, was not ground", () => {
  for (const sizes of [
    [57.74, 57.99, 57.74, 57.74],
    [57.85, 57.84, 57.85, 57.85],
  ]) {
    const judged = judgedAs(asFound(...sizes), groundPins);
    expect(judged.conflicts.map(({ code }) => code)).not.toContain("ground-before");
    expect(codes(judged)).toContain("grind-crank");
  }
});

test("a step of 0.05 mm is not told from wear", () => {
  const small: Engine = { ...groundPins, offered: { pin: { unit: "mm", sizes: [0.05].map(mm) } } };
  const judged = judgedAs(asFound(57.94, 57.935, 57.94, 57.94), small);
  expect(judged.conflicts.map(({ code }) => code)).not.toContain("ground-before");
});

test("a bore larger where it never wore contradicts itself: its wear waits", () => {
  const judged = judgedAs(
    measured([["bore", "3", "unworn/thrust", "diameter", 86.58], ...bore("3", 86.52, 86.51)]),
    worn,
  );
  expect(judged.conflicts).toMatchObject([
    {
      code: "cannot-be",
      part: "bore",
      label: "3",
      quantity: "wear",
      weight: "conflict",
      text: "bore 3 has worn 0.06 mm less than nothing (top/thrust 86.52 less 86.58, the unworn reading)",
    },
  ]);
  expect(find(judged.derived, "bore", "wear")).toMatchObject([{ waits: true, standing: "waits" }]);
  const near = judgedAs(
    measured([["bore", "3", "unworn/thrust", "diameter", 86.52], ...bore("3", 86.51)]),
    worn,
  );
  expect(near.conflicts).toEqual([]);
});
