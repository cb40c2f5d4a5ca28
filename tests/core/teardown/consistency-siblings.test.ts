// A figure against the same figure of other cylinders and journals. Expected values by hand, beside each test.

import type { Engine } from "@sealtrend/core";
import { expect, test } from "vitest";
import {
  apartFromSiblings,
  swappedDigits,
  wholeTurn,
} from "../../../packages/core/src/teardown/consistency/siblings.ts";
import { impossible } from "../../../packages/core/src/teardown/consistency/cannot-be.ts";
import { swaps } from "../../../packages/core/src/teardown/consistency/slips.ts";
import { figure, mm, row } from "./consistency-samples.ts";
import { all, bore, judgedAs, limit, measured, saw } from "./judge-samples.ts";

const pins = { part: "pin", quantity: "diameter", at: "front/0" } as const;

test("a diameter off by one turn of the micrometer is asked about", () => {
  const metric = row(pins, [57.98, 57.99, 57.48, 57.98], { instrument: "micrometer" });
  expect(metric.map((item) => wholeTurn(item, metric)?.mend)).toEqual([
    undefined,
    undefined,
    "was it 57.98 mm? Measure it again",
    undefined,
  ]);
  const inches = row(pins, [2.4986, 2.4985, 2.4736, 2.4984], { unit: "in", instrument: "micrometer" });
  expect(inches.map((item) => wholeTurn(item, inches)?.code)).toEqual([
    undefined,
    undefined,
    "whole-turn",
    undefined,
  ]);
});

test("two figures in each other's place are asked about: 85.62 for 86.52", () => {
  expect(swaps("86.52")).toEqual(["68.52", "85.62", "86.25"]);
  const bores = row({ part: "bore", quantity: "diameter", at: "top/axial" }, [86.52, 86.53, 85.62, 86.51]);
  expect(bores.map((item) => swappedDigits(item, bores)?.mend)).toEqual([
    undefined,
    undefined,
    "two figures swapped: was 86.52 mm meant? Else measure it once more before going by it",
    undefined,
  ]);
});

// by hand: median 57.98, deviations 0 0 .01 .01 .2, their median .01, five spreads .074
test("one reading far from its fellows is doubtful, a journal that is thinner all over is not", () => {
  const front = row(pins, [57.98, 57.99, 57.97, 57.78, 57.98]);
  expect(apartFromSiblings(front)).toMatchObject([
    {
      code: "apart-from-siblings",
      label: "4",
      weight: "doubtful",
      text: "pin 4 front/0 diameter 57.78 mm stands 0.20 mm below the others",
    },
  ]);
  const rear = row({ ...pins, at: "rear/0" }, [57.98, 57.99, 57.97, 57.78, 57.98]);
  expect(apartFromSiblings([...front, ...rear])).toEqual([]);
});

// pins new 57.982 to 58.000; two of four are a turn off: the right ones are not asked about
const sized = { clearances: [limit("pin", "diameter", { fresh: [57.982, 58] })] };
test("with two slips the right ones are not accused", () => {
  const four = row(pins, [57.49, 57.99, 57.49, 57.985], { instrument: "micrometer" });
  expect(four.map((item) => wholeTurn(item, four, sized)?.meant?.map((value) => value * 1000))).toMatchObject(
    [[expect.closeTo(57.99, 6)], undefined, [expect.closeTo(57.99, 6)], undefined],
  );
});

test("a crank that is ground all over is not a turn off", () => {
  const ground = row(pins, [57.49, 57.49, 57.485, 57.49], { instrument: "micrometer" });
  expect(ground.map((item) => wholeTurn(item, ground, sized))).toEqual([
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
});

test("a bore that cannot be keeps the hint that two figures are swapped", () => {
  const bores = measured([...all((label) => bore(label, label === "3" ? 85.62 : 86.52))]);
  expect(judgedAs(bores).conflicts).toMatchObject([
    {
      code: "likely-slip",
      label: "3",
      mend: "was 86.52 mm (two figures swapped) meant? Look at the paper or measure it again, then type `bore 3 top/thrust instead: 86.52mm`",
    },
  ]);
  const two = measured([...all((label) => bore(label, ["2", "3"].includes(label) ? 85.62 : 86.52))]);
  expect(judgedAs(two).conflicts.map(({ label, weight }) => [label, weight])).toEqual([
    ["2", "conflict"],
    ["3", "conflict"],
  ]);
});

const inches: Engine = {
  ...saw,
  clearances: [limit("bore", "diameter", { fresh: [3.939, 3.9405], unit: "in" })],
};

// by hand: each of the three is a swap of its last two figures away from 3.94, and a worn bore reads high all over
test("three high readings of one bore are wear, one alone may be a swap", () => {
  const high = (...values: readonly number[]) =>
    measured([...all((label) => (label === "4" ? bore("4", ...values) : bore(label, 3.94, 3.94, 3.94)))], {
      unit: "in",
      resolution: 0.0001,
    });
  const codesOf = (...values: readonly number[]) =>
    judgedAs(high(...values), inches).conflicts.map(({ code }) => code);
  expect(codesOf(3.948, 3.945, 3.942)).not.toContain("swapped-digits");
  expect(codesOf(3.942, 3.94, 3.94)).toEqual(["swapped-digits"]);
});

// by hand: the others' middle is 8.01, a quarter of the 1.5 mm that one guide may differ by is 0.375: 8.80 is 0.79 off
const guide = (last: number, more = {}) => {
  const at = ["top/thrust", "top/axial", "middle/thrust", "middle/axial", "bottom/thrust"];
  const place = { part: "guide", quantity: "bore", label: "2in" } as const;
  return [
    ...[8.02, 7.98, 8.01, 8.01, 8.02].map((value, i) => figure({ ...place, at: at[i] ?? "" }, value)),
    figure({ ...place, at: "bottom/axial" }, last, more),
  ];
};

test("a reading is held against the others of its own part where it has no fellows", () => {
  expect(apartFromSiblings(guide(8.8))).toMatchObject([
    {
      code: "apart-from-siblings",
      label: "2in",
      at: "bottom/axial",
      weight: "doubtful",
      text: "guide 2in bottom/axial bore 8.80 mm stands 0.79 mm above the other figures of guide 2in",
    },
  ]);
  expect(apartFromSiblings(guide(8.3))).toEqual([]);
  expect(apartFromSiblings(guide(8.8, { state: "cleaned" }))).toEqual([]);
});

test("two places that stand off alike are no slip, nor is the only spot of a bore that did not wear", () => {
  expect(
    apartFromSiblings([
      ...guide(8.8).slice(1),
      ...guide(8.8)
        .slice(0, 1)
        .map((one) => ({ ...one, value: mm(8.8) })),
    ]),
  ).toEqual([]);
  const bores = ["top/thrust", "top/axial", "middle/thrust", "bottom/thrust"].map((at, i) =>
    figure({ part: "bore", quantity: "diameter", label: "1", at }, i === 3 ? 86.6 : 87.6),
  );
  expect(apartFromSiblings(bores)).toEqual([]);
});

test("a slip is not offered a mend that would itself be asked about", () => {
  const meant = (value: number): unknown =>
    impossible(
      guide(value).at(-1) ?? expect.fail(),
      { clearances: [], geometry: {} },
      { others: guide(value).slice(0, -1) },
    );
  expect(meant(88.03)).toMatchObject({
    code: "cannot-be",
    mend: "measure it again, then type `guide 2in bottom/axial instead:` with what it reads",
  });
  expect(meant(88.03)).not.toHaveProperty("meant");
  expect(meant(80.3)).toMatchObject({ code: "likely-slip", meant: [expect.closeTo(0.00803, 9) as number] });
});
