// A figure against its limits: verdict, and what would settle it.

import { type Length, length, toSi } from "@sealtrend/core";
import { describe, expect, test } from "vitest";
import {
  allConform,
  bothSides,
  differenceUncertainty,
  feelerUncertainty,
  insideByFeeler,
  instrumentFor,
  limitVerdict,
  probabilityOf,
  readingUncertainty,
  type FigureOf,
  type Instrument,
  type InstrumentQuestion,
} from "../../../packages/core/src/teardown/conformity/index.ts";

const mm = (millimetres: number): Length => length(toSi(millimetres, "mm"));
const inch = (inches: number): Length => length(toSi(inches, "in"));
const used = (question: Partial<InstrumentQuestion>): Instrument =>
  instrumentFor({ part: "bore", quantity: "diameter", unit: "mm", ...question });
const microns = (metres: number): number => Number((metres * 1e6).toFixed(2));

describe("what would settle it", () => {
  const judged = (
    value: Length,
    uncertainty: Length,
    limits: Parameters<typeof probabilityOf>[1],
    of: FigureOf,
  ) => limitVerdict({ value, uncertainty }, { kind: "wear", limits }, of);

  test("out-of-round too close by a 0.01 mm gauge: a finer one, three readings at each place", () => {
    const instrument = used({ instrument: "bore-gauge", resolution: mm(0.01) });
    const once = { instrument, readings: 1 };
    const of = {
      part: "bore",
      quantity: "out-of-round",
      kind: "difference",
      unit: "mm",
      instrument,
    } as const;
    const found = judged(mm(0.045), differenceUncertainty(once, once), bothSides(mm(0.05)), of);
    expect(found.verdict).toBe("too-close-to-tell");
    expect(found.probability).toBeCloseTo(0.8021, 4);
    expect(microns(found.settlement?.needed ?? 0)).toBe(3.04);
    expect(found.settlement).toMatchObject({
      by: { instrument: "bore gauge", resolution: mm(0.002), readings: 3 },
      text: "bore gauge 0.002 mm, 3 readings at each place",
    });
  });

  test("thread too close: a bore gauge set in the micrometer of the pin, two readings, never more thread", () => {
    const instrument = used({ part: "rod bearing", quantity: "thread clearance", instrument: "thread" });
    const uncertainty = readingUncertainty({ instrument, readings: 1 });
    expect(readingUncertainty({ instrument, readings: 4 })).toBe(uncertainty);
    const of = {
      part: "rod bearing",
      quantity: "thread clearance",
      kind: "clearance",
      unit: "in",
      instrument,
    } as const;
    const found = judged(inch(0.0022), uncertainty, { low: inch(0.001), high: inch(0.0025) }, of);
    expect(found.settlement?.by).toEqual({
      instrument: "bore gauge",
      resolution: inch(0.0001),
      readings: 2,
    });
    expect(found.settlement?.text).toBe(
      "bore gauge 0.0001 in set in the micrometer that measures the pin, 2 readings at each place",
    );
  });

  test("the instrument in hand is tried again before another is bought", () => {
    const instrument = used({ part: "main", instrument: "micrometer", resolution: mm(0.001) });
    const of = { part: "main", quantity: "diameter", kind: "reading", unit: "mm", instrument } as const;
    const uncertainty = readingUncertainty({ instrument, readings: 1 });
    const found = judged(mm(57.988), uncertainty, { low: mm(57.982) }, of);
    expect(found.settlement?.by).toEqual({ instrument: "micrometer", resolution: mm(0.001), readings: 2 });
  });

  test("a caliper on a bore: any gauge will do", () => {
    const instrument = used({ instrument: "caliper" });
    const uncertainty = readingUncertainty({ instrument, readings: 1 });
    const of = { part: "bore", quantity: "diameter", kind: "reading", unit: "mm", instrument } as const;
    const found = judged(mm(86.6), uncertainty, { high: mm(86.62) }, of);
    expect(found.probability).toBeCloseTo(0.7866, 4);
    expect(found.settlement?.by?.instrument).toBe("telescopic gauge and micrometer");
  });

  test("two limits may ask for more than the nearest alone", () => {
    // 1.7 u from either limit: one limit would be settled, two are not
    const u = mm(0.01);
    const of = { part: "bore", quantity: "diameter", kind: "reading", unit: "mm" } as const;
    const limits = { low: mm(79.983), high: mm(80.017) };
    const found = judged(mm(80), u, limits, of);
    expect(found).toMatchObject({ verdict: "too-close-to-tell", neverInside: true });
    expect(found.settlement?.needed).toBeLessThan(u);
    // Φ(1.96) - Φ(-1.96) = 0.95
    expect(microns(found.settlement?.needed ?? 0)).toBeCloseTo(17 / 1.96, 2);
  });

  test("nothing at home settles a hair, nor a figure that is the limit itself", () => {
    const of = { part: "crank", quantity: "end play", kind: "reading", unit: "mm" } as const;
    const hair = judged(mm(0.348), mm(0.00583), { high: mm(0.35) }, of);
    expect(hair.settlement?.by).toBeUndefined();
    expect(hair.settlement?.text).toBe(
      "no instrument of a home workshop settles it: ask the shop to measure",
    );
    const same = judged(mm(0.35), mm(0.00583), { high: mm(0.35) }, of);
    expect(same.settlement).toEqual({
      needed: 0,
      text: "it reads 0.35 mm, the limit itself: ask the shop to measure",
    });
  });

  test("a feeler figure without its leaves asks for both", () => {
    const of = { part: "ring", quantity: "end gap", kind: "reading", unit: "mm" } as const;
    const found = judged(mm(0.37), mm(0.0156), { high: mm(0.385) }, of);
    expect(found.settlement?.text).toBe(
      "find the leaf that goes and the next, 0.01 mm thicker, that does not",
    );
  });

  test("between two leaves: a thinner leaf that stops and a thicker one that goes; the limit's own leaf never", () => {
    const between = { low: mm(0.35), high: mm(0.4) };
    const limits = { low: mm(0.15), high: mm(0.38) };
    const of = { part: "ring", quantity: "end gap", kind: "reading", unit: "mm" } as const;
    const figure = { value: mm(0.375), uncertainty: feelerUncertainty(between), between };
    const { settlement } = limitVerdict(figure, { kind: "new", limits, source: "manual p. 62" }, of);
    expect(settlement?.text).toBe(
      "try a 0.37 mm leaf: inside if it does not go; a 0.39 mm leaf: outside if it goes",
    );
    expect(insideByFeeler({ low: mm(0.35), high: mm(0.38) }, limits)).toBeLessThan(0.95);
    expect(insideByFeeler({ low: mm(0.38), high: mm(0.4) }, limits)).toBeGreaterThan(0.05);
    expect(insideByFeeler({ low: mm(0.35), high: mm(0.37) }, limits)).toBeGreaterThan(0.95);
    expect(insideByFeeler({ low: mm(0.39), high: mm(0.4) }, limits)).toBeLessThan(0.05);
  });

  test("one leaf that settles it either way is named once", () => {
    // by hand: 0.9 to 1.1 mm, limit 1.00: of 0.1 mm below a leaf of 1.00 the feel of 0.006 mm puts 0.4 · 6 % beyond it
    const between = { low: mm(0.9), high: mm(1.1) };
    const of = { part: "ring", quantity: "end gap", kind: "reading", unit: "mm" } as const;
    const figure = { value: mm(1), uncertainty: feelerUncertainty(between), between };
    const { settlement } = limitVerdict(figure, { kind: "wear", limits: { high: mm(1) } }, of);
    expect(settlement?.text).toBe("try a 1.00 mm leaf: inside if it does not go, outside if it goes");
  });

  test("neighbouring leaves that straddle the limit leave it to the shop", () => {
    const between = { low: mm(0.05), high: mm(0.06) };
    const of = { part: "head", quantity: "gap", kind: "reading", unit: "mm" } as const;
    const figure = { value: mm(0.055), uncertainty: feelerUncertainty(between), between };
    const { settlement, verdict } = limitVerdict(figure, { kind: "wear", limits: { high: mm(0.05) } }, of);
    expect(verdict).toBe("too-close-to-tell");
    expect(settlement?.by).toBeUndefined();
  });
});

describe("verdicts", () => {
  test("a verdict carries its limits, its source and nothing that is not known", () => {
    const of = { part: "bore", quantity: "taper", kind: "difference", unit: "mm" } as const;
    const figure = { value: mm(0.08), uncertainty: mm(0.00589) };
    const limits = bothSides(mm(0.1));
    const found = limitVerdict(figure, { kind: "wear", limits, source: "manual p. 62" }, of);
    expect(found).toMatchObject({ kind: "wear", low: mm(-0.1), high: mm(0.1), source: "manual p. 62" });
    expect(found.probability).toBeCloseTo(0.9997, 4);
    expect(found.verdict).toBe("inside");
    expect(Object.keys(found)).not.toContain("settlement");
  });

  test("a limit is needed, and an uncertainty, and a reading", () => {
    const figure = { value: mm(1), uncertainty: mm(0.01) };
    expect(() => probabilityOf(figure, {})).toThrow("needs a limit");
    expect(() => probabilityOf({ ...figure, uncertainty: mm(0) }, { high: mm(1) })).toThrow(
      "must be above 0 m",
    );
    expect(() => allConform([])).toThrow("needs a reading");
    expect(() => readingUncertainty({ instrument: used({}), readings: 0 })).toThrow("needs a reading");
    expect(() => insideByFeeler({ low: mm(0.4), high: mm(0.35) }, { high: mm(1) })).toThrow("thicker");
  });

  test("one leaf that just goes is judged by its feel alone", () => {
    const leaf = { low: mm(0.35), high: mm(0.35) };
    expect(insideByFeeler(leaf, { high: mm(0.35) })).toBeCloseTo(0.5, 12);
    expect(insideByFeeler(leaf, { high: mm(0.35) }, mm(0))).toBe(1);
  });
});
