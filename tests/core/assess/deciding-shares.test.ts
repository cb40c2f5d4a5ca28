// Where a need would arise: shares given that it does (handbook/decision.md 3). Readings and chances invented.

import { expect, test } from "vitest";
import { sharesOf } from "../../../packages/core/src/assess/deciding/shares.ts";
import { decided } from "./deciding-records.ts";

const low = decided({
  tests: [
    { test: "2026-05-01a", cells: "150 150 100 150", gauge: "red", crank_rpm: "250", throttle: "open" },
    { test: "2026-05-02a", cells: "150 150 101 150", gauge: "red", crank_rpm: "250", throttle: "open" },
  ],
}).test;

/** The same test with other chances of the groups of causes. */
const given = (groups: Readonly<Record<"top" | "bottom" | "test" | "nothing" | "unlisted", number>>) => {
  if (low?.diagnosis === undefined) throw new Error("the readings have no diagnosis");
  return sharesOf({ ...low, diagnosis: { ...low.diagnosis, groups } });
};

test("what the likely causes leave to no fault is taken out of the shares", () => {
  // .3/(1 - .4) and .15/(1 - .4)
  const { shares, from } = given({ top: 0.3, bottom: 0.15, test: 0.1, nothing: 0.4, unlisted: 0.05 });
  expect(from).toBe("diagnosis");
  const { top, rings, bottom } = typeof shares === "string" ? { top: 0, rings: 0, bottom: 1 } : shares;
  expect(top).toBeCloseTo(0.5, 12);
  expect(rings).toBeCloseTo(0.25, 12);
  expect(bottom).toBe(0);
});

test("where no fault leads, the shares are those usual for one low cylinder", () => {
  const found = given({ top: 0.2, bottom: 0.15, test: 0.1, nothing: 0.5, unlisted: 0.05 });
  expect(found).toEqual({ shares: "one-low", from: "usual-one-low" });
});

test("without a test the shares are those of a healthy engine", () => {
  expect(sharesOf(undefined)).toEqual({ shares: "healthy", from: "usual-healthy" });
});
