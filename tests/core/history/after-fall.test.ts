// What followed a fall in the first tests: it went on, or it came back. Readings invented.

import { expect, test } from "vitest";
import { analyseHistory } from "../../../packages/core/src/history/index.ts";
import { historyOf, testsOf } from "./tables.ts";

const third = (...values: readonly (number | string)[]) => {
  const { cylinders } = analyseHistory(
    historyOf(testsOf(values.map((value) => `150 149 ${String(value)} 151`))),
  );
  const { course, wentOn } = cylinders[2] ?? {};
  return [course, wentOn];
};

test("one that reads lower again after its first low test went on; one that stays as low stepped", () => {
  expect(third(150, 134, 118)).toEqual(["stepped-down", 2]);
  expect(third(150, 134, 134)).toEqual(["stepped-down", undefined]);
  expect(third(150, 134, 133)).toEqual(["stepped-down", undefined]);
});

test("one that reads as before again came back, at its last test that counts", () => {
  const { cylinders } = analyseHistory(
    historyOf(testsOf(["150 151 150 149", "150 151 130 149", "150 151 131 149", "150 151 152 149"])),
  );
  expect(cylinders[2]).toMatchObject({ course: "stepped-down", cameBack: 3 });
  expect(cylinders[2]).not.toHaveProperty("wentOn");
});

test("one that holds nothing now, or whose tests tell the shape, is told by that", () => {
  expect(third(150, 134, 128, "x")).toEqual(["stepped-down", undefined]);
  expect(third(150, 142, 134, 127, 120, 113)).toEqual(["falling", undefined]);
});
