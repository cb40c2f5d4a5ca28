import { describe, expect, test } from "vitest";
import { standing, worse, type CylinderVerdict } from "../../../packages/core/src/spread/index.ts";

const verdict = (flagged: "even" | "at-5" | "at-1"): CylinderVerdict => ({
  kind: "read",
  flagged: flagged !== "even",
  flaggedAt1: flagged === "at-1",
});
const once = { repeats: 1, flaggedBefore: false, belowLimit: false };

test("not flagged is even, whatever the test before said", () => {
  expect(standing({ ...once, verdict: verdict("even") })).toBe("even");
  expect(standing({ ...once, verdict: verdict("even"), flaggedBefore: true })).toBe("even");
});

test("one flag is a suspicion, to be repeated", () => {
  expect(standing({ ...once, verdict: verdict("at-5") })).toBe("suspect");
  expect(standing({ ...once, verdict: verdict("at-1") })).toBe("suspect");
  expect(standing({ ...once, verdict: verdict("at-5"), repeats: 3 })).toBe("suspect");
});

describe("lagging takes a confirmation", () => {
  test("flagged at 1 % with two repeats", () => {
    expect(standing({ ...once, verdict: verdict("at-1"), repeats: 2 })).toBe("lagging");
  });
  test("flagged in two tests running", () => {
    expect(standing({ ...once, verdict: verdict("at-5"), flaggedBefore: true })).toBe("lagging");
  });
  test("below a published limit", () => {
    expect(standing({ ...once, verdict: verdict("even"), belowLimit: true })).toBe("lagging");
  });
  test("no compression at all", () => {
    expect(standing({ ...once, verdict: { kind: "no-compression", flagged: true, flaggedAt1: true } })).toBe(
      "lagging",
    );
  });
});

test("a cylinder that was not read has no standing", () => {
  expect(standing({ ...once, verdict: { kind: "not-read" } })).toBeUndefined();
});

test("of dry and leak-down standing the worse counts", () => {
  expect(worse(["even", "suspect"])).toBe("suspect");
  expect(worse(["lagging", undefined])).toBe("lagging");
  expect(worse([undefined, undefined])).toBeUndefined();
});
