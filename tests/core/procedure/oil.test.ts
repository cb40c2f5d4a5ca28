import { expect, test } from "vitest";

import { type Procedure, procedureFor } from "../../../packages/core/src/procedure/index.ts";
import { type Volume, length, volume } from "../../../packages/core/src/quantity/index.ts";
import type { Engine } from "../../../packages/core/src/record/index.ts";

const spark: Engine = {
  id: "mower",
  name: "Mower (invented)",
  use: "other",
  remote: false,
  cylinders: ["1", "2"],
  banks: [["1", "2"]],
  sharedGasket: false,
  firingOrder: ["1", "2"],
  cycle: "four-stroke",
  porting: "valves",
  ignition: "spark",
  cooling: "air",
  compressionRelease: "none",
  geometry: {},
  crankingCurves: [],
  correction: {},
  compressionLimits: {},
  leakDownLimits: {},
  clearances: [],
  offered: {},
  layout: {},
};
const diesel: Engine = { ...spark, ignition: "compression" };
const ml = (millilitres: number): Volume => volume(millilitres * 1e-6);
const text = ({ before, steps, cautions, voids }: Procedure): string =>
  [before, steps, cautions, voids].flat().join("\n");

const refusals: readonly (readonly [string, Engine])[] = [
  ["a diesel", diesel],
  [
    "a diesel whose maker forbids it",
    { ...diesel, wetTest: { allowed: false, source: "workshop manual p. 31" } },
  ],
  ["a diesel whose maker allows it, the amount not recorded", { ...diesel, wetTest: { allowed: true } }],
  ["an engine that may be a diesel", { ...spark, ignition: "unknown" }],
  ["a spark engine whose maker forbids it", { ...spark, wetTest: { allowed: false } }],
];

// GM Duramax manuals: no oil, it may cause extensive engine damage (trade.md A8).
test.each(refusals)("The wet test is refused for %s, with the reason and another way", (_name, engine) => {
  const procedure = procedureFor("wet", engine);
  expect(procedure.refused?.length).toBeGreaterThan(40);
  expect(procedure.steps.join("\n")).toContain("sealtrend how leak-down mower");
  expect(text(procedure)).not.toMatch(/\d+ ml|syringe/);
});

test("No procedure proposes oil in the cylinders of a diesel, whatever the test", () => {
  for (const kind of ["dry", "first-stroke", "leak-down", "teardown", "wet"] as const)
    expect(text(procedureFor(kind, diesel)), kind).not.toMatch(/\d+ ml|syringe|--oil|--wet/);
});

test("The reason of a refusal names the maker's source where one is recorded", () => {
  const engine: Engine = { ...diesel, wetTest: { allowed: false, source: "workshop manual p. 31" } };
  expect(procedureFor("wet", engine).refused).toContain("workshop manual p. 31");
});

test("A diesel whose maker allows oil gets the maker's amount", () => {
  const procedure = procedureFor("wet", { ...diesel, wetTest: { allowed: true, oil: ml(2) } });
  expect(procedure.refused).toBeUndefined();
  expect(text(procedure)).toContain("2 ml of engine oil");
  expect(text(procedure)).toContain("diesel gauge");
});

// 5 ml: Ford Probe 1997, Nissan, Yamaha XVS1100; control cylinder: trade.md A5.
test("Without a known chamber a spark engine gets 5 ml, in the low cylinder and in a control", () => {
  const steps = procedureFor("wet", spark).steps.join("\n");
  expect(steps).toContain("5 ml into the low cylinder");
  expect(steps).toContain("control");
});

// By hand: 4 % of 25 ml is 1 ml; 4 % of 118 ml is 4.7, so 5 ml; 4 % of 400 ml is 16, held at 10 ml.
test.each([
  [25, "1 ml"],
  [118, "5 ml"],
  [400, "10 ml"],
])("A chamber of %i ml gets %s of oil", (chamber, dose) => {
  expect(procedureFor("wet", spark, { chamber: ml(chamber) }).steps.join("\n")).toContain(
    `${dose} into the low cylinder`,
  );
});

// By hand: 5 of 15 ml is 33 %, above a quarter; 5 of 26.3 ml (500 ml, 20:1) is 19 %, below it.
test.each([
  [5, 15, "33 % of the chamber (15 ml)", true],
  [5, 26.3, "19 % of the chamber (26 ml)", false],
] as const)(
  "The maker's %d ml in a chamber of %d ml: its share is said, and much from a quarter on",
  (...row) => {
    const [oil, chamber, said, much] = row;
    const shown = text(
      procedureFor("wet", { ...spark, wetTest: { allowed: true, oil: ml(oil) } }, { chamber: ml(chamber) }),
    );
    expect(shown).toContain(`That is ${said}: a sound one rises too.`);
    expect(shown.includes("is much: turn it by hand first")).toBe(much);
  },
);

// trade.md A5 (derived): 5 ml in the 62.5 ml of 500 ml at 9:1 raise a sound cylinder by 10 %
const known: Engine = {
  ...spark,
  geometry: { bore: length(0.086025), stroke: length(0.086025), compressionRatio: 9 },
};
test("Bore, stroke and compression ratio give the chamber, and what the oil's own room adds to a reading", () => {
  const maker = { ...known, wetTest: { allowed: true, oil: ml(5) } };
  expect(text(procedureFor("wet", maker))).toContain(
    "That is 8 % of the chamber (62 ml): a sound one rises by up to 10 %.",
  );
  expect(text(procedureFor("wet", known))).toContain("2 ml into the low cylinder");
  expect(text(procedureFor("wet", { ...maker, cylinders: ["1"] }))).toContain(
    "A rise of 10 % or more beyond the oil's own 10 % points at the rings.",
  );
});

test("Oil that would fill more than half of the chamber is refused, even a maker's amount", () => {
  const engine: Engine = { ...diesel, wetTest: { allowed: true, oil: ml(15) } };
  expect(procedureFor("wet", engine, { chamber: ml(26.3) }).refused).toContain("15 ml");
});
