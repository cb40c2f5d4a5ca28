// The first stroke beside the last. Readings invented. Low first, then building: rings; not building: valves (GM 1990 to
// 2009, Isuzu, Ford Probe 1997, Skoda, Nissan, Mercedes manuals, handbook/trade.md A3); bounds .85 and 1.15 of the middle
// share: handbook/diagnosis.md, judgement.

import { expect, test } from "vitest";
import { type Row, assessed } from "./records.ts";

const builds = (dry: string, first: string, more: Partial<Row> = {}, cylinders = 4) =>
  assessed({
    cylinders,
    tests: [
      { test: "2026-05-02a", cells: dry, ...more },
      { test: "2026-05-02a", cells: first, what: "first-stroke" },
    ],
  }).buildUp;

// .6 of the last for the sound ones; 43/110 = .39, .65 of the middle; 90/110 = .82, 1.36 of it; 66/110 = .6
test.each([
  ["43", "builds-up"],
  ["90", "stays-flat"],
  ["66", "as-others"],
])("a low cylinder with %s psi at first %s", (first, pattern) => {
  const found = builds("150 150 110 150", `90 90 ${first} 90`);
  expect(found?.middle).toBeCloseTo(0.6, 12);
  expect(found?.cylinders.map((one) => one.pattern)).toEqual([undefined, undefined, pattern, undefined]);
  expect(found?.cylinders[2]?.relative).toBeCloseTo(Number(first) / 110 / 0.6, 12);
});

// .015 √2 for single readings: statistics.md F
test("a share carries the scatter of both readings", () => {
  expect(builds("150 150 110 150", "90 90 66 90")?.cylinders[0]?.uncertainty).toBeCloseTo(
    0.015 * Math.SQRT2,
    9,
  );
});

test("only readings of one gauge compare, and three cylinders at least", () => {
  expect(builds("150 150 110 150", "90 90 43 90", { gauge: "red" })).toBeUndefined();
  expect(builds("150 110", "90 43", {}, 2)).toBeUndefined();
  expect(builds("150 >300 110 x", "90 90 43 90")).toBeUndefined();
});

// trade.md A3 (derived): .28 of the fourth at the first is 27 % of the final reading, .6 is 97 %
test.each([
  ["42 42 42 42", 0.27],
  ["90 90 90 90", 0.97],
])("by first strokes of %s psi, four strokes got to %d of the final reading", (first, share) => {
  const { reached } = builds("150 150 150 150", first, { strokes: "4" }) ?? {};
  expect(reached?.strokes).toBe(4);
  expect(Math.abs((reached?.share ?? 0) - share)).toBeLessThan(0.015);
});

test("how far the needle got is not told where the strokes were not counted", () => {
  expect(builds("150 150 150 150", "90 90 90 90")?.reached).toBeUndefined();
});

// 50/145 = .34 of the last against .6 for the others: .57 of the middle, far beyond the scatter of 2.1 % of a share
test("a first stroke far from the others is for reading again where the cylinder is not low", () => {
  const odd = (first: string) =>
    builds("150 150 150 145", `90 90 90 ${first}`)?.cylinders.map((one) => one.odd);
  expect(odd("50")).toEqual([undefined, undefined, undefined, "late"]);
  expect(odd("130")).toEqual([undefined, undefined, undefined, "early"]);
  expect(odd("84")).toEqual([undefined, undefined, undefined, undefined]);
});

// Strokes add to what the gauge holds. 2 % lie within the scatter of two readings (4.2 %: statistics.md F)
test("a first stroke above the last makes the test doubtful, within the scatter it does not", () => {
  const codes = (first: string) =>
    assessed({
      tests: [
        { test: "2026-05-02a", cells: "150 150 150 145" },
        { test: "2026-05-02a", cells: `${first} 90 90 90`, what: "first-stroke" },
      ],
    }).trust.reasons.map(({ code }) => code);
  expect(codes("160")).toEqual(["first-above-last"]);
  expect(codes("153")).toEqual([]);
});
