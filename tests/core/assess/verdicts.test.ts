// When a cylinder may be called lagging, and when not. Readings invented; words: statistics.md L.8; two repeats lie more than
// 1.96 sqrt(2) 1.5 % = 4.2 % apart once in 20 times: statistics.md F.

import { assessHistory } from "@sealtrend/core";
import { expect, test } from "vitest";
import { type Row, type Written, assessed, cylinder, recordOf } from "./records.ts";

const day = (cells: string, more: Partial<Row> = {}): Row => ({
  test: "2026-05-02a",
  cells,
  unit: "kPa",
  ...more,
});
const twice = (first: string, second: string, engine: object = {}) =>
  cylinder(
    assessed({
      engine,
      tests: [day(`${first} 1190 1245 1230`, { take: "1" }), day(`${second} 1190 1245 1230`, { take: "2" })],
    }),
    "1",
  );

test("two readings that contradict each other are no agreement: suspect, not lagging", () => {
  expect(twice("1250", "700")).toMatchObject({ standing: "suspect", flagged: true, repeats: "contradict" });
});

test("readings that lie apart confirm each other where each of them is low by itself", () => {
  expect(twice("950", "800")).toMatchObject({ standing: "lagging", repeats: "each-low" });
});

test("readings within the limit of repeatability agree", () => {
  expect(twice("940", "935")).toMatchObject({ standing: "lagging", repeats: "agree" });
  expect(cylinder(assessed({ tests: [day("940 1190 1245 1230")] }), "1")).not.toHaveProperty("repeats");
});

test("a mean below a limit is no low reading where one of the readings was above it, and is one where none was", () => {
  const limits = (minimum: string) => ({ limits: { compression: { minimum } } });
  expect(twice("1250", "700", limits("1000kPa"))).toMatchObject({ standing: "suspect", belowLimit: true });
  expect(twice("1150", "700", limits("1180kPa")).standing).toBe("lagging");
});

test("a contradiction is no second flag after an earlier test either", () => {
  const tests = [
    day("935 1190 1245 1230", { test: "2025-05-02a" }),
    day("1250 1190 1245 1230", { take: "1" }),
    day("700 1190 1245 1230", { take: "2" }),
  ];
  expect(cylinder(assessed({ tests }), "1")).toMatchObject({ flaggedBefore: true, standing: "suspect" });
});

// The contract calls every reading below a published limit lagging; where the limit lies within two standard uncertainties
// of it, the rule says near (JCGM 100, coverage of about 19 in 20) and so must the cylinder.
test("below a limit by less than its doubt, a reading is marked as at the limit", () => {
  const low = assessed({
    engine: { limits: { compression: { minimum: "1200kPa" } } },
    tests: [day("1190 1185 1195 1180", { altitude_m: "0" })],
  });
  expect(low.rules.find(({ id }) => id === "maker-minimum")?.verdict).toBe("near");
  for (const one of low.cylinders)
    expect(one).toMatchObject({ standing: "lagging", atLimit: true, flagged: false });
  expect(low.nextTests[0]).toMatchObject({ code: "repeat" });
});

test("far below a limit nothing is at it", () => {
  const low = assessed({
    engine: { limits: { compression: { minimum: "1200kPa" } } },
    tests: [day("800 805 790 795", { altitude_m: "0" })],
  });
  expect(low.cylinders.map(({ atLimit }) => atLimit)).toEqual([undefined, undefined, undefined, undefined]);
});

test("a leak-down past the maker's limit by less than the dials tell is at the limit", () => {
  const leak = (cells: string) =>
    cylinder(
      assessed({
        engine: { limits: { leakDown: { lost: 0.25 } } },
        tests: [day(cells, { what: "leak-down", unit: "psi", regulated_psi: "80" })],
      }),
      "3",
    ).leakDown;
  expect(leak("60 60 58.5 61")).toMatchObject({ belowLimit: true, atLimit: true });
  expect(leak("60 60 45 61")).toMatchObject({ belowLimit: true, flagged: true });
  expect(leak("60 60 45 61")).not.toHaveProperty("atLimit");
});

const stroke: Partial<Written> = {
  tests: [
    day("1030 1020 830 1040"),
    day("30 74 74 75", { what: "leak-down", unit: "psi", regulated_psi: "80" }),
  ],
};
const heard = day("intake+exhaust none none none", { what: "heard", unit: "" });
test("a piston on the wrong stroke spoils the leak-down, the cranking readings of that test stand", () => {
  const spoilt = assessed({ tests: [...(stroke.tests ?? []), heard] });
  expect(spoilt.trust).toMatchObject({ code: "void", voids: "leak-down" });
  expect(spoilt.cylinders.map(({ standing }) => standing)).toEqual(["even", "even", "suspect", "even"]);
  expect(cylinder(spoilt, "1").leakDown).not.toHaveProperty("standing");
  expect(spoilt.rules.find(({ id }) => id === "ratio75")?.verdict).toBe("met");
  expect(spoilt.nextTests.map(({ text }) => text)).toContainEqual(
    expect.stringMatching(/^turn cylinder 1 on to compression and repeat the leak-down there/),
  );
  expect(spoilt.nextTests.map(({ text }) => text)).not.toContain("make the whole test again");
});

test("what the wrong stroke left standing counts in the history of cranking, the leak-down in none", () => {
  const { cranking, leakDown } = assessHistory(recordOf({ tests: [...(stroke.tests ?? []), heard] }));
  expect(cranking?.counted.map(({ use }) => use)).toEqual(["full"]);
  expect(leakDown?.counted.map(({ use }) => use)).toEqual(["set-aside"]);
});

test("a low reading beside a leak-down as good as its fellows' does not look like a leak, and no oil test is asked for", () => {
  const found = assessed({
    tests: [
      day("1030 1020 1025 810"),
      day("72 72 72 71", { what: "leak-down", unit: "psi", regulated_psi: "80" }),
    ],
  });
  expect(cylinder(found, "4")).toMatchObject({ standing: "suspect", lowWithoutLeak: true });
  expect(found.nextTests.map(({ code }) => code)).not.toContain("wet");
  const leaking = assessed({
    tests: [
      day("1030 1020 1025 810"),
      day("72 72 72 40", { what: "leak-down", unit: "psi", regulated_psi: "80" }),
    ],
  });
  expect(cylinder(leaking, "4")).not.toHaveProperty("lowWithoutLeak");
});
