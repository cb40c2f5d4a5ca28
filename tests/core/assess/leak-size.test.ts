// How large a leak is said to be, through a logbook. Expected values: handbook/leakdown.md H.3 and H.2, computed there
// from published flow formulas by a program of its own; none is published.

import { type LeakValue } from "@sealtrend/core";
import { describe, expect, test } from "vitest";
import { type Row, assessed, cylinder, standings } from "./records.ts";

const columns =
  "gauge,kind,unit,full_scale,class_percent,division,restrictor_mm,restrictor_tol_mm,dial,regulated,matched,known_holes";
const gauges = (...rows: readonly string[]): string => [columns, ...rows, ""].join("\n");
/** Dials of 100 psi within 2 psi, divisions of 1 psi, 0.040 in within 0.001 in. */
const usual = "leaky,leak-down,psi,100,2,1,1.016,0.0254,pressure,,,";
const matched = "leaky,leak-down,psi,100,2,1,1.016,0.0254,pressure,,yes,";

const day = (cells: string, more: Partial<Row> = {}): Row => ({
  test: "2026-05-02a",
  what: "leak-down",
  cells,
  gauge: "leaky",
  regulated_psi: "80",
  altitude_m: "0",
  ...more,
});

const leakOf = (row: Row, tester = usual): LeakValue => {
  const { leakDown } = cylinder(assessed({ cylinders: 1, tests: [row], gauges: gauges(tester) }), "1");
  if (leakDown === undefined) throw new Error("no leak-down");
  return leakDown;
};

const figuresOf = (row: Row, tester = usual) => {
  const { judgement } = leakOf(row, tester).sizing;
  if (judgement?.kind !== "measured") throw new Error(judgement?.kind ?? "no figures");
  const { alpha, uAlpha, uLost, size } = judgement.figures;
  return {
    alpha,
    uAlpha,
    uLost: uLost * 100,
    hole: (size?.equalHole ?? 0) * 1e3,
    uHole: (size?.uEqualHole ?? 0) * 1e3,
    area: (size?.area ?? 0) * 1e6,
    uArea: (size?.uArea ?? 0) * 1e6,
  };
};

const close = (value: number, digits: number): unknown => expect.closeTo(value, digits);

describe("the size of a leak behind a known restrictor", () => {
  test("60/80 through 1.016 mm is a hole of 1.045 mm (H.3 #1)", () => {
    expect(figuresOf(day("60"))).toEqual({
      alpha: close(1.0586, 4),
      uAlpha: close(0.0499, 4),
      uLost: close(1.86, 2),
      hole: close(1.045, 3),
      uHole: close(0.029, 3),
      area: close(0.704, 3),
      uArea: close(0.056, 3),
    });
  });

  test("dials that agree with the valve shut leave less in doubt: 72/80 (H.3 #2)", () => {
    expect(figuresOf(day("72"), matched)).toMatchObject({
      alpha: close(0.6253, 4),
      uAlpha: close(0.0235, 4),
      uLost: close(0.69, 2),
      hole: close(0.803, 3),
      uHole: close(0.019, 3),
      area: close(0.416, 3),
      uArea: close(0.031, 3),
    });
    expect(figuresOf(day("72"))).toMatchObject({
      uLost: close(2.0, 2),
      uAlpha: close(0.0684, 4),
      uHole: close(0.045, 3),
    });
  });

  test("78/80 is tighter than these dials can show: at most a hole of 0.722 mm, and no leak is named (H.3 #3)", () => {
    const { judgement } = leakOf(day("78")).sizing;
    expect(judgement).toMatchObject({ kind: "tight", limit: { equalHole: close(0.000722, 6) } });
    expect(judgement).not.toHaveProperty("figures");
  });

  // H.3 #4 with the warm factor left out, as tests made the same way compare: 0.9387 is printed there for it.
  test("metric dials at a height: 440/550 kPa through 1.00 mm, and what warmth would add is said apart (H.3 #4)", () => {
    const tester = "leaky,leak-down,kPa,700,1.6,10,1.00,0.02,pressure,,,";
    const row = day("440", {
      unit: "kPa",
      regulated_psi: "",
      regulated_kPa: "550",
      altitude_m: "1500",
      engine_temp_C: "80",
      air_temp_C: "20",
    });
    expect(figuresOf(row, tester)).toMatchObject({ alpha: close(0.9387, 4), uLost: close(1.65, 2) });
    const { leak } = assessed({ cylinders: 1, tests: [row], gauges: gauges(tester) });
    expect(leak?.warmthFactor).toBeCloseTo(1.0976, 4); // sqrt(353.15/293.15); 0.9387 x 1.0976 = 1.0303
  });

  test("open holes of known size take the place of a restrictor, inside their span only (H.3 #8)", () => {
    // class 1 of 100 psi, a division too fine to count: u 0.577 psi
    const tester =
      "leaky,leak-down,psi,100,1,0.02,unknown,,pressure,,,0.80mm:74psi 1.00mm:66psi 1.25mm:52psi";
    const { byHoles } = leakOf(day("61"), tester).sizing;
    expect(byHoles).toEqual({ kind: "measured", hole: close(0.001083, 6), uHole: close(0.000013, 6) });
    expect(leakOf(day("75"), tester).sizing.byHoles).toMatchObject({ kind: "outside" });
    expect(leakOf(day("50"), tester).sizing.byHoles).toMatchObject({ kind: "outside" });
  });
});

describe("one open hole of known size", () => {
  // check values 12 and 13 (computed): a hole like the restrictor reads 61.767/80, and 60/80 is 1.05856 of it, so
  // 1.016 mm x sqrt(1.05856) = 1.0453 mm
  const tester = "leaky,leak-down,psi,100,2,1,unknown,,pressure,80psi,,1.016mm:61.767psi";

  test("serves as a master: the hole is known though the restrictor is not", () => {
    const { byHoles, judgement } = leakOf(day("60"), tester).sizing;
    expect(byHoles).toMatchObject({ kind: "measured", hole: close(0.0010453, 6) });
    expect(judgement).toBeUndefined();
  });

  test("tells nothing of a cylinder tighter than the dials show", () => {
    expect(leakOf(day("79"), tester).sizing).toEqual({});
  });
});

describe("what a reading does not tell is not said", () => {
  test("a percent through a restrictor that nobody knows has no size at all (H.2 a)", () => {
    const { sizing, lost } = leakOf(
      day("18", { unit: "%", regulated_psi: "" }),
      "leaky,leak-down,%,,,,unknown,,percent-lost,,,",
    );
    expect(lost).toBeCloseTo(0.18, 12);
    expect(sizing).toEqual({});
    expect(leakOf(day("18", { unit: "%" }), "other,leak-down,psi,,,,,,,,,").sizing).toEqual({});
  });

  test("a percent behind a known restrictor without its supply has a range only (H.2 e)", () => {
    const { sizing } = leakOf(
      day("18", { unit: "%", regulated_psi: "" }),
      "leaky,leak-down,%,,,,1.016,,percent-lost,,,",
    );
    expect(sizing.judgement).toBeUndefined();
    expect(sizing.alphaSpan?.low).toBeLessThan(sizing.alphaSpan?.high ?? 0);
  });

  test("a dial of percent held reads as what is lost of the supply it is set to", () => {
    const tester = "leaky,leak-down,%,,,,1.016,0.0254,percent-held,80psi,,";
    expect(figuresOf(day("75", { unit: "%", regulated_psi: "" }), tester)).toMatchObject({
      alpha: close(1.0586, 4),
      hole: close(1.045, 3),
    });
  });

  test("nothing at the cylinder is no seal measurable, and no size", () => {
    expect(leakOf(day("0")).sizing.judgement).toEqual({ kind: "no-seal" });
    expect(leakOf(day("2")).sizing.judgement).toEqual({ kind: "no-seal" });
  });

  test("a cylinder above its supply has no negative leak: the gauges disagree, and the test is doubtful", () => {
    const found = assessed({ tests: [day("82 74 75 73")], gauges: gauges(usual) });
    expect(cylinder(found, "1").leakDown?.lost).toBe(0);
    expect(found.trust).toMatchObject({
      code: "doubtful",
      reasons: [
        {
          code: "dials-disagree",
          text: expect.stringContaining("the gauges disagree: in cylinder 1") as string,
        },
      ],
    });
    const sure = assessed({ tests: [day("82 74 75 73")], gauges: gauges(matched) });
    expect(cylinder(sure, "1").leakDown?.sizing.judgement).toMatchObject({ kind: "disagree" });
    expect(assessed({ tests: [day("81 74 75 73")], gauges: gauges(usual) }).trust.code).toBe("trusted");
  });

  test("cylinders tighter than the dials can show have no order among them", () => {
    const coarse = "leaky,leak-down,psi,100,5,1,1.016,0.0254,pressure,,,"; // u of a drop 4.1 psi
    expect(standings(assessed({ tests: [day("79 79 79 73")], gauges: gauges(coarse) }))).toEqual([
      "even",
      "even",
      "even",
      "even",
    ]);
  });
});

describe("a master orifice read that day", () => {
  test("63/80 beside a master of 44/80 uses 61 % of what it allows (H.3 #5)", () => {
    const { master } = leakOf(day("63", { master_psi: "44" }));
    expect(master).toMatchObject({ kind: "margin", margin: close(0.605, 3), uMargin: close(0.032, 3) });
  });

  test("the margin is fair though neither restrictor nor supply is known: 18 % against 45 % (H.2 e)", () => {
    const { master, sizing } = leakOf(
      day("18", { unit: "%", regulated_psi: "", master_percent: "45" }),
      "other,leak-down,psi,,,,,,,,,",
    );
    expect(sizing).toEqual({});
    expect(master).toEqual({ kind: "span", low: close(0.546, 3), high: close(0.569, 3) });
  });

  test("the master's reading is the limit, and no percent of another family stands beside it", () => {
    const engine = { use: "aircraft", geometry: { bore: "4.4in" } };
    const rules = (master: string) =>
      assessed({ engine, tests: [day("63 70 44 72", { master_psi: master })], gauges: gauges(usual) }).rules;
    expect(rules("43").map(({ id, verdict, cylinder: worst }) => [id, verdict, worst])).toEqual([
      ["master", "near", "3"],
    ]);
    expect(rules("").map(({ id, verdict }) => [id, verdict])).toEqual([["ac25-small", "not-met"]]);
  });

  test("a cylinder that leaks more than the master lags", () => {
    const found = assessed({ tests: [day("63 70 30 72", { master_psi: "43" })], gauges: gauges(usual) });
    expect(cylinder(found, "3").leakDown).toMatchObject({ belowLimit: true, standing: "lagging" });
  });
});
