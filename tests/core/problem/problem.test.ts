import { bad, byPlace, good, nearest, problem } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";

test("a problem is its code, its place and three sentences", () => {
  expect(problem("take-bad", { text: "0" }, { file: "tests.csv", line: 3, column: 18 })).toEqual({
    code: "take-bad",
    severity: "error",
    file: "tests.csv",
    line: 3,
    column: 18,
    found: 'take "0" does not number a repeat',
    expected: "1, 2, 3 … for the repeats of one test",
    mend: "write 1 for the first time it was read, 2 for the next",
  });
});

test("problems are shown by file, line and column; one without a place comes first", () => {
  const at = (file?: string, line?: number, column?: number) =>
    problem(
      "take-bad",
      { text: "" },
      {
        ...(file === undefined ? {} : { file }),
        ...(line === undefined ? {} : { line }),
        ...(column === undefined ? {} : { column }),
      },
    );
  const sorted = [at("b", 1, 1), at("a", 10, 1), at("a", 9, 5), at("a", 9, 4), at()].toSorted(byPlace);
  expect(
    sorted.map(({ file = "", line = 0, column = 0 }) => `${file}${String(line)}:${String(column)}`),
  ).toEqual(["0:0", "a9:4", "a9:5", "a10:1", "b1:1"]);
});

test("a good outcome has a value and what is worth saying, a failed one at least one problem", () => {
  expect(good(5)).toEqual({ ok: true, value: 5, cautions: [] });
  const fault = problem("take-bad", { text: "0" });
  expect(bad([fault])).toEqual({ ok: false, problems: [fault] });
  expect(() => bad([])).toThrow(TypeError);
});

describe("the words that a mistyped one may have meant", () => {
  const words = ["history", "show", "how", "dry", "wet", "first-stroke"];

  test.each([
    ["histroy", ["history"]],
    ["HISTORY", ["history"]],
    ["frist-stroke", ["first-stroke"]],
    ["hist", ["history"]],
    ["h", ["history", "how"]],
    ["shwo", ["show"]],
    ["dri", ["dry"]],
  ])("%s: %j", (typed, near) => {
    expect(nearest(typed, words)).toEqual(near);
  });

  test.each(["", "--", "xylophone", "x", "x".repeat(1_000)])("%j is near to nothing", (typed) => {
    expect(nearest(typed, words)).toEqual([]);
  });

  test("of many that are equally near three are offered", () => {
    expect(nearest("gauge9", ["gauge1", "gauge2", "gauge3", "gauge4"])).toEqual([
      "gauge1",
      "gauge2",
      "gauge3",
    ]);
  });
});
