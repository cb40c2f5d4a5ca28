// The next test: expected information, effort, order, what is left out. Expected values are worked by hand beside them;
// rates of whole cases stand in worked.test.ts.

import { diagnose, shippedFaults, type Evidence, type Faults, type FurtherTest } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import {
  expectedInformation,
  outcomesOf,
  together,
} from "../../../packages/core/src/diagnosis/next/information.ts";
import { openTests } from "../../../packages/core/src/diagnosis/next/open-tests.ts";
import {
  effortOf,
  isEnough,
  quickestFirst,
} from "../../../packages/core/src/diagnosis/next/proposed-tests.ts";
import { four } from "./four-cylinders.ts";
import { psi } from "./worked-evidence.ts";

const faults = shippedFaults();
const causes = (["top", "bottom", "bottom"] as const).map((group) => ({
  ...{ code: group, name: group, group, status: "judgement" as const, source: "invented" },
}));

describe("expected information", () => {
  test.each([
    [
      "a test that always tells two equal groups apart",
      [0.5, 0.5, 0],
      [
        [1, 0],
        [0, 1],
        [0, 1],
      ],
      1,
    ],
    [
      "a test that comes out the same with all",
      [0.5, 0.5, 0],
      [
        [0.3, 0.7],
        [0.3, 0.7],
        [0.3, 0.7],
      ],
      0,
    ],
    [
      "a test that tells only causes of one group apart",
      [0, 0.5, 0.5],
      [
        [0.5, 0.5],
        [1, 0],
        [0, 1],
      ],
      0,
    ],
    // 1 − H(.75) = 1 − .811278
    [
      "a test right three times in four",
      [0.5, 0.5, 0],
      [
        [0.75, 0.25],
        [0.25, 0.75],
        [0.5, 0.5],
      ],
      0.188722,
    ],
    // yes .59, of it .45 top; no .41, of it .05 top: 1 − .59·.790501 − .41·.534944
    [
      "a test of three causes",
      [0.5, 0.3, 0.2],
      [
        [0.9, 0.1],
        [0.2, 0.8],
        [0.4, 0.6],
      ],
      0.314277,
    ],
  ])("%s is worth its bits", (_, chances, outcomes, bits) => {
    expect(expectedInformation(chances, outcomes, { causes })).toBeCloseTo(bits, 6);
  });

  test("outcomes of a finding that leans on one already there are flattened by its weight", () => {
    // a second of a kind: weight 3/4; .9^.75 = .924021, .1^.75 = .177828, brought back to 1: over 1.101849
    const invented: Faults = {
      ...faults,
      findings: {
        ...faults.findings,
        wet: {
          ...faults.findings.wet,
          classes: ["none", "strong"],
          columns: [{ chances: [0.9, 0.1], link: "judgement", source: "invented" }],
        },
      },
    };
    expect(outcomesOf("wet", ["level", "path"], invented)).toEqual([
      [expect.closeTo(0.9, 12), expect.closeTo(0.1, 12)],
    ]);
    expect(outcomesOf("wet", ["level", "first-stroke"], invented)).toEqual([
      [expect.closeTo(0.83861, 6), expect.closeTo(0.16139, 6)],
    ]);
  });

  test("two findings of one test come out in every combination", () => {
    expect(together([[0.5, 0.5]], [[0.2, 0.8]])).toEqual([[0.1, 0.4, 0.1, 0.4]]);
  });
});

const named = (code: string): FurtherTest => {
  const found = faults.tests.find((one) => one.code === code);
  if (found === undefined) throw new Error(`no test ${code}`);
  return found;
};

test("effort is minutes, ten for a step of risk, twenty for a tool not owned", () => {
  // minutes and risks: handbook/diagnosis.md 6, judgement
  expect(effortOf(named("repeat"), [])).toBe(5);
  expect(effortOf(named("leak-down-and-listen"), [])).toBe(25 + 20 + 20);
  expect(effortOf(named("leak-down-and-listen"), ["leak-down tester"])).toBe(25 + 20);
});

describe("the order", () => {
  const proposed = (rate: number, risk: 0 | 1 | 2, minutes: number) =>
    ({ test: { ...named("repeat"), risk, minutes }, bits: rate, bitsPerHour: rate, effort: 60 }) as const;
  const rates = (...tests: readonly ReturnType<typeof proposed>[]) =>
    quickestFirst(tests).map(({ bitsPerHour }) => bitsPerHour);

  test("is by bits an hour", () => {
    expect(rates(proposed(0.1, 0, 5), proposed(0.5, 2, 25), proposed(0.3, 1, 5))).toEqual([0.5, 0.3, 0.1]);
  });

  test("within a tenth of the best goes by risk, then by minutes", () => {
    expect(
      rates(proposed(1, 1, 5), proposed(0.92, 0, 20), proposed(0.91, 0, 10), proposed(0.89, 0, 1)),
    ).toEqual([0.91, 0.92, 1, 0.89]);
  });

  test("below the best tie is strict", () => {
    expect(rates(proposed(1, 0, 5), proposed(0.5, 2, 5), proposed(0.49, 0, 5))).toEqual([1, 0.5, 0.49]);
  });

  test("keeps that of the table for tests alike", () => {
    const [one, other] = [proposed(0.5, 1, 5), proposed(0.5, 1, 5)];
    expect(quickestFirst([one, other])[0]).toBe(one);
    expect(quickestFirst([other, one])[0]).toBe(other);
  });

  test("ends where no test is worth a twentieth of a bit", () => {
    expect(isEnough([proposed(0.049, 0, 5), proposed(0.01, 0, 5)])).toBe(true);
    expect(isEnough([proposed(0.051, 0, 5)])).toBe(false);
    expect(isEnough([])).toBe(true);
  });
});

const openOn = (more: Evidence["cylinders"][number], evidence = four): readonly string[] =>
  openTests(
    2,
    {
      ...evidence,
      cylinders: evidence.cylinders.map((one, i) => (i === 2 ? { ...one, ...more } : one)),
    },
    faults,
  ).map(({ test: { code } }) => code);

describe("tests that are left out", () => {
  test.each([
    ["cranking", {}],
    ["repeat", { dry: [110 * psi, 112 * psi] }],
    ["wet", { wet: 118 * psi }],
    ["first-stroke", { firstStroke: 50 * psi }],
    ["lash", { seen: { lash: "right" } }],
    ["borescope", { seen: { borescope: "nothing" } }],
    ["leak-down-and-listen", { leak: { alpha: 1.2 }, heard: [] }],
    ["leak-down-lower-down", { leak: { alpha: 1.2 }, lower: 0.9 }],
    ["running", { running: 50 * psi }],
    ["retest-warm", { seen: { warm: "same" } }],
  ] as const)("%s, once it was taken on the target", (code, more) => {
    expect(openOn(more)).not.toContain(code);
  });

  test.each([
    ["wet", "diesel"],
    ["wet", "oil not allowed"],
    ["wet", "oil above half the chamber"],
    ["lash", "no valves"],
    ["coolant", "air-cooled"],
    ["running", "does not run"],
    ["leak-down-and-listen", "crank cannot be held"],
    ["release", "no release"],
  ] as const)("%s, where it is blocked: %s", (code, obstacle) => {
    expect(openOn({}, { ...four, obstacles: [] })).toContain(code);
    expect(openOn({}, { ...four, obstacles: [obstacle] })).not.toContain(code);
  });

  test("what only goes on from a leak-down, before there is one", () => {
    expect(openOn({})).not.toContain("re-seat-and-repeat");
    expect(openOn({ leak: { alpha: 1.2 } })).toContain("re-seat-and-repeat");
  });

  test("re-indexing the neighbour, unless air was heard there", () => {
    const leak = { alpha: 1.2 };
    expect(openOn({ leak, heard: [{ place: "exhaust", faint: false }] })).not.toContain(
      "re-index-the-neighbour",
    );
    expect(openOn({ leak, heard: [{ place: "neighbour", faint: false }] })).toContain(
      "re-index-the-neighbour",
    );
  });

  test("what compares with a dry reading, where there is none", () => {
    const leaks = { ...four, cylinders: four.cylinders.map(() => ({ leak: { alpha: 1.2 } })) };
    const open = openOn({}, leaks);
    for (const code of ["wet", "first-stroke", "repeat", "second-gauge", "conditions"])
      expect(open).not.toContain(code);
    expect(open).toContain("cranking");
  });

  test("the first stroke of a single, which has no fellows", () => {
    const { tests } = diagnose({ ...four, cylinders: [{ dry: [90 * psi] }], banks: [[0]] });
    expect(tests.map(({ test: { code } }) => code)).not.toContain("first-stroke");
  });
});

test("a leak measured without listening still leaves the listening", () => {
  const open = openTests(0, { ...four, cylinders: [{ leak: { alpha: 1.2 } }] }, faults);
  expect(open.find(({ test: { code } }) => code === "leak-down-and-listen")?.fresh).toEqual(["path"]);
});

test("a new finding does not lean on one that tells nothing", () => {
  // the only running reading has no fellows to be compared with; the bits of a cranking test stay what they were
  const leaks: Evidence = { ...four, cylinders: [{ leak: { alpha: 1.2 } }, {}], banks: [[0, 1]] };
  const lone = { ...leaks, cylinders: [{ leak: { alpha: 1.2 }, running: 60 * psi }, {}] };
  const bitsOf = (evidence: Evidence) =>
    diagnose(evidence).tests.find(({ test: { code } }) => code === "cranking")?.bits;
  expect(bitsOf(leaks)).toBeGreaterThan(0);
  expect(bitsOf(lone)).toBe(bitsOf(leaks));
});
