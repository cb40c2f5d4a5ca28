// Target, what is shown, what the readings can carry, which cylinders a cause is about. Expected values are worked by hand or
// computed in handbook/diagnosis.md, as said beside them.

import { diagnose, shippedFaults, type Evidence } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { cylindersOf } from "../../../packages/core/src/diagnosis/answer/cause-cylinders.ts";
import { evenLossOf } from "../../../packages/core/src/diagnosis/answer/direct.ts";
import { groupEntropy, groupsOf } from "../../../packages/core/src/diagnosis/answer/groups.ts";
import { shownAs } from "../../../packages/core/src/diagnosis/answer/shown.ts";
import { targetOf } from "../../../packages/core/src/diagnosis/answer/target.ts";
import { four } from "./four-cylinders.ts";
import { psi } from "./worked-evidence.ts";

const faults = shippedFaults();
const withThird = (more: Evidence["cylinders"][number]): Evidence => ({
  ...four,
  cylinders: four.cylinders.map((one, i) => (i === 2 ? { ...one, ...more } : one)),
});

describe("what is shown", () => {
  test.each([
    // probability, low, high to two digits: handbook/diagnosis.md 5.3, computed
    [0.281, 0.12, 0.54],
    [0.77, 0.53, 0.91],
  ])("a chance of %f is shown with odds a third and three times as high", (probability, low, high) => {
    const shown = shownAs(probability, 1, faults);
    expect([shown.shown, shown.low, shown.high].map((one) => Number(one.toFixed(2)))).toEqual([
      Number(probability.toFixed(2)),
      low,
      high,
    ]);
  });

  test.each([
    [1, "very likely"],
    [0.9, "very likely"],
    [0.899, "probable"],
    [0.65, "probable"],
    [0.35, "possible"],
    [0.1, "less likely"],
    [0.0999, "unlikely"],
    [0, "unlikely"],
  ])("a chance of %f is called %s", (probability, word) => {
    expect(shownAs(probability, 1, faults).word).toBe(word);
  });

  test("above the cap the word and the odds are those of the cap", () => {
    // odds of .80 are 4 to 1: 4/3 to 1 is .571, 12 to 1 is .923
    const shown = shownAs(0.991, 0.8, faults);
    expect(shown).toMatchObject({ shown: 0.8, word: "probable" });
    expect(shown.low).toBeCloseTo(4 / 7, 12);
    expect(shown.high).toBeCloseTo(12 / 13, 12);
  });
});

describe("the target", () => {
  const sound = (...chances: readonly number[]): readonly (readonly number[])[] =>
    chances.map((chance) => [chance, 1 - chance]);

  test("the cylinder with the largest chance of a fault is the target", () => {
    expect(targetOf(sound(0.9, 0.2, 0.7, 0.9), four, faults)).toBe(1);
  });

  test("of cylinders alike to a thousandth the one that reads lowest is the target", () => {
    expect(targetOf(sound(0.0421, 0.0424, 0.0419, 0.042), four, faults)).toBe(2);
  });

  test("where nothing was cranked the one that leaks most is the target, else the first", () => {
    const leaks = [0.2, 0.9, 1.1].map((alpha) => ({ leak: { alpha } }));
    expect(targetOf(sound(0.5, 0.5, 0.5), { ...four, cylinders: leaks }, faults)).toBe(2);
    expect(targetOf(sound(0.5, 0.5, 0.5), { ...four, cylinders: [{}, {}, {}] }, faults)).toBe(0);
  });
});

test("a group has what its causes have together, and how undecided it is is counted in bits", () => {
  const causes = (["nothing", "top", "bottom", "top"] as const).map((group) => ({
    ...{ code: group, name: group, group, status: "judgement", source: "" },
  })) satisfies typeof faults.causes;
  const groups = groupsOf([0.5, 0.125, 0.25, 0.125], { causes });
  expect(groups).toEqual({ top: 0.25, bottom: 0.25, test: 0, nothing: 0.5, unlisted: 0 });
  // .5·1 + .25·2 + .25·2
  expect(groupEntropy(groups)).toBe(1.5);
});

describe("what the readings can carry", () => {
  test.each([
    ["with oil", { wet: 118 * psi }],
    ["the first stroke", { firstStroke: 60 * psi }],
    ["repeats", { dry: [110 * psi, 111 * psi] }],
    ["the years", { onset: "sudden" }],
    ["another gauge", { seen: { "second-gauge": "same" } }],
    ["a warm retest", { seen: { warm: "same" } }],
  ] as const)("%s is still a gauge while cranking: no cause is shown above the cap", (_, more) => {
    expect(diagnose(withThird(more)).capped).toBe(true);
  });

  test.each([
    ["a leak", { leak: { alpha: 1.2 } }],
    ["where air came out", { heard: [] }],
    ["the leak with oil", { oiled: 0.7 }],
    ["the leak lower down", { lower: 0.9 }],
    ["a look inside", { seen: { borescope: "valve" } }],
    ["the lash", { seen: { lash: "tight" } }],
  ] as const)("%s on the target lifts the cap", (_, more) => {
    expect(diagnose(withThird(more)).capped).toBe(false);
  });

  test("a leak-down of another cylinder, a sign and gas in the coolant do not lift the cap of the target", () => {
    const cylinders = four.cylinders.map((one, i) => (i === 0 ? { ...one, leak: { alpha: 0.3 } } : one));
    expect(diagnose({ ...four, cylinders }).capped).toBe(true);
    expect(diagnose({ ...four, signs: { "blow-by": "present" } }).capped).toBe(true);
    expect(diagnose({ ...four, gas: "positive" }).capped).toBe(true);
  });

  test("gas in the coolant of an engine of one cylinder is direct evidence on it", () => {
    const single: Evidence = { ...four, cylinders: [{ dry: [90 * psi] }], banks: [[0]], sharedGasket: false };
    expect(diagnose(single).capped).toBe(true);
    expect(diagnose({ ...single, gas: "negative" }).capped).toBe(false);
  });

  test("an even loss is seen by dry readings with an expectation, or by a leak-down alone on a known bore", () => {
    const leaks = { ...four, cylinders: [{ leak: { alpha: 0.4 } }] };
    expect(evenLossOf(four)).toBe("cannot be seen");
    expect(evenLossOf({ ...four, expected: { level: 150 * psi, from: "maker" } })).toBe("can be seen");
    expect(evenLossOf(leaks)).toBe("can be seen");
    expect(evenLossOf({ ...leaks, restrictor: "unknown" })).toBe("cannot be seen");
  });

  test("without an expectation even readings are never shown as more than probably sound", () => {
    const even = { ...four, cylinders: [150, 151, 149, 150].map((value) => ({ dry: [value * psi] })) };
    const [first] = diagnose(even).causes;
    expect(first).toMatchObject({ code: "no-fault", shown: 0.8, word: "probable" });
    const [known] = diagnose({ ...even, expected: { level: 150 * psi, from: "baseline" } }).causes;
    expect(known?.shown).toBe(known?.probability);
  });
});

describe("which cylinders a cause is about", () => {
  const states = [
    { id: "all wear", cause: "wear", probability: 0.3 },
    { id: "some valves", cause: "valves", probability: 0.5 },
    { id: "bank 2 bent", cause: "bent", probability: 0.4 },
  ];
  const pairs = [
    { cylinders: [0, 1], probability: 0.1 },
    { cylinders: [1, 2], probability: 0.2 },
  ] as const;
  // causes: wear, valves, bent
  const cylinders = [
    [0.4, 0.3, 0.1],
    [0.5, 0.6, 0.6],
    [0.4, 0.7, 0.1],
    [0.4, 0.2, 0.7],
  ];
  const about = (place: number, code: string, target: number): readonly number[] =>
    cylindersOf({ place, code }, target, {
      posterior: { cylinders, states, pairs, testerShift: 0 },
      banks: [
        [0, 2],
        [1, 3],
      ],
    });

  test("one that mostly comes with the engine is about all", () => {
    expect(about(0, "wear", 1)).toEqual([0, 1, 2, 3]);
  });

  test("one that meets some cylinders is about those where it is likelier than not, and the target", () => {
    expect(about(1, "valves", 0)).toEqual([0, 1, 2]);
  });

  test("one of a bank is about that bank, never about the other", () => {
    expect(about(2, "bent", 1)).toEqual([1, 3]);
    expect(about(2, "bent", 2)).toEqual([2]);
  });

  test("a gasket is about the likeliest pair that holds the target", () => {
    expect(about(3, "gasket-to-neighbour", 1)).toEqual([1, 2]);
    expect(about(3, "gasket-to-neighbour", 0)).toEqual([0, 1]);
  });

  test("one of the cylinder alone is about the target", () => {
    expect(about(0, "lash", 3)).toEqual([3]);
  });
});
