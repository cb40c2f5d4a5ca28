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

const after = (...values: readonly number[]) => {
  const rows = values.map((value) => `150 149 ${String(value)} 151`);
  const { wentOn, cameBack, lowAgain } = analyseHistory(historyOf(testsOf(rows))).cylinders[2] ?? {};
  return { wentOn, cameBack, lowAgain };
};

test("one that reads lower again after its first low test went on; one that stays as low stepped", () => {
  expect(third(150, 134, 118)).toEqual(["stepped-down", 2]);
  expect(third(150, 134, 134)).toEqual(["stepped-down", undefined]);
  expect(third(150, 134, 133)).toEqual(["stepped-down", undefined]);
});

test("one that reads as before again came back, at the first test from which it stayed so", () => {
  const { cylinders } = analyseHistory(
    historyOf(testsOf(["150 151 150 149", "150 151 130 149", "150 151 131 149", "150 151 152 149"])),
  );
  expect(cylinders[2]).toMatchObject({ course: "stepped-down", cameBack: 3 });
  expect(cylinders[2]).not.toHaveProperty("wentOn");
  expect(after(150, 130, 131, 149, 150, 149, 148)).toEqual({ cameBack: 3 });
  expect(after(150, 149, 130, 131, 149, 150)).toEqual({ cameBack: 4 });
});

test("back only where it stands as before, within what repeats explain", () => {
  // ln (139/150) = -7.6 %; one test against one, beside three others: 1.86 x 1.8 % x sqrt(1.449 x 2) = 5.7 %
  expect(after(150, 122, 122, 139, 139, 139)).toEqual({});
  expect(after(150, 122, 122, 139)).toEqual({});
  // ln (144/150) = -4.1 %
  expect(after(150, 122, 122, 144)).toEqual({ cameBack: 3 });
});

test("one that fell again is not back, and one that came back a second time was low twice", () => {
  expect(after(150, 122, 122, 150, 122, 121)).toEqual({ lowAgain: 4 });
  expect(after(150, 149, 122, 122, 150, 149, 122, 121, 150)).toEqual({ lowAgain: 6, cameBack: 8 });
});

test("where its own work began a new count, the readings before it are none to come back to", () => {
  const rows = [100, 101, 150, 122, 122, 149].map((value) => `150 149 ${String(value)} 151`);
  const services = [{ afterTests: 2, touched: [2], newBaseline: [2], why: "valve job" }];
  const { cylinders } = analyseHistory(historyOf(testsOf(rows), { services }));
  expect(cylinders[2]).toMatchObject({ course: "stepped-down", cameBack: 5 });
});

test("one that holds nothing now, or whose tests tell the shape, is told by that", () => {
  expect(third(150, 134, 128, "x")).toEqual(["stepped-down", undefined]);
  expect(third(150, 142, 134, 127, 120, 113)).toEqual(["falling", undefined]);
});
