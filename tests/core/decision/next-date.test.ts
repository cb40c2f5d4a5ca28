// The date of the next test: risk, interval, hours (handbook/decision.md 6; the sizes are judgement, common practice or as
// said beside them).

import { decide, type DecisionInput, type WearLine } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { aircraft, fallingOpen, healthyOpen, noPrices, rows } from "./examples.ts";

const quiet: DecisionInput = {
  rows: rows("A1"),
  trust: "trusted",
  wear: { kind: "unknown" },
  shares: "healthy",
  done: [],
  ownership: { kind: "years", years: 5 },
  use: "ordinary",
};
/** Without scatter to speak of, falling evenly to a limit. */
const falling = (limit: number): DecisionInput["wear"] => ({
  kind: "lines",
  lines: [
    { label: "2", x: [0, 1, 2, 3], y: [0, -0.03, -0.06, -0.09], variance: 1e-8, df: 30, limit, believed: 4 },
  ],
});

test("a healthy engine is tested each season or year", () => {
  expect(decide(quiet).next).toMatchObject({ years: 1, cap: 1, why: "interval", risk: 0.1 });
});

test("with a sign of wear within half a year or 50 hours", () => {
  const signs = { ...quiet, rows: rows("A2") };
  expect(decide(signs).next).toMatchObject({ years: 0.5, hours: 50 });
  // 50 h at 200 h a year
  expect(decide({ ...signs, hoursPerYear: 200 }).next.years).toBe(0.25);
});

test("an aircraft at the annual and each 100 hours at most (14 CFR 43 App. D)", () => {
  const { next } = decide({ ...quiet, use: "safety", hoursPerYear: 400 });
  expect(next).toMatchObject({ hours: 100, years: 0.25, risk: 0.02 });
});

test("a shorter interval of the maker wins", () => {
  expect(decide({ ...quiet, interval: 0.25 }).next.cap).toBe(0.25);
  expect(decide({ ...quiet, interval: 3 }).next.cap).toBe(1);
});

test("a line that falls fast to its limit brings the test forward", () => {
  // .03 a year from -.09: -.1125 is reached in .75 years, nearly for certain
  const found = decide({ ...quiet, wear: falling(-0.1125) });
  expect(found.next.riskYears).toBeCloseTo(0.75, 1);
  expect(found.next.why).toBe("risk");
  expect(found).toMatchObject({ verdict: "watch-it" });
  expect(found.reasons).toContain("limit-in-sight");
});

test("a limit nearer than a month, or ten hours, is no watch: test before hard use", () => {
  const found = decide({ ...quiet, wear: falling(-0.0915) });
  expect(found).toMatchObject({ verdict: "test-again", reasons: ["limit-too-near"] });
  expect(found.next.step).toBe("retest-before-hard-use");
  const busy = decide({ ...quiet, wear: falling(-0.0945), hoursPerYear: 20 });
  expect(busy.reasons).toEqual(["limit-too-near"]);
  expect(decide({ ...quiet, wear: falling(-0.0945), hoursPerYear: 200 }).verdict).toBe("watch-it");
});

test("open it cannot be tested: it is watched, and the near limit comes first", () => {
  const near = { ...quiet, wear: falling(-0.0915) };
  for (const done of [["headOff"], ["headOff", "bottomOpen", "engineOut"]] as const) {
    const found = decide({ ...near, done });
    expect(found.verdict).toBe("watch-it");
    expect(found.reasons[0]).toBe("limit-too-near");
    expect(found.next.step).toBe("retest-before-hard-use");
  }
  // a leak-down is possible with the pan off, and on the stand (handbook/decision.md 3, access states)
  expect(decide({ ...near, done: ["bottomOpen"] }).verdict).toBe("test-again");
  expect(decide({ ...near, done: ["engineOut"] }).verdict).toBe("test-again");
});

test("a limit passed already is passed now", () => {
  expect(decide({ ...quiet, wear: falling(-0.05) }).next.riskYears).toBe(0);
});

test("below four tests the slope gives no date", () => {
  const three: WearLine = {
    label: "1",
    x: [0, 1, 2],
    y: [0, -0.1, -0.2],
    variance: 1e-6,
    df: 6,
    limit: -0.25,
  };
  expect(decide({ ...quiet, wear: { kind: "lines", lines: [three] } }).next.riskYears).toBeUndefined();
});

test("one test alone tells its level and believes nothing of its slope but the spread of slopes", () => {
  const one: WearLine = { label: "1", x: [0], y: [0], variance: 1e-4, df: 30, limit: 0 };
  const found = decide({ ...quiet, wear: { kind: "lines", lines: [one] } });
  // at its limit: below it with 1 chance in 2, whatever the years
  expect(found.chance?.probability).toBeCloseTo(0.5, 12);
});

test("what the next test can tell is the fall against the noise of two tests", () => {
  // sqrt(2 x .001)/.00646218 = 6.92 years, beyond the cap
  expect(decide(healthyOpen).next.tellsAfter).toBeCloseTo(Math.sqrt(0.002) / 0.00646218, 3);
  expect(decide(healthyOpen).next.sharpens).toBe("hardly");
  expect(decide({ ...quiet, wear: falling(-0.3) }).next.sharpens).toBe("yes");
});

test("a row that speaks for wear shortens the interval and never turns watching into leaving", () => {
  // X = 1.62 years is below twice the usual year, not below twice the half year of a score of 1
  const ordinary: DecisionInput = {
    ...aircraft,
    use: "safety",
    prices: { jobs: {}, work: { topEnd: 4, reRing: 6, rebuild: 26 } },
    rows: rows("C3"),
    interval: 1,
  };
  const watched = decide({ ...ordinary, rows: rows("F4") });
  expect(watched.next).toMatchObject({ cap: 1 });
  expect(watched.reasons).toContain("limit-in-sight");
  const shortened = decide({ ...ordinary, rows: rows("F4", "H1") });
  expect(shortened.next).toMatchObject({ cap: 0.5, usualCap: 1 });
  expect(shortened.reasons).toContain("limit-in-sight");
});

test("the examples' dates do not hang on prices", () => {
  const { prices: _, ...without } = fallingOpen;
  expect(decide(without).next.riskYears).toBe(decide(fallingOpen).next.riskYears);
  expect(decide(noPrices).next.years).toBe(1);
});
