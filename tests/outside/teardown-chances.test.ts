// Chances, verdicts and uncertainties against tests/outside/teardown_cases.py: scipy's distributions, integrals and root
// finder. Computed, not published; the cases that begin with 3.4 or Q are those of the handbook, computed there as well.

import { length } from "@sealtrend/core";
import { expect, test } from "vitest";
import {
  allConform,
  clearanceUncertainty,
  differenceUncertainty,
  feelerUncertainty,
  insideByFeeler,
  instrumentFor,
  isNeverInside,
  probabilityOf,
  readingUncertainty,
  settlementOf,
  verdictOf,
} from "../../packages/core/src/teardown/conformity/index.ts";
import { inMm, limits, mm, near, teardownCases } from "./teardown-cases.ts";

const { judgements, feelers, parts, instruments } = teardownCases;
const boreTaper = { part: "bore", quantity: "taper", kind: "difference", unit: "mm" } as const;

test.each(judgements)("$id: chance, verdict, what can never be shown", ({ given, expected }) => {
  const pair = limits(given);
  const figure = { value: mm(given.value), uncertainty: mm(given.u) };
  near(probabilityOf(figure, pair), expected.p, 1e-8);
  expect(verdictOf(probabilityOf(figure, pair))).toBe(expected.verdict);
  expect(isNeverInside(figure.uncertainty, pair)).toBe(expected.neverInside);
  if (expected.needed !== null)
    near(inMm(settlementOf(figure, pair, boreTaper).needed), expected.needed, 1e-6 * expected.needed);
});

test.each(feelers)("$id: a gap between two leaves", ({ given, expected }) => {
  const leaves = { low: mm(given.goes), high: mm(given.stops) };
  const found = insideByFeeler(leaves, limits(given), mm(given.blur));
  near(found, expected.p, 1e-7);
  expect(verdictOf(found)).toBe(expected.verdict);
  if (given.blur === 0.006) near(inMm(feelerUncertainty(leaves)), expected.u);
});

test.each(parts)("$id: many readings of one part", ({ given, expected }) => {
  const found = allConform(given.chances);
  near(found.atLeast, expected.atLeast, 1e-12);
  near(found.atMost, expected.atMost, 1e-12);
  expect(found.verdict).toBe(expected.verdict);
  expect(given.chances[found.decidedBy]).toBe(expected.atMost);
});

test.each(instruments)("$id: what a common instrument can do", ({ given, expected }) => {
  const used = instrumentFor({
    part: "bore",
    quantity: "diameter",
    instrument: given.instrument,
    resolution: length(given.resolution_um * 1e-6),
    unit: "mm",
    size: mm(75),
  });
  near(used.common * 1e6, expected.common_um, 1e-9);
  near(used.read * 1e6, expected.read_um, 1e-9);
  near(readingUncertainty({ instrument: used, readings: 1 }) * 1e6, expected.u_um, 1e-9);
});

test("what readings share cancels in the handbook's taper and in its oil clearance", () => {
  const of = (id: string): number => judgements.find((one) => one.id === id)?.given.u ?? NaN;
  const used = (instrument: string, resolution: number) => ({
    readings: 1,
    instrument: instrumentFor({
      part: "bore",
      quantity: "diameter",
      instrument,
      resolution: mm(resolution),
      unit: "mm",
    }),
  });
  const gauge = used("bore-gauge", 0.01);
  near(inMm(differenceUncertainty(gauge, gauge)), of("3.4-1"), 1e-9);
  const clearance = clearanceUncertainty({
    hole: used("bore-gauge", 0.002),
    shaft: used("micrometer", 0.001),
  });
  near(inMm(clearance), of("3.4-9"), 1e-9);
});
