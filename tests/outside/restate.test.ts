// Leak-down readings on another tester against 500 invented cases that scipy's root finder solved:
// tests/outside/restate_cases.py. Computed, not published; the two programs share the equations and nothing else.

import { expect, test } from "vitest";
import { disagreements, outsideCases } from "./cases.ts";

const cases = await outsideCases("restate-cases", "restate");

test("every case is answered, refused or not", () => {
  expect(cases).toHaveLength(500);
  expect(cases.filter(({ exit }) => exit !== 0).map(({ line }) => line)).toEqual([]);
});

test.each(["alpha", "cd", "equalHole_mm", "area_mm2", "flow_Lmin", "read_kPa", "lost"])(
  "%s agrees with an outside root finder to a millionth",
  (column) => {
    expect(disagreements(cases, column, 1e-6)).toEqual([]);
  },
);

test.each(["lowLost", "highLost"])(
  "%s, the leak as an orifice or as a gap, agrees to a millionth",
  (column) => {
    expect(disagreements(cases, column, 1e-6)).toEqual([]);
  },
);

test("a choked restrictor and a choked leak are told", () => {
  const told = cases.map(({ document }) => [document.chokedRestrictor, document.chokedLeak]);
  const outside = cases.map(({ expected }) => [expected.chokedRestrictor, expected.chokedLeak]);
  expect(told).toEqual(outside.map((pair) => pair.map((word) => word === "yes")));
});

test("what cannot be restated is refused for the reason that the outside program finds", () => {
  const codeOf = (refused: unknown): string => (refused as { code: string } | undefined)?.code ?? "";
  const apart = cases.flatMap(({ line, document, expected }) =>
    codeOf(document.refused) === expected.refused ? [] : [`${line}: ${codeOf(document.refused)}`],
  );
  expect(apart).toEqual([]);
});
