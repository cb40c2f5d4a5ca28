// Two cylinders, of which one was low for a while: no fall of the other. Readings invented.

import { expect, test } from "vitest";
import { analyseHistory } from "../../../packages/core/src/history/index.ts";
import { historyOf, testsOf } from "./tables.ts";

const both = (...rows: readonly string[]) => analyseHistory(historyOf(testsOf(rows))).cylinders;

const back = ["120 121", "121 98", "120 97", "121 120", "121 120", "121 120", "121 120"];

test("one of two that was low and came back is named where the other stayed at its own level", () => {
  const [sound, low] = both(...back);
  expect(low).toMatchObject({ course: "stepped-down", mirrored: "named", cameBack: 3 });
  expect(sound).toMatchObject({ alarms: [], mirrored: "named" });
  expect(sound?.course).not.toBe("stepped-down");
});

test("the other shows no drop either in the test in which it came back", () => {
  const [sound] = both(...back.slice(0, 4));
  expect(sound).toMatchObject({ alarms: [], change: { flagged: false } });
});

test("where the other read high instead, or both moved, nobody is named", () => {
  const high = both("120 121", "146 121", "147 121", "120 121", "120 121", "121 121");
  expect(high[1]).toMatchObject({ course: "stepped-down", mirrored: "either", cameBack: 3 });
  const half = both("120 121", "133 109", "133 109", "120 121", "120 121", "121 121");
  expect(half.map(({ mirrored }) => mirrored)).toEqual(["either", "either"]);
});

test("one that falls below where it began, after the other came back, has fallen", () => {
  const [fallen] = both("120 121", "121 98", "120 97", "121 120", "121 120", "98 121", "97 120");
  expect(fallen?.alarms).toContain("two-below-baseline");
});

test("a low time in the middle of the years is no drop of the other when it is over", () => {
  const later = ["120 121", "121 120", "120 121", "120 120", "121 98", "120 97", "121 98", "120 121"];
  expect(both(...later)[0]).toMatchObject({ alarms: [], change: { flagged: false } });
  const [dropped] = both(...later.slice(0, 4), "102 121");
  expect(dropped).toMatchObject({ change: { flagged: true } });
});
