// `instead`: a reading that takes the place of an earlier one at its place. Figures invented.

import { rowOf } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { told, typed } from "./sample.ts";

const instead = (line: string) =>
  typed("in", line).measurements.map((one) => [told(one), one.instead, rowOf(one).instead]);

test.each([
  ["pin 2 instead: 2.2485", "pin 2 front/0 diameter 2.2485 in"],
  ["pin 2 rear/90 instead: 2.2485", "pin 2 rear/90 diameter 2.2485 in"],
  ["bore 3 Instead top/thrust: 3.4062", "bore 3 top/thrust diameter 3.4062 in"],
  ["bore 3 score instead: light", "bore 3 score light"],
  ["crack head instead: seen, web 3", "crack head web 3 found by seen"],
])("%s takes the place of what stood there", (line, expected) => {
  expect(instead(line)).toEqual([[expected, true, "yes"]]);
});

test("every figure of the line takes the place of its own", () => {
  expect(typed("in", "pin 2 instead: 2.2485 2.2484").measurements.map(({ instead: so }) => so)).toEqual([
    true,
    true,
  ]);
});

test("a line without it has no such cell to fill", () => {
  expect(instead("pin 2: 2.2485")).toEqual([["pin 2 front/0 diameter 2.2485 in", undefined, undefined]]);
});

test("only the first of several readings at a place takes the place of what stood there: the others repeat it", () => {
  const { measurements } = typed("in", "bore 3 top/thrust instead: 3.9480/3.9480/3.9440");
  expect(measurements.map(({ instead: so }) => so)).toEqual([true, undefined, undefined]);
  expect(measurements.map((one) => rowOf(one).instead)).toEqual(["yes", undefined, undefined]);
});
