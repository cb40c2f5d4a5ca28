import { type Length, area, length, toSi, volume } from "@sealtrend/core";
import { describe, expect, test } from "vitest";
import {
  alreadyBored,
  barOffset,
  boreFigures,
  chamberAfterWork,
  chooseOversize,
  chooseUndersize,
  clearanceOfRocking,
  clearanceRange,
  compressionRatio,
  diameterRange,
  faceFlatness,
  fineStepShells,
  grindTo,
  journalFigures,
  meanAt,
  taperFromRing,
  threadClearance,
  usualGrindStock,
  usualHoneStock,
  type FlatLine,
  type OversizeQuestion,
} from "../../../packages/core/src/teardown/figures/index.ts";

const mm = (millimetres: number): Length => length(toSi(millimetres, "mm"));
const inch = (inches: number): Length => length(toSi(inches, "in"));
const at = (along: string, across: string, diameter: number) => ({ along, across, diameter: mm(diameter) });

describe("bores and journals", () => {
  test("a tight top is a negative taper and wins over a smaller positive one", () => {
    const { taper } = boreFigures([
      at("top", "thrust", 86.5),
      at("bottom", "thrust", 86.53),
      at("top", "axial", 86.52),
      at("bottom", "axial", 86.5),
    ]);
    expect(taper?.value).toBeCloseTo(-0.03e-3, 12);
    expect(taper).toMatchObject({ at: "thrust", places: ["top/thrust", "bottom/thrust"] });
  });

  test("what was not measured gives no figure", () => {
    const found = boreFigures([at("top", "thrust", 86.5), at("middle", "axial", 86.52)]);
    expect(found.taper).toBeUndefined();
    expect(found.outOfRound).toBeUndefined();
    expect(found.cylindricity).toBeUndefined();
    expect(found.wear).toBeUndefined();
    expect(found.range).toBeCloseTo(0.02e-3, 12);
    expect(boreFigures([])).toEqual({});
    expect(diameterRange([at("top", "thrust", 86.5)])).toBeUndefined();
  });

  test("a journal that is thicker at the rear and at 90 degrees has both signs negative", () => {
    const found = journalFigures([
      at("front", "0", 57.95),
      at("front", "90", 57.96),
      at("rear", "0", 57.97),
      at("rear", "90", 57.97),
    ]);
    expect(found.taper?.value).toBeCloseTo(-0.02e-3, 12);
    expect(found.outOfRound).toMatchObject({ at: "front" });
    expect(found.outOfRound?.value).toBeCloseTo(-0.01e-3, 12);
    expect(found.largest?.diameter).toBe(mm(57.97));
    expect(found.smallest?.diameter).toBe(mm(57.95));
  });

  test("a ring follows the mean of both directions, which needs both", () => {
    const readings = [at("top", "thrust", 86.6), at("top", "axial", 86.56), at("bottom", "thrust", 86.5)];
    expect(meanAt(readings, "top")).toBeCloseTo(86.58e-3, 12);
    expect(meanAt(readings, "bottom")).toBeUndefined();
    // (0.60 - 0.35)/pi
    expect(taperFromRing(mm(0.6), mm(0.35))).toBeCloseTo(0.0795775e-3, 10);
  });
});

describe("clearances", () => {
  test("the fit goes by the largest journal, the oil by the smallest", () => {
    const range = clearanceRange([mm(58.05), mm(58.06)], [mm(58), mm(57.99)]);
    expect(range?.smallest).toBeCloseTo(0.05e-3, 12);
    expect(range?.largest).toBeCloseTo(0.07e-3, 12);
    expect(clearanceRange([], [mm(58)])).toBeUndefined();
  });

  test("a rocked stem reads double", () => {
    expect(clearanceOfRocking(mm(0.12))).toBeCloseTo(0.06e-3, 12);
  });

  test("fine-step shells: the smallest step that brings the clearance inside, or none", () => {
    const steps = [inch(0.002), inch(0.001)];
    const limits = { low: inch(0.001), high: inch(0.0025) };
    expect(fineStepShells(inch(0.003), limits, steps)).toBe(inch(0.001));
    expect(fineStepShells(inch(0.0042), limits, steps)).toBe(inch(0.002));
    expect(fineStepShells(inch(0.005), limits, steps)).toBeUndefined();
  });

  test("a thread without width is refused", () => {
    expect(() => threadClearance(area(1e-8), mm(0))).toThrow(
      "threadClearance: width must be above 0 m, got 0",
    );
  });
});

describe("oversize", () => {
  const question: OversizeQuestion = {
    cylinders: [{ label: "1", largest: mm(86.62) }],
    original: mm(86.5),
    offered: [mm(0.5), mm(0.25)],
    offset: "none",
    honeStock: mm(0.02),
  };

  test("a size that is met exactly is enough", () => {
    const exact = { ...question, cylinders: [{ label: "1", largest: mm(86.73) }] };
    expect(chooseOversize(exact).size).toBe(mm(0.25));
  });

  test("no offered size cleans up: the answer has no size, and names the cylinder that has none", () => {
    const worn = { ...question, cylinders: [...question.cylinders, { label: "2", largest: mm(87.2) }] };
    const answer = chooseOversize(worn);
    expect(answer.size).toBeUndefined();
    expect(answer.boreTo).toBeUndefined();
    expect(answer.cylinders.map(({ size }) => size)).toEqual([mm(0.25), undefined]);
    expect(chooseOversize({ ...question, offered: [] }).size).toBeUndefined();
    expect(chooseOversize({ ...question, cylinders: [] }).size).toBeUndefined();
  });

  test("pistons in hand: the finished size is the measured piston and its clearance", () => {
    const bySize = [{ size: mm(0.25), diameter: mm(86.71) }];
    const answer = chooseOversize({ ...question, pistons: { clearance: mm(0.03), bySize } });
    expect(answer.finished).toBeCloseTo(86.74e-3, 9);
    expect(answer.boreTo).toBeCloseTo(86.72e-3, 9);
  });

  test("an engine bored before counts its sizes from the standard one and its wear from the last boring", () => {
    // bored +0.25 to 86.75, worn to 86.80: the bar on the bored axis needs 86.75 + 2 * 0.05 + 0.02 = 86.87
    const answer = chooseOversize({
      ...question,
      cylinders: [{ label: "1", largest: mm(86.8) }],
      original: mm(86.75),
      nominal: mm(86.5),
      offset: "worst",
    });
    expect(answer.cylinders[0]?.needed).toBeCloseTo(86.87e-3, 9);
    expect(answer.size).toBe(mm(0.5));
    expect(answer.finished).toBeCloseTo(87e-3, 9);
  });

  test("an unworn reading near a size looks bored to it, near standard it does not", () => {
    const offered = [mm(0.25), mm(0.5)];
    expect(alreadyBored(mm(87.03), mm(86.5), offered)).toBe(mm(0.5));
    expect(alreadyBored(mm(86.52), mm(86.5), offered)).toBeUndefined();
    expect(alreadyBored(mm(86.9), mm(86.5), offered)).toBeUndefined();
    // standard is nearer than 0.03 over
    expect(alreadyBored(mm(86.51), mm(86.5), [mm(0.03)])).toBeUndefined();
  });

  test("a bore that reads under its original has no offset", () => {
    expect(barOffset("worst", mm(86.49), mm(86.5))).toBe(0);
    expect(barOffset({ known: mm(0.03) }, mm(86.6), mm(86.5))).toBe(mm(0.03));
  });

  test("stock is taken in the system of the sizes", () => {
    expect(usualHoneStock("um")).toBe(mm(0.02));
    expect(usualHoneStock("thou")).toBe(inch(0.001));
    expect(usualGrindStock("mm")).toBe(mm(0.05));
    expect(usualGrindStock("in")).toBe(inch(0.002));
  });
});

describe("undersize", () => {
  const question = { part: "main", low: mm(57.982), high: mm(58), offered: [mm(0.25)], unit: "mm" } as const;

  test("the bend comes off as well, and beyond the last size there is none", () => {
    const journals = [{ label: "2", smallest: mm(57.81) }];
    expect(chooseUndersize({ ...question, journals })?.size).toBe(mm(0.25));
    const bent = chooseUndersize({ ...question, journals, bend: mm(0.02) });
    expect(bent?.needed).toBeCloseTo(0.26e-3, 9);
    expect(bent).toMatchObject({ part: "main", decidedBy: "2" });
    expect(bent?.size).toBeUndefined();
    expect(chooseUndersize({ ...question, journals: [] })).toBeUndefined();
  });

  test("with the shells in hand the target is their bore less the clearance", () => {
    expect(grindTo(mm(57.8), mm(0.04))).toBeCloseTo(57.76e-3, 12);
  });
});

describe("displacement", () => {
  test("nothing left above the piston is refused", () => {
    expect(() => compressionRatio(volume(5e-4), volume(0))).toThrow("clearance must be above 0 m3");
    const bore = { before: mm(80), after: mm(80) };
    const gasket = { bore: mm(82), before: mm(1), after: mm(1) };
    const work = { bore, gasket, deck: mm(0), deckSkim: mm(20) };
    expect(() => chamberAfterWork(volume(5e-5), work)).toThrow(RangeError);
  });
});

describe("flatness", () => {
  const line = (name: string, gaps: readonly number[], step = 75): FlatLine => ({
    name,
    points: gaps.map((gap, i) => ({ at: mm(i * step), gap: mm(gap) })),
  });

  test("both diagonals are asked for, and a grid too coarse for a short chord cannot tell", () => {
    const found = faceFlatness([line("long1", [0, 0.03, 0], 100), line("diagonal1", [0, 0.02, 0], 100)]);
    expect(found.missingDiagonals).toEqual(["diagonal2"]);
    expect(found.local).toBeUndefined();
    expect(found.overall).toMatchObject({ line: "long1", at: mm(100), gap: mm(0.03) });
  });

  test("a line that stands off at its ends rocks on a crown, and its crown counts under a short chord", () => {
    const found = faceFlatness([line("centre", [0.03, 0, 0.03])]);
    expect(found.crowned).toEqual(["centre"]);
    expect(found.local?.gap).toBeCloseTo(0.03e-3, 12);
    // 1 and a half twice: √1.5
    expect(found.local?.factor).toBeCloseTo(Math.sqrt(1.5), 12);
    expect(faceFlatness([line("centre", [0, 0.03, 0.01])]).crowned).toEqual([]);
  });

  test("the order of the points and points that repeat a place do not matter", () => {
    const points = line("long1", [0, 0.02, 0.04, 0.06]).points;
    const doubled = [...points, ...points.slice(1, 2)].reverse();
    expect(faceFlatness([{ name: "long1", points: doubled }]).local?.gap).toBeCloseTo(0, 12);
    expect(faceFlatness([])).toEqual({ missingDiagonals: ["diagonal1", "diagonal2"], crowned: [] });
  });
});
