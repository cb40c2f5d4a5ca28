// The cycle model against 200 invented engines that scipy's adaptive integrator solved: tests/outside/expect_cases.py.
// Computed, not published; the two programs share the equations and nothing else.

import { expect, test } from "vitest";
import { type OutsideCase, disagreements, outsideCases } from "./cases.ts";

const cases = await outsideCases("expect-cases", "expect");

const model = (name: string) => (document: OutsideCase["document"]) =>
  (document.model as Record<string, unknown>)[name];

test("every engine of the outside program is answered", () => {
  expect(cases).toHaveLength(200);
  expect(cases.filter(({ exit }) => exit !== 0).map(({ line }) => line)).toEqual([]);
});

test("peak pressure and the gas left agree with an outside integrator within 0.01 and 0.05 %", () => {
  expect(disagreements(cases, "peak_kPaAbs", 1e-4, model("peak_kPaAbs"))).toEqual([]);
  expect(disagreements(cases, "massLeft", 5e-4, model("massLeft"))).toEqual([]);
});

test("the peak stands where the outside integrator finds it, within a fiftieth of a degree", () => {
  const far = cases.filter(
    ({ document, expected }) =>
      !(Math.abs(Number(model("peakAngle_deg")(document)) - Number(expected.peakAngle_deg)) < 0.02),
  );
  expect(far.map(({ line }) => line)).toEqual([]);
});

test("the gauge shows the peak less the air of the place; volumes follow from bore, stroke, rod and intake closing", () => {
  expect(disagreements(cases, "gauge_kPa", 1e-4, ({ expected_kPa }) => expected_kPa)).toEqual([]);
  expect(disagreements(cases, "clearance_cm3", 1e-6)).toEqual([]);
  expect(disagreements(cases, "sweptRatio", 1e-6, ({ trappedRatio }) => trappedRatio)).toEqual([]);
});

const bands = await outsideCases("expect-bands", "expect");

test("with part of an engine known, the reading to expect and its band agree with the outside program within 0.1 %", () => {
  expect(bands).toHaveLength(60);
  for (const column of ["expected_kPa", "low_kPa", "high_kPa"])
    expect(disagreements(bands, column, 0.001)).toEqual([]);
});
