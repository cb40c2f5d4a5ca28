import { describe, expect, test } from "vitest";
import { blunder, classDensities, mixed } from "../../../packages/core/src/diagnosis/model/classes.ts";
import { pathClasses } from "../../../packages/core/src/diagnosis/model/path.ts";
import { weightAmong } from "../../../packages/core/src/diagnosis/model/weights.ts";

const between = (low: number, high: number) => ({ kind: "between", low, high }) as const;
const level = [
  between(0, 0.15),
  between(0.15, 0.5),
  between(0.5, 0.85),
  between(0.85, 0.95),
  { kind: "around", middle: 1, deviation: 0.025 } as const,
  between(1.08, 1.35),
];

// computed in the handbook (diagnosis.md 3), no published value; u = √((.015ρ)² + .004²): dead, very low, low, slight, normal, high
test.each([
  [0.72, [0, 0, 2.8571, 0, 0, 0]],
  [0.84, [0, 0, 2.2152, 2.2469, 0, 0]],
  [0.86, [0, 0, 0.6558, 7.7048, 0.0001, 0]],
  [0.9, [0, 0, 0.0005, 9.9962, 0.032, 0]],
  [0.97, [0, 0, 0, 0.9252, 8.0597, 0]],
  [1.12, [0, 0, 0, 0, 0.0054, 3.6657]],
])("a reading of %s of the level is spread over the classes by its own doubt", (ratio, expected) => {
  const u = Math.hypot(0.015 * ratio, 0.004);
  classDensities(level, ratio, u).forEach((density, i) => {
    expect(density - blunder).toBeCloseTo(expected[i] ?? Number.NaN, 3);
  });
});

test("a class that a reading lies deep in has the density of an even spread", () => {
  expect(mixed([0, 0, 1, 0, 0, 0], classDensities(level, 0.65, 0.01))).toBeCloseTo(1 / 0.35 + blunder, 9);
});

test("two findings of one kind carry 1.5 and three 1.8 of one alone", () => {
  expect(2 * weightAmong(2, 1 / 3)).toBeCloseTo(1.5, 12);
  expect(3 * weightAmong(3, 1 / 3)).toBeCloseTo(1.8, 12);
  expect(weightAmong(1, 1 / 3)).toBe(1);
});

describe("where the air was heard", () => {
  const classes = ["crankcase", "exhaust", "intake", "neighbour", "coolant", "plug", "none"];
  const of = (
    ...places: readonly (readonly ["crankcase" | "exhaust" | "intake" | "outside" | "none", boolean?])[]
  ) =>
    pathClasses(
      places.map(([place, faint = false]) => ({ place, faint })),
      classes,
    );
  test("the crankcase is dropped where another place is named with it", () => {
    expect(of(["crankcase"], ["exhaust"])).toEqual([0, 1, 0, 0, 0, 0, 0]);
    expect(of(["crankcase"])).toEqual([1, 0, 0, 0, 0, 0, 0]);
  });
  test("several places share the weight", () => {
    expect(of(["intake"], ["exhaust"])).toEqual([0, 0.5, 0.5, 0, 0, 0, 0]);
  });
  test("a faint hiss counts only where nothing loud was heard", () => {
    expect(of(["intake", true], ["exhaust"])).toEqual([0, 1, 0, 0, 0, 0, 0]);
    expect(of(["intake", true])).toEqual([0, 0, 1, 0, 0, 0, 0]);
  });
  test("outside counts as the plug, and nothing heard is a finding", () => {
    expect(of(["outside"])).toEqual([0, 0, 0, 0, 0, 1, 0]);
    expect(of()).toEqual([0, 0, 0, 0, 0, 0, 1]);
    expect(of(["none"])).toEqual([0, 0, 0, 0, 0, 0, 1]);
  });
});
