// Clearances of pistons, bearings and rods, by sizes and by thread. Engine invented.

import { expect, test } from "vitest";
import { bore, journal, judgedAs, limit, measured, saw, type Line, find } from "./judge-samples.ts";

// by hand: bores 86.52 to 86.60, piston 86.45
test("a piston has its smallest and its largest clearance", () => {
  const { derived } = judgedAs(
    measured([...bore("2", 86.6, 86.58, 86.56, 86.55, 86.53, 86.52), ["piston", "2", "", "diameter", 86.45]]),
  );
  expect(
    find(derived, "piston", "clearance").map(({ at, value }) => [at, Number((value * 1000).toFixed(4))]),
  ).toEqual([
    ["smallest", 0.07],
    ["largest", 0.15],
  ]);
});

const rodBearing = (label: string, size: number): Line => ["rod bearing", label, "middle/90", "bore", size];

test("an oil clearance is fitted to the largest diameter of the journal", () => {
  const { derived } = judgedAs(measured([...journal("pin", "2", 47.98, 47.97), rodBearing("2", 48.04)]));
  expect(
    find(derived, "rod bearing", "clearance").map(({ at, value, from }) => [
      at,
      Number((value * 1000).toFixed(4)),
      from,
    ]),
  ).toEqual([
    ["smallest", 0.06, "rod bearing 2 middle/90 48.04 less pin 2 front/0 47.98"],
    ["largest", 0.07, "rod bearing 2 middle/90 48.04 less pin 2 front/90 47.97"],
  ]);
});

// computed (handbook 3.4, 3 and 9): thread 0.0022 in, 0.0010 to 0.0025: p 0.8849; a bore gauge of 0.002 mm and two readings
// settle it
test("what a thread cannot tell is settled by bore gauge and micrometer", () => {
  const limits = [limit("rod bearing", "clearance", { fresh: [0.001, 0.0025], unit: "in" })];
  const thread: Line = ["rod bearing", "2", "middle", "thread clearance", 0.0022];
  const [item] = judgedAs(measured([thread], { unit: "in", instrument: "thread" }), {
    ...saw,
    clearances: limits,
  }).items;
  expect(item?.verdicts[0]?.probability).toBeCloseTo(0.8849, 4);
  expect(item?.verdicts[0]?.settlement?.text).toBe(
    "bore gauge 0.0001 in set in the micrometer that measures the pin, 2 readings at each place",
  );
});

test("rods in pairs: the rod of cylinder 5 runs on pin 1 of a V eight", () => {
  const labels = ["1", "2", "3", "4", "5", "6", "7", "8"];
  const eight = { ...saw, cylinders: labels, banks: [labels.slice(0, 4), labels.slice(4)] };
  const rows = measured(
    [...journal("pin", "1", 47.98), rodBearing("5", 48.02), rodBearing("2", 48.02)],
    {},
    eight,
  );
  const fits = find(judgedAs(rows, eight).derived, "rod bearing", "clearance");
  expect(fits.map(({ label, value }) => [label, Number((value * 1000).toFixed(4))])).toEqual([["5", 0.04]]);
});

test("by thread and by sizes: the way that is known better decides, a contradiction makes both wait", () => {
  const thread = (value: number): Line => ["rod bearing", "2", "middle", "thread clearance", value];
  const sizes = [...journal("pin", "2", 47.98), rodBearing("2", 48.04)];
  const agree = judgedAs([...measured(sizes), ...measured([thread(0.07)], { instrument: "thread" })]);
  expect(agree.conflicts).toEqual([]);
  const kinds = agree.parts.filter(({ part }) => part === "rod bearing").map(({ quantity }) => quantity);
  expect([...new Set(kinds)]).toEqual(["clearance"]);
  const apart = judgedAs([...measured(sizes), ...measured([thread(0.15)], { instrument: "thread" })]);
  expect(apart.conflicts).toMatchObject([{ code: "two-ways", label: "2", weight: "conflict" }]);
  const waiting = [...apart.items, ...apart.derived].filter(({ waits }) => waits === true);
  expect(waiting.map(({ quantity }) => quantity)).toEqual(["thread clearance", "clearance"]);
  expect(apart.work.map(({ code }) => code)).toContain("measure-better");
  expect(apart.work.map(({ code }) => code)).not.toContain("fine-step-shells");
});
