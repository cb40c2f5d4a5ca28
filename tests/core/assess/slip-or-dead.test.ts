// A reading at a tenth of the others: a slip of the pen or a cylinder that holds next to nothing. Both are told; the causes are
// those of what was read, and what was read twice is no slip. Readings invented.

import { expect, test } from "vitest";
import { type Row, type Written, assessed, cylinder } from "./records.ts";

const row = (cells: string, more: Partial<Row> = {}): Row => ({ test: "2026-05-02a", cells, ...more });
const soundIn = (written: Written): number =>
  assessed(written).diagnosis?.causes.find(({ code }) => code === "no-fault")?.probability ?? 0;
const slips = (written: Written) =>
  assessed(written)
    .trust.reasons.map(({ code }) => code)
    .filter((code) => code === "slip");

test("a tenth of the others is asked about, and its causes are those of a cylinder next to dead", () => {
  const tenth = { tests: [row("150 15 151 149")] };
  expect(slips(tenth)).toEqual(["slip"]);
  // handbook/diagnosis.md 7, W1 (computed there): .035 of a cylinder 27 % low
  expect(soundIn(tenth)).toBeLessThan(0.05);
  // 18 of 150 is no slip: the causes of both are about the same
  expect(assessed(tenth).diagnosis?.causes[0]?.code).toBe(
    assessed({ tests: [row("150 18 151 149")] }).diagnosis?.causes[0]?.code,
  );
});

test("read twice it is no slip; one of two is", () => {
  expect(slips({ tests: [row("150 15 151 149"), row("150 14 150 150", { take: "2" })] })).toEqual([]);
  expect(slips({ tests: [row("150 15 151 149"), row("150 148 150 150", { take: "2" })] })).toEqual(["slip"]);
});

// 510 psi = 3.5 MPa: more than a spark engine makes, and 3.4 times the middle of the two that hold something
test("from what no engine of its kind makes no cause is drawn, and nothing is measured by it", () => {
  const found = assessed({ tests: [row("152 510 149 0")] });
  expect(found.diagnosis?.target).toBe(3);
  expect(found.diagnosis?.causes[0]?.cylinders).toEqual([3]);
  expect(cylinder(found, "1")).toMatchObject({ standing: "even", limitsMissed: [] });
  expect(found.evidence?.cylinders[1]?.dry).toBeUndefined();
});

// 400 psi is no slip of a digit beside 152, but no spark engine's reading either
test("what is only too much for the kind of engine is no evidence", () => {
  const tests = [row("152 400 149 150")];
  expect(assessed({ tests }).evidence?.cylinders[1]?.dry).toBeUndefined();
  expect(assessed({ engine: { ignition: "compression" }, tests }).evidence?.cylinders[1]?.dry).toBeDefined();
});

test("a slip in the test before is no first flag", () => {
  const before = (cells: string) =>
    cylinder(assessed({ tests: [{ test: "2025-05-02a", cells }, row("150 135 151 149")] }), "2");
  expect(before("150 15 151 149")).toMatchObject({ flaggedBefore: false, standing: "suspect" });
  expect(before("150 40 151 149")).toMatchObject({ flaggedBefore: true, standing: "lagging" });
});

test("below what any engine starts with the unit and the gauge are asked about", () => {
  const found = assessed({ tests: [row("15 14 16 15")] });
  expect(found.trust).toMatchObject({
    code: "doubtful",
    reasons: [
      {
        code: "below-engine",
        text: "16 psi of cylinder 3 is the most that was read, and no engine starts with so little: a wrong unit, or a gauge that does not seal?",
      },
    ],
  });
  expect(found.nextTests[0]?.text).toContain("mistyped");
  for (const cells of ["0 0 0 0", "60 62 61 60", "30 0 28 31"])
    expect(assessed({ tests: [row(cells)] }).trust.code).toBe("trusted");
});
