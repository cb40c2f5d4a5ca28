// How many journals an engine has by common practice (published ones: tests/published), and what was not measured of them.

import { expect, test } from "vitest";
import type { Measurement } from "@sealtrend/core";
import { expectedJournals, pinOf } from "../../../packages/core/src/teardown/consistency/journal-counts.ts";
import {
  countConflicts,
  countsToMeasure,
  isComplete,
  partCounts,
} from "../../../packages/core/src/teardown/consistency/part-counts.ts";
import { usualJournals } from "../../../packages/core/src/teardown/consistency/usual-journals.ts";
import { engine, labels, mm } from "./consistency-samples.ts";

test.each([
  ["inline", 4, 1, 5, 4, "common practice"],
  ["inline", 3, 1, 4, 3, "common practice"],
  ["v", 6, 1, 4, 3, "common practice"],
  ["v", 12, 1, 7, 6, "common practice"],
  ["v", 2, 1, 2, 1, "common practice"],
  ["v-own-pins", 6, 1, 4, 6, "common practice"],
  ["flat", 4, 1, 5, 4, "common practice"],
  ["flat", 6, 1, 7, 6, "common practice"],
  ["radial", 9, 1, 2, 1, "common practice"],
  ["radial", 28, 4, 5, 4, "computed"],
] as const)("%s of %i in %i rows: %i mains, %i pins (%s)", (layout, cylinders, rows, mains, pins, _) => {
  expect(usualJournals(layout, cylinders, rows)).toEqual({ mains, pins });
});

/** Cylinders 1, 2, 3 … in as many banks as lengths are given. */
const banked = (...lengths: number[]) => {
  const all = labels(lengths.reduce((sum, one) => sum + one, 0));
  const starts = lengths.map((_, i) => lengths.slice(0, i).reduce((sum, one) => sum + one, 0));
  const banks = lengths.map((size, i) => all.slice(starts[i], (starts[i] ?? 0) + size));
  return { ...engine, cylinders: all, banks };
};

test("one bank is an inline engine, four rows of seven a radial", () => {
  expect(expectedJournals(banked(4))).toMatchObject({ mains: 5, pins: 4, bigEnds: 4, otherMains: [] });
  expect(expectedJournals(banked(7, 7, 7, 7))).toMatchObject({ mains: 5, pins: 4, bigEnds: 4 });
});

test("two banks leave a doubt, and the other usual numbers are told", () => {
  expect(expectedJournals(banked(3, 3))).toMatchObject({
    mains: 4,
    otherMains: [7],
    pins: 3,
    otherPins: [6],
  });
  expect(expectedJournals(banked(2, 2))).toMatchObject({
    mains: 5,
    otherMains: [3],
    pins: 4,
    otherPins: [2],
  });
  expect(expectedJournals(banked(4, 4))).toMatchObject({ mains: 5, otherMains: [], pins: 4, otherPins: [] });
});

test("what the owner counted always wins", () => {
  const counted = { ...banked(3, 3), layout: { mains: 4, pins: 6 } };
  expect(expectedJournals(counted)).toMatchObject({
    mains: 4,
    pins: 6,
    mainsFrom: "layout",
    otherMains: [],
    otherPins: [],
  });
});

test("fewer pins than half of the cylinders, by the owner's count, are master rods: a big end a pin", () => {
  expect(expectedJournals({ ...banked(9), layout: { pins: 1 } })).toMatchObject({ pins: 1, bigEnds: 1 });
  expect(expectedJournals({ ...banked(4, 4), layout: { pins: 4 } })).toMatchObject({ bigEnds: 8 });
});

test("rods in pairs: the first cylinder of each bank sits on the first pin", () => {
  const eight = banked(4, 4);
  expect(["1", "4", "5", "8"].map((label) => pinOf(eight, label))).toEqual(["1", "4", "1", "4"]);
  expect(pinOf(banked(4), "3")).toBe("3");
  expect(pinOf(banked(7, 7, 7, 7), "3")).toBeUndefined();
});

const diameter = (part: "main" | "pin" | "rod bearing", label: string): Measurement => ({
  teardown: 1,
  date: "2026-03-02",
  part,
  label,
  at: "front/0",
  quantity: "diameter",
  value: { kind: "length", value: mm(58) },
  unit: "mm",
  state: "as found",
  line: 2,
});

test("a pin that was not measured is named, and one beyond the count is a slip", () => {
  const counts = partCounts(
    [
      ...["1", "2", "3"].map((label) => diameter("pin", label)),
      ...labels(6).map((one) => diameter("main", one)),
    ],
    engine,
  );
  expect(counts).toEqual([
    {
      part: "pin",
      quantity: "diameter",
      expected: 4,
      measured: 3,
      missing: ["4"],
      beyond: [],
      from: "usual for the layout",
      field: "layout.pins",
    },
    {
      part: "main",
      quantity: "diameter",
      expected: 5,
      measured: 5,
      missing: [],
      beyond: ["6"],
      from: "usual for the layout",
      field: "layout.mains",
    },
  ]);
  expect(countConflicts(counts, engine)).toMatchObject([
    {
      code: "beyond-the-count",
      part: "main",
      label: "6",
      text: "main 6: this engine has 5, as is usual",
      mend: "is it another one, under this label by a slip? If the engine has more: sealtrend engine set saw layout.mains 6",
    },
  ]);
});

test("of a layout in doubt, all are measured only where the larger number is", () => {
  const six = banked(3, 3);
  const counted = (count: number) =>
    partCounts(
      labels(count).map((label) => diameter("pin", label)),
      six,
    );
  expect(counted(3).map(isComplete)).toEqual([false]);
  expect(counted(6).map(isComplete)).toEqual([true]);
  expect(countConflicts(counted(6), six)).toEqual([]);
});

test("before anything was measured the counts say what there is to measure", () => {
  expect(
    countsToMeasure(engine).map(({ part, expected, missing }) => [part, expected, missing.length]),
  ).toEqual([
    ["bore", 4, 4],
    ["piston", 4, 4],
    ["ring", 4, 4],
    ["main", 5, 5],
    ["pin", 4, 4],
    ["crank", 1, 1],
  ]);
});
