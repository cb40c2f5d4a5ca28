// A repair of a cylinder that had just come down: the two tests beside it, with the doubt that the low one may be a bad reading.

import { expect, test } from "vitest";
import { analyseHistory } from "../../../packages/core/src/history/index.ts";
import { historyOf, testsOf } from "./tables.ts";

const on = (cylinders: readonly number[], afterTests: number) => ({
  services: [{ afterTests, touched: cylinders, newBaseline: cylinders, why: "valve job" }],
});

const adjoiningOf = (rows: readonly string[], cylinders: readonly number[], afterTests: number) =>
  analyseHistory(historyOf(testsOf(rows), on(cylinders, afterTests))).services[0]?.adjoining;

const even = ["150 151 149 150", "149 150 150 151", "151 150 149 150"];
const after = "150 151 150 149";

test("one that fell in the last test before and rose by the first after is told, low in that one test", () => {
  const found = adjoiningOf([...even, "150 151 110 150", after], [2], 4);
  expect(found).toMatchObject([{ label: "3", from: 3, to: 4, lowIn: "one-test" }]);
  // against the middle of the others: ln(150/150) - ln(110/150)
  expect(found?.[0]?.rise).toBeCloseTo(Math.log(150 / 110), 6);
});

test("low in the test before that too, it is no single bad reading; all may be touched", () => {
  const rows = [...even, "150 151 128 150", "150 151 90 150", after];
  expect(adjoiningOf(rows, [0, 1, 2, 3], 5)).toMatchObject([{ label: "3", lowIn: "several" }]);
});

test("nothing is told where it was not low before, did not rise, or was not read in one of the two", () => {
  expect(adjoiningOf([...even, "150 151 149 150", after], [2], 4)).toBeUndefined();
  expect(adjoiningOf([...even, "150 151 110 150", "150 151 111 150"], [2], 4)).toBeUndefined();
  expect(adjoiningOf([...even, "150 151 x 150", after], [2], 4)).toBeUndefined();
  expect(adjoiningOf([...even, "150 151 110 150", "150 151 - 150", after], [2], 4)).toBeUndefined();
});

test("one low all along is a matter of the three tests a side", () => {
  const low = ["150 151 110 150", "149 150 111 151", "151 150 110 150"];
  expect(adjoiningOf([...low, after], [2], 3)).toBeUndefined();
});
