// What is wrong with the readings beside their trust: the guards G3, G4, G5 and G7 of handbook/decision.md 2. Readings
// invented.

import { expect, test } from "vitest";
import { decided, inputOf } from "./deciding-records.ts";
import type { Row } from "./records.ts";

const warm = { gauge: "red", crank_rpm: "250", throttle: "open", engine_temp: "warm" };
const dry = (date: string, cells: string, more: Partial<Row> = {}): Row => ({
  test: `${date}a`,
  ...warm,
  ...more,
  cells,
});
const leak = (take: string): Row => ({
  test: "2026-05-01a",
  what: "leak-down",
  take,
  cells: "76 76 40 76",
  gauge: "tester",
  regulated_psi: "80",
});
const sound = ["2022-05-01", "2023-05-01", "2024-05-01", "2025-05-01"].map((date) =>
  dry(date, "150 150 150 150"),
);

test("one odd test asks for a repeat", () => {
  const { decision, input } = decided({ tests: [...sound, dry("2026-05-01", "150 150 135 150")] });
  expect(input.doubts).toEqual(["one-odd-test"]);
  expect(decision).toMatchObject({ verdict: "test-again", next: { step: "repeat-this-test" } });
});

test("two tests that contradict each other, with no work in between, ask for a third", () => {
  const tests = [dry("2026-05-01", "150 150 100 150"), dry("2026-05-03", "150 150 150 150")];
  const { decision } = decided({ tests });
  expect(decision).toMatchObject({ verdict: "test-again", reasons: ["one-odd-test"] });
  expect(decision.chance).toBeUndefined();
  const worked = decided({ tests, services: ["2026-05-02,,valve job,3"] });
  expect(worked.input.doubts).toEqual([]);
});

test("low after flooding: run it warm and test again, and its cranking rows stand aside", () => {
  const tests = [...sound, dry("2026-05-01", "150 150 100 150")];
  const { input, evidence, decision } = decided({ tests, services: ["2026-04-20,,flooded"] });
  expect(input.doubts).toContain("not-itself");
  expect(evidence.filter(({ line }) => line === "cranking").every(({ use }) => use === "set-aside")).toBe(
    true,
  );
  expect(decision.verdict).toBe("test-again");
  const retested = [...tests, dry("2026-05-05", "150 150 100 150")];
  expect(inputOf({ tests: retested, services: ["2026-04-20,,flooded"] }).doubts).toEqual([]);
});

test("low everywhere: gauge, throttle and speed first, unless they were proved", () => {
  const tests = [...sound, dry("2026-05-01", "118 118 118 118")];
  expect(inputOf({ tests }).doubts).toContain("low-everywhere");
  expect(decided({ tests }).decision.next.step).toBe("prove-gauge-throttle-battery");
  const notes = ["2026-05-02,,gauge proved,yes,,"];
  expect(inputOf({ tests, notes }).doubts).not.toContain("low-everywhere");
});

test("a leak-down that leaks under level cranking readings is told, not averaged", () => {
  const tests: readonly Row[] = [
    ...sound,
    dry("2026-05-01", "150 150 150 150"),
    leak("1"),
    leak("2"),
    { test: "2026-05-01a", what: "heard", unit: "", cells: "none none crankcase none" },
  ];
  const { conflicts, decision } = decided({ tests });
  expect(conflicts.map(({ code }) => code)).toEqual(["leak-down-leaks"]);
  expect(decision.next.step).toBe("look-inside-and-retest");
});

test("a void test is made again, whatever else is known", () => {
  const { decision } = decided({ tests: [dry("2026-05-01", "90 90 90 90", { throttle: "closed" })] });
  expect(decision).toMatchObject({ verdict: "test-again", reasons: ["test-void"] });
});

test("a step in one cylinder cannot be drawn on", () => {
  const tests = [...sound, dry("2026-05-01", "150 150 100 150"), dry("2026-05-10", "150 150 100 150")];
  const { chanceUnknown, input } = decided({ tests });
  expect(input.wear).toEqual({ kind: "unknown" });
  expect(chanceUnknown).toBe("cylinder 3 moved in one step, and a step cannot be drawn on");
});

test("leak-down readings alone foretell nothing", () => {
  const tests = sound.map(({ test: id }): Row => ({
    test: id,
    what: "leak-down",
    unit: "%",
    cells: "5 5 6 5",
  }));
  expect(decided({ tests }).chanceUnknown).toMatch(/^leak-down readings scatter too much/);
});
