// When a low reading is to be read again, and when that would tell nothing. Readings invented.

import { expect, test } from "vitest";
import type { TestAssessment } from "@sealtrend/core";
import { type Row, type Written, assessed, cylinder } from "./records.ts";

const day = (cells: string, more: Partial<Row> = {}): Row => ({ test: "2026-05-02a", cells, ...more });
const inline = { banks: [["1", "2", "3", "4"]], cooling: "liquid" };
const found = (written: Written): TestAssessment =>
  assessed({ ...written, engine: { ...inline, ...written.engine } });
const codes = ({ nextTests }: TestAssessment) => nextTests.map(({ code }) => code);
const leak = (cells: string, supply = "100"): Row => day(cells, { what: "leak-down", regulated_psi: supply });
const heard = (cells: string): Row => day(cells, { what: "heard", unit: "" });

// handbook/diagnosis.md 7, W4: best .045 bits, "no test here would change the decision"
test("what leak-down and ear have confirmed is not read again", () => {
  const known = found({
    tests: [day("150 152 110 149"), leak("93 94 70 93"), heard("crankcase none exhaust crankcase")],
    gauges: "gauge,kind\ntester,leak-down\n",
  });
  expect(known.diagnosis?.enough).toBe(true);
  expect(codes(known)).toEqual([]);
  expect(codes(found({ tests: [day("150 152 110 149")] }))[0]).toBe("repeat");
});

// handbook/diagnosis.md 7, W9: causes 10 .733, 11 .254. One leak-down reading alone has no fellow to be as good as, and air in
// the coolant is never that of a tight cylinder (handbook/trade.md C2)
test("air in the coolant is a leak, and a cylinder read alone is no better than its fellows", () => {
  const written = {
    services: ["2026-05-01,,overheated,,"],
    notes: ["2026-05-02,,coolant loss,some,,", "2026-05-02,,oil use,none,,"],
  };
  const tests = [day("150 151 131 149"), leak("x x 66 x", "80")];
  const wet = found({ ...written, tests: [...tests, heard("x x coolant x")] });
  expect(wet.diagnosis?.causes[0]?.code).toBe("gasket-to-coolant");
  expect(cylinder(wet, "3")).not.toHaveProperty("lowWithoutLeak");
  expect(codes(wet)).not.toContain("repeat");
  expect(codes(wet)).not.toContain("lash");
  expect(cylinder(found({ tests }), "3")).not.toHaveProperty("lowWithoutLeak");
});

test("where the leak-down clears a low cylinder its valve gear is looked at, which is no second reading", () => {
  const tests = [day("1030 1020 1025 810", { unit: "kPa" }), leak("72 72 72 71", "80")];
  expect(cylinder(found({ tests }), "4")).toMatchObject({ lowWithoutLeak: true });
  expect(codes(found({ tests })).filter((code) => code === "repeat")).toHaveLength(1);
  expect(codes(found({ tests })).filter((code) => code === "lash")).toHaveLength(1);
  const ports = found({ tests, engine: { cycle: "two-stroke", porting: "ports" } });
  expect(codes(ports)).not.toContain("lash");
});

// handbook/diagnosis.md 7, W7: dry bores, "run it and test again"; what oil lies in gives no dry reading
test("after oil no cylinder is read dry again; dry bores are run, and tested again", () => {
  const engine = { geometry: { bore: "86mm", stroke: "86mm", compressionRatio: 8.5 } };
  const dry = found({
    engine,
    services: ["2026-05-01,,storage,,,me,14 months"],
    tests: [
      { test: "2024-05-02a", cells: "150 150 150 150" },
      day("122 96 131 101"),
      day("158 140 160 148", { what: "wet" }),
      day("2.7 2.7 2.7 2.7", { what: "oil", unit: "ml" }),
    ],
  });
  expect(dry.diagnosis?.causes[0]?.code).toBe("washed-or-dry-bores");
  expect(dry.nextTests[0]).toMatchObject({ code: "retest-warm", by: "rule" });
  expect(codes(dry)).not.toContain("repeat");
  const oiled = found({ tests: [day("150 152 110 149"), day("160 x 118 x", { what: "wet" })] });
  expect(codes(oiled)).not.toContain("repeat");
  expect(codes(oiled)).toContain("leak-down-and-listen");
});

// handbook/diagnosis.md 7, W1 and W8 (computed there): repeat .871, wet .841, leak-down .746 bits/h; most bits leak-down
test("the quickest and the most telling test are those of all that are asked for", () => {
  for (const tests of [
    [day("150 152 110 149")],
    [day("150 148 152 149"), day("151 66 150 150", { take: "2" }), day("x 140 x x", { take: "3" })],
  ]) {
    const { nextTests } = found({ tests });
    const known = nextTests.filter(({ bits }) => bits !== undefined);
    const most = Math.max(...known.map(({ bits = 0 }) => bits));
    const best = Math.max(...known.map(({ bitsPerHour = 0 }) => bitsPerHour));
    const [telling] = known.filter(({ rank }) => rank === "most-telling" || rank === "both");
    const [quickest] = known.filter(({ rank }) => rank === "quickest" || rank === "both");
    expect(telling?.bits).toBe(most);
    // within a tenth of the best rate the easier one goes first
    expect(quickest?.bitsPerHour).toBeGreaterThanOrEqual(0.9 * best);
    expect(nextTests[0]).toMatchObject({ code: "repeat", bits: expect.any(Number) as number });
  }
});

test("reading a leak-down again has its worth too", () => {
  const { nextTests } = found({ tests: [leak("73 72 60 74", "80")] });
  const again = nextTests.find(({ code }) => code === "repeat");
  expect(again).toMatchObject({ by: "rule", text: expect.stringContaining("read 3 again") as string });
  expect(again?.bits).toBeGreaterThan(0);
});

// handbook/diagnosis.md 1: neighbours come only from banks
test("without the order along the head a gasket between two cannot be found, and that is said", () => {
  const tests = [day("150 100 98 149")];
  const says = (engine: object) =>
    assessed({ tests, engine }).missing.filter((text) => text.includes("banks"));
  expect(says({})).toHaveLength(1);
  expect(says(inline)).toEqual([]);
  expect(says({ sharedGasket: false })).toEqual([]);
  const even = assessed({ tests: [day("150 151 150 149")] });
  expect(even.missing.some((text) => text.includes("banks"))).toBe(false);
});

// 100/150 and 98/150 against 149.5/150 of the two that are even: -33 % and -34 %
test("cylinders that have not moved show no gain because two others fell", () => {
  const tests = [{ test: "2025-05-02a", cells: "150 151 150 149" }, day("150 100 98 149")];
  const moved = found({ tests }).cylinders.map(({ sinceFirst }) => sinceFirst?.change ?? NaN);
  expect(moved[0]).toBeCloseTo(0, 6);
  expect(moved[1]).toBeCloseTo(100 / 151 - 1, 6);
  expect(moved[2]).toBeCloseTo(98 / 150 - 1, 6);
  expect(moved[3]).toBeCloseTo(0, 6);
});
