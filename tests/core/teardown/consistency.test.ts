// Figures that cannot all be right. Expected values by hand, beside each test; printed limits: tests/published.

import { expect, test } from "vitest";
import type { ClearanceLimit } from "@sealtrend/core/parts";
import {
  impossible,
  impossibleDerived,
  slipsInto,
} from "../../../packages/core/src/teardown/consistency/cannot-be.ts";
import {
  compareGapAndBore,
  gapConflicts,
} from "../../../packages/core/src/teardown/consistency/gap-and-bore.ts";
import {
  misprintConflicts,
  misprintOf,
} from "../../../packages/core/src/teardown/consistency/limit-misprint.ts";

import { threadRange } from "../../../packages/core/src/teardown/consistency/thread-range.ts";
import { apartBy, twoWayConflicts } from "../../../packages/core/src/teardown/consistency/two-ways.ts";
import { engine, figure, inch, mm } from "./consistency-samples.ts";

const estimate = (value: number, uncertainty: number) => ({ value, uncertainty });

// computed by this project: u .00025 by thread, .000185 by bore gauge and micrometer; .0006/.000311 = 1.93, .0013/.000311 = 4.18
test.each([
  [0.0022, 0.0016, 1.93],
  [0.0022, 0.0009, 4.18],
])("%d in by thread and %d in by sizes are %d standard uncertainties apart", (thread, sizes, apart) => {
  expect(apartBy(estimate(thread, 0.00025), estimate(sizes, 0.000185))).toBeCloseTo(apart, 2);
});

const bearing = { part: "rod bearing", label: "2" } as const;
const byThread = figure({ ...bearing, quantity: "thread clearance" }, 0.0022, {
  unit: "in",
  uncertainty: inch(0.00025),
});
const bySizes = (value: number) =>
  figure({ ...bearing, quantity: "clearance" }, value, { unit: "in", uncertainty: inch(0.000185) });

test("two ways that agree are silent, that differ a little doubtful, that differ much a conflict", () => {
  expect(twoWayConflicts([byThread], [bySizes(0.0016)])).toEqual([]);
  // .0008/.000311 = 2.57
  expect(twoWayConflicts([byThread], [bySizes(0.0014)])).toMatchObject([{ weight: "doubtful" }]);
  expect(twoWayConflicts([byThread], [bySizes(0.0009)])).toMatchObject([
    {
      code: "two-ways",
      label: "2",
      weight: "conflict",
      text: "rod bearing 2: 0.0022 in by thread, 0.0009 in as bearing less journal; 0.0013 in apart, these instruments explain 0.00062 in",
    },
  ]);
});

test("78.114 mm and 3.073 in are 0.060 mm apart where rounding explains 0.0132 mm (Suzuki Jimny)", () => {
  const misprint = misprintOf({ text: "78.114", unit: "mm" }, { text: "3.073", unit: "in" });
  expect(misprint?.apart).toBeCloseTo(0.0000598, 7);
  expect(misprint?.allowed).toBeCloseTo(0.0000132, 8);
});

test("a limit that is printed twice is held against itself, end by end", () => {
  const limit: ClearanceLimit = {
    part: "bore",
    quantity: "diameter",
    new: { low: mm(78), high: mm(78.03) },
    wear: { high: mm(78.114) },
    unit: "mm",
    also: { new: { low: inch(3.0709), high: inch(3.072) }, wear: { high: inch(3.073) }, unit: "in" },
    written: {
      "new.low": "78.000",
      "new.high": "78.030",
      "wear.high": "78.114",
      "also.new.low": "3.0709",
      "also.new.high": "3.0720",
      "also.wear.high": "3.073",
    },
    source: "workshop manual p. 12",
  };
  expect(misprintConflicts([limit])).toMatchObject([
    {
      code: "limit-misprint",
      part: "bore",
      quantity: "diameter",
      text: "the limit of bore diameter is printed as 78.114 mm and as 3.073 in, which is 78.054 mm (workshop manual p. 12)",
      weight: "conflict",
    },
  ]);
});

// by hand: 0.2 mm on the bore is 0.628 mm on the gap
test("the gap of one ring at two depths follows the bore", () => {
  const at = (value: number): ReturnType<typeof estimate> => estimate(mm(value), mm(0.005));
  const compared = compareGapAndBore([at(0.978), at(0.35)], [at(86.7), at(86.5)]);
  expect(compared.byBore).toBeCloseTo(0.000628319, 9);
  expect(Math.abs(compared.byGap - compared.byBore)).toBeLessThan(compared.allowed);
});

test("a gap that the bore does not explain is told with both figures", () => {
  const gap = (depth: string, value: number) =>
    figure({ part: "ring", quantity: "end gap", label: "3", at: `1/${depth}` }, value);
  const bore = (at: string, value: number) =>
    figure({ part: "bore", quantity: "diameter", label: "3", at }, value);
  const bores = [
    bore("top/thrust", 86.62),
    bore("top/axial", 86.58),
    bore("bottom/thrust", 86.53),
    bore("bottom/axial", 86.51),
  ];
  // mean 86.60 less 86.52: 0.251 mm more gap at the top
  expect(gapConflicts([gap("top", 0.6), gap("bottom", 0.35), ...bores])).toEqual([]);
  expect(gapConflicts([gap("top", 0.36), gap("bottom", 0.35), ...bores])).toMatchObject([
    {
      code: "gap-and-bore",
      label: "3",
      text: "ring 1 of cylinder 3: its gap is 0.01 mm larger at the top than at the bottom, by the bore it must be 0.251 mm larger",
    },
  ]);
});

test("every slip of the pen that lands inside is offered", () => {
  const oil = { low: mm(0.005), high: mm(0.2) };
  const meant = slipsInto(mm(0.5), oil).map(({ value, how }) => [Number((value * 1000).toFixed(6)), how]);
  expect(meant).toEqual([
    [0.05, "a decimal place"],
    [0.005, "two decimal places"],
    [0.019685, "written in millimetres"],
  ]);
  expect(slipsInto(mm(0.05), oil)).toEqual([]);
});

test.each([
  [86.5, undefined],
  [88.1, undefined],
  [8.65, "likely-slip"],
  [3.4055, "likely-slip"],
  [86.47, "cannot-be"],
])("a bore of %d mm where 86.5 mm is nominal: %s", (value, code) => {
  const item = figure({ part: "bore", quantity: "diameter", label: "1", at: "top/thrust" }, value);
  expect(impossible(item, engine)?.code).toBe(code);
});

test("a bore written in inches is told so, and stays as it was written", () => {
  const item = figure({ part: "bore", quantity: "diameter", label: "1", at: "top/thrust" }, 3.4055);
  expect(impossible(item, engine)).toMatchObject({
    text: "bore 1 top/thrust diameter 3.405 mm cannot be: expected 86.48 to 88.10 mm, by the bore in engine.json",
    mend: "was 86.50 mm (written in inches) meant? Look at the paper or measure it again, then type `bore 1 top/thrust instead: 86.50mm`",
    weight: "conflict",
  });
});

test("a ring gap of a twentieth of the bore and more cannot be", () => {
  const gap = (value: number) =>
    figure({ part: "ring", quantity: "end gap", label: "1", at: "1/top" }, value);
  expect(impossible(gap(4.2), engine)).toBeUndefined();
  expect(impossible(gap(4.5), engine)?.code).toBe("cannot-be");
});

test("a journal thicker than the standard cannot be, one ground twice can", () => {
  const clearances: readonly ClearanceLimit[] = [
    { part: "pin", quantity: "diameter", new: { low: mm(57.982), high: mm(58) }, unit: "mm", written: {} },
  ];
  const pin = (value: number) =>
    figure({ part: "pin", quantity: "diameter", label: "1", at: "front/0" }, value);
  expect(impossible(pin(58.03), { ...engine, clearances })?.code).toBe("cannot-be");
  expect(impossible(pin(57.5), { ...engine, clearances })).toBeUndefined();
  expect(impossible(pin(58.03), engine)).toBeUndefined();
});

test("no shaft goes into a smaller hole", () => {
  const item = figure({ part: "rod bearing", quantity: "clearance", label: "2" }, -0.01, {
    from: "bore 57.98 mm less pin 2 57.99 mm",
  });
  expect(impossibleDerived(item)).toMatchObject({ code: "cannot-be", weight: "conflict" });
});

test("a bore much wider at the bottom is asked about: choke, or the places swapped", () => {
  const taper = (value: number) => figure({ part: "bore", quantity: "taper", label: "2" }, value);
  expect(impossibleDerived(taper(-0.02))).toBeUndefined();
  expect(impossibleDerived(taper(-0.05))).toMatchObject({ weight: "doubtful" });
});

// colour-coded kind: sellers' pages (green 0.001 to 0.003 in, red 0.002 to 0.006 in)
test("thread read outside of its range cannot tell, and the next kind is named", () => {
  const reading = (value: number, instrument: string) =>
    threadRange(
      figure({ part: "main bearing", quantity: "thread clearance", label: "1" }, value, {
        unit: "in",
        instrument,
      }),
    );
  expect(reading(0.0022, "thread green")).toBeUndefined();
  expect(reading(0.0022, "thread")).toBeUndefined();
  expect(reading(0.004, "thread green")).toMatchObject({
    code: "thread-range",
    mend: "take thread red, 0.0020 to 0.0060 in",
  });
});
