// Readings that no engine gives. The thresholds are judgement (slips.ts, trust-implausible.ts); the readings are invented.

import { expect, test } from "vitest";
import { type Row, assessed, cylinder, standings } from "./records.ts";

const trustOf = (cells: string, engine: object = {}, more: Partial<Row> = {}) =>
  assessed({
    cylinders: cells.split(" ").length,
    engine,
    tests: [{ test: "2026-05-02a", cells, ...more }],
  }).trust;
const reason = (...given: Parameters<typeof trustOf>) => trustOf(...given).reasons[0]?.text;

test("a reading ten times the others is asked about, and stands in no comparison", () => {
  const result = assessed({ tests: [{ test: "2026-05-02a", cells: "131 1310 132 130" }] });
  expect(result.trust).toMatchObject({
    code: "doubtful",
    reasons: [{ code: "slip", text: "1310 psi of cylinder 2 is ten times the others: a slip of a digit?" }],
  });
  expect(standings(result)).toEqual(["even", undefined, "even", "even"]);
  expect(cylinder(result, "2").pressures.dry?.slip?.times).toBeCloseTo(10, 9);
  expect(result.nextTests[0]?.text).toContain("mistyped");
});

test("about a tenth of the others is asked about too, and goes on being compared", () => {
  const result = assessed({ tests: [{ test: "2026-05-02a", cells: "131 13.1 132 130" }] });
  expect(result.trust.reasons).toMatchObject([
    { code: "slip", text: "13.1 psi of cylinder 2 is a tenth of the others: a slip of a digit?" },
  ]);
  expect(cylinder(result, "2").standing).toBe("lagging");
});

// 131 x .085 = 11.1, x .115 = 15.1
test("no compression, a dead cylinder and a strong one beside dead ones are no slips", () => {
  for (const cells of [
    "131 0 132 130",
    "131 30 132 130",
    "131 10 132 130",
    "131 17 132 130",
    "120 15",
    "120 15 12",
  ])
    expect(trustOf(cells).code).toBe("trusted");
});

test("a strong cylinder beside weak ones is no slip below four times as much", () => {
  expect(trustOf("150 60 58 61").code).toBe("trusted");
});

test("of two cylinders the high one is named", () => {
  expect(reason("131 1310")).toBe("1310 psi of cylinder 2 is ten times the other: a slip of a digit?");
});

test("a pressure that no such engine makes is asked about: 2.5 MPa for spark, 7 MPa for a diesel", () => {
  const more = { unit: "bar" };
  expect(reason("131 131 132 130", {}, more)).toBe(
    "132 bar of cylinder 3 is more than a spark engine makes: a wrong unit, or a slip of a digit?",
  );
  expect(trustOf("24 24 25 24", {}, more).code).toBe("trusted");
  expect(trustOf("24 24 25.1 24", {}, more).code).toBe("doubtful");
  expect(trustOf("30 31 32 30", { ignition: "compression" }, more).code).toBe("trusted");
  expect(reason("71 71 72 71", { ignition: "compression" }, more)).toContain("more than a diesel makes");
  expect(trustOf("30 31 32 30", { ignition: "unknown" }, more).code).toBe("trusted");
  expect(reason("71 71 72 71", { ignition: "unknown" }, more)).toContain("more than any engine makes");
});
