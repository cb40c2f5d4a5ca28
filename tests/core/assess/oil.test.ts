// The oil test beside what is known of the chamber. Readings invented; rises of oil alone: handbook/trade.md A5, derived
// there: in 500 ml at 9:1 (62.5 ml) 2 ml raise 4 %, 5 ml 10 %, 15 ml 39 %; in 1475 ml at 8.5:1 15 ml raise 10 %.

import { expect, test } from "vitest";
import { type Row, type Written, assessed, cylinder } from "./records.ts";

const half = { geometry: { bore: "86.025mm", stroke: "86.025mm", compressionRatio: 9 } };
const large = { geometry: { bore: "123.4mm", stroke: "123.4mm", compressionRatio: 8.5 } };
const day = (cells: string, more: Partial<Row> = {}): Row => ({ test: "2026-05-02a", cells, ...more });

const result = (
  {
    dry = "150 148 120 151",
    wet,
    oil,
  }: { readonly dry?: string; readonly wet: string; readonly oil?: string },
  written: Partial<Written> = {},
) => {
  const oiled = oil === undefined ? [] : [day(oil, { what: "oil", unit: "" })];
  return assessed({ ...written, tests: [day(dry), day(wet, { what: "wet" }), ...oiled] });
};
const ofOil = ({ cautions }: ReturnType<typeof result>) =>
  cautions.filter((text) => text.startsWith("oil: "));
const third = (found: ReturnType<typeof result>) => found.oil?.cylinders.find(({ label }) => label === "3");

test("without a control the room that the oil takes up is taken off, where the chamber is known", () => {
  const found = result({ wet: "x x 144 x", oil: "x x 2 x" }, { engine: half });
  expect(found.oil?.against).toBe("oil-volume");
  expect(third(found)).toMatchObject({ evidence: "rings", doubts: [], amount: "fits" });
  expect(third(found)?.alone).toBeCloseTo(0.04, 2);
  expect(third(found)?.net).toBeCloseTo(0.2 - 0.04, 2);
  expect(third(found)?.share).toBeCloseTo(2 / 62.5, 4);
});

test("without a control and without the chamber a rise is a weak sign at most", () => {
  const found = result({ wet: "x x 180 x", oil: "x x 2 x" });
  expect(third(found)).toMatchObject({ evidence: "weak", doubts: ["no-control"] });
  expect(third(found)?.net).toBeUndefined();
  expect(found.oil?.against).toBeUndefined();
});

// trade.md B3: without a control, oil above 8 % of the chamber makes the wet test weak evidence. 15 of 196.7 ml are 7.6 %.
test("without a control, oil above 8 % of the chamber leaves a weak sign at most", () => {
  const much = result({ wet: "x x 186 x", oil: "x x 15 x" }, { engine: half });
  expect(third(much)).toMatchObject({ evidence: "weak", doubts: ["much-oil"], amount: "fits" });
  expect(third(much)?.alone).toBeCloseTo(0.39, 2);
  expect(third(result({ wet: "x x 150 x", oil: "x x 15 x" }, { engine: large }))).toMatchObject({
    evidence: "rings",
    alone: expect.closeTo(0.1, 2) as number,
    doubts: [],
  });
});

test("with a control the chamber need not be known, and two gauges do no harm", () => {
  const other = (wet: string) =>
    assessed({
      tests: [day("150 148 120 151", { gauge: "red" }), day(wet, { what: "wet", gauge: "blue" })],
    });
  expect(third(other("153 x 144 x"))).toMatchObject({ evidence: "rings", doubts: [] });
  expect(third(other("x x 144 x"))?.doubts).toEqual(["no-control", "other-gauge"]);
});

test("a control with another amount of oil leaves a weak sign at most", () => {
  expect(third(result({ wet: "153 x 144 x", oil: "5 x 15 x" }))).toMatchObject({
    evidence: "weak",
    doubts: ["unequal-oil"],
  });
  expect(third(result({ wet: "153 x 144 x", oil: "5 x 5.5 x" }))).toMatchObject({
    evidence: "rings",
    doubts: [],
  });
});

// diagnosis.md, wet test: 20 psi gaining 8 is "+40 %", and noise
test("a reading below half of the others gives a weak sign at most, however much it rises", () => {
  expect(third(result({ dry: "150 148 20 151", wet: "153 x 28 x" }))).toMatchObject({
    rise: expect.closeTo(0.4, 9) as number,
    evidence: "weak",
    doubts: ["very-low"],
  });
});

// u(rise) = wet/dry · .015 √2 for single readings: statistics.md F, 1.5 % a reading
test("a rise carries the scatter of the readings it is made of", () => {
  const found = result({ wet: "153 x 129.6 x" });
  const [own, control] = [1.08 * 0.015 * Math.SQRT2, 1.02 * 0.015 * Math.SQRT2];
  expect(third(found)?.uncertainty).toBeCloseTo(own, 9);
  expect(found.oil?.controlUncertainty).toBeCloseTo(control, 9);
  expect(third(found)?.netUncertainty).toBeCloseTo(Math.hypot(own, control), 9);
  // net 6 % is less than 1.96 u
  expect(third(found)).toMatchObject({ evidence: "weak", withinScatter: true });
  expect(third(result({ wet: "153 x 144 x" }))?.withinScatter).toBeUndefined();
});

test("a control that rises beyond the room of its oil may be worn itself", () => {
  const rises = (wet: string) =>
    result({ dry: "150 150 150 150", wet, oil: "2 2 x x" }, { engine: half }).oil?.controlsRoseToo;
  expect(rises("180 180 x x")).toBe(true);
  expect(rises("157 156 x x")).toBeUndefined();
});

test("the only cylinder is held against the room of its oil", () => {
  const single = (engine: object) =>
    result({ dry: "120", wet: "144", oil: "2" }, { cylinders: 1, engine }).oil?.cylinders[0];
  expect(single(half)).toMatchObject({ evidence: "rings", doubts: [] });
  expect(single({})).toMatchObject({ evidence: "weak", doubts: ["no-control"] });
});

// 20 of 62.5 ml are 32 %, 40 ml 64 %: trade.md A5 warns above 25 % and refuses above 50 %
test("oil above a quarter of the chamber is cautioned; above a half the test is doubtful and the oil tells nothing", () => {
  const much = result({ wet: "170 x 150 x", oil: "20 x 20 x" }, { engine: half });
  expect(ofOil(much)).toEqual([
    expect.stringMatching(
      /^oil: 20 ml in 1 \(32 % of its chamber\), 20 ml in 3 \(32 % of its chamber\) is much: it alone may raise a sound cylinder by \d+ %, and more would lock it$/,
    ),
  ]);
  expect(much.trust.code).toBe("trusted");
  expect(third(much)).toMatchObject({ amount: "much", evidence: "rings" });
  const tooMuch = result({ wet: "170 x 250 x", oil: "2 x 40 x" }, { engine: half });
  expect(ofOil(tooMuch)).toEqual([expect.stringContaining("bends rods: plugs out, turn it by hand")]);
  expect(tooMuch.trust).toMatchObject({ code: "doubtful", reasons: [{ code: "too-much-oil" }] });
  expect(third(tooMuch)?.evidence).toBeUndefined();
  expect(third(tooMuch)?.doubts).toEqual(["too-much-oil"]);
  expect(cylinder(tooMuch, "3")).toMatchObject({
    standing: "suspect",
    belowMedian: expect.any(Number) as number,
  });
});

test("oil that fits, and oil in a chamber that is not known, is no reason to warn", () => {
  expect(ofOil(result({ wet: "153 x 144 x", oil: "5 x 5 x" }, { engine: half }))).toEqual([]);
  expect(ofOil(result({ wet: "153 x 144 x", oil: "50 x 50 x" }))).toEqual([]);
});

// Oil takes up room and seals rings: it lowers no reading.
test("where oil lowered both, or the control, the readings are for taking again and no cause is named", () => {
  for (const wet of ["120 x 96 x", "120 x 140 x", "150 x 96 x"]) {
    const found = result({ wet });
    expect(third(found)?.doubts).toEqual(["fell"]);
    expect(third(found)?.evidence).toBeUndefined();
    expect(found.nextTests[0]?.text).toContain("charge the battery");
  }
  expect(third(result({ wet: "149 x 119 x" }))).toMatchObject({ evidence: "none", doubts: [] });
});

// GM Duramax: "do not"; other makers allow a small amount (handbook/trade.md A5), so the engine's own must say so.
test("in a diesel whose maker does not allow oil a rise is a weak sign at most, and it is cautioned", () => {
  const diesel = (wetTest?: object) =>
    result(
      { dry: "400 398 300 402", wet: "404 x 400 x", oil: "2 x 2 x" },
      { engine: { ignition: "compression", ...(wetTest === undefined ? {} : { wetTest }) } },
    );
  expect(third(diesel())).toMatchObject({ evidence: "weak", doubts: ["diesel"] });
  expect(ofOil(diesel())).toEqual([expect.stringContaining("a diesel gets none unless its maker allows it")]);
  expect(third(diesel({ allowed: true, oil_ml: 2 }))).toMatchObject({ evidence: "strong", doubts: [] });
  expect(ofOil(diesel({ allowed: true, oil_ml: 2 }))).toEqual([]);
  expect(ofOil(diesel({ allowed: false }))).toEqual([expect.stringContaining("this engine is to get none")]);
});

test("more oil than the maker says, and oil in an engine that may be a diesel, are cautioned", () => {
  const oiled = (engine: object) => ofOil(result({ wet: "153 x 144 x", oil: "15 x 15 x" }, { engine }));
  expect(oiled({ wetTest: { allowed: true, oil_ml: 5 } })).toEqual([
    expect.stringMatching(/^oil: 15 ml in 1, 15 ml in 3 is more than the maker's 5 ml: /),
  ]);
  expect(oiled({ ignition: "unknown" })).toEqual([expect.stringContaining("a diesel gets none")]);
});

test("how much oil went in is asked for where it was not recorded", () => {
  const gaps = (oil?: string) =>
    result({ wet: "153 x 144 x", ...(oil === undefined ? {} : { oil }) }).missing.join(" ");
  expect(gaps()).toContain("how much oil went in");
  expect(gaps("2 x 2 x")).not.toContain("how much oil went in");
});
