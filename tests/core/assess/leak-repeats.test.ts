// Takes of one leak-down reading held against each other. Scatter of one take: 1 psi at 80 psi, same operator, same hour
// (handbook/leakdown.md E, judgement there), so two takes lie apart from 1.96 sqrt(2) psi = 2.77 psi on. Readings invented.

import { expect, test } from "vitest";
import { type Row, assessed, cylinder } from "./records.ts";

const takes = (first: string, second: string, more: Partial<Row> = {}) => {
  const row = (cells: string, take: string): Row => ({
    test: "2026-05-02a",
    what: "leak-down",
    cells,
    take,
    regulated_psi: "80",
    altitude_m: "0",
    engine_temp: "warm",
    ...more,
  });
  return assessed({ tests: [row(first, "1"), row(second, "2")] });
};
const codes = ({ trust }: ReturnType<typeof takes>): readonly string[] =>
  trust.reasons.map(({ code }) => code);

test("takes of 74/80 and 40/80 contradict each other: doubtful, both named, and no cylinder lags", () => {
  const found = takes("74 74 74 74", "74 74 74 40");
  expect(found.trust.code).toBe("doubtful");
  expect(found.trust.reasons[0]?.text).toContain("cylinder 4 lost 7.5 and 50 %");
  expect(cylinder(found, "4")).toMatchObject({ standing: "suspect", leakDown: { repeats: "contradict" } });
  expect(found.nextTests.some(({ text }) => text.startsWith("read 4 again, twice"))).toBe(true);
});

test("a mean that looks even does not hide a take that is not: 64/80 and 75/80", () => {
  const found = takes("70 72 71 64", "70 72 71 75");
  expect(codes(found)).toEqual(["leak-repeats-apart"]);
  expect(cylinder(found, "4").standing).toBe("suspect");
});

test("2.5 psi are no contradiction, 3 psi are, at any size of the leak", () => {
  expect(codes(takes("72 72 72 72", "72 72 72 74.5"))).toEqual([]);
  expect(codes(takes("72 72 72 72", "72 72 72 75"))).toEqual(["leak-repeats-apart"]);
  expect(codes(takes("72 72 72 40", "72 72 72 42.5"))).toEqual([]);
  expect(codes(takes("72 72 72 40", "72 72 72 43"))).toEqual(["leak-repeats-apart"]);
});

test("takes apart that each lag by themselves still lag", () => {
  const found = takes("74 74 74 40", "74 74 74 46");
  expect(codes(found)).toEqual(["leak-repeats-apart"]);
  expect(cylinder(found, "4")).toMatchObject({ standing: "lagging", leakDown: { repeats: "each-low" } });
});

test("a dial in percent is held to the same: 8 and 50 % lost", () => {
  const found = takes("8 8 8 8", "8 8 8 50", { unit: "%", regulated_psi: "" });
  expect(codes(found)).toEqual(["leak-repeats-apart"]);
  expect(cylinder(found, "4").leakDown?.takesLost).toEqual([0.08, 0.5]);
});

test("a cylinder that holds nothing, and one that holds next to nothing, are one finding", () => {
  const once = (cells: string) =>
    assessed({
      tests: [{ test: "2026-05-02a", what: "leak-down", cells, regulated_psi: "80", altitude_m: "0" }],
    });
  for (const cells of ["74 74 74 0", "74 74 74 1"]) {
    const found = once(cells);
    expect([cells, cylinder(found, "4").standing]).toEqual([cells, "lagging"]);
    expect(found.nextTests.map(({ text }) => text).join()).not.toContain("before you believe it");
  }
});
