// Two faults in one cylinder. Expected odds are worked by hand beside them.

import { diagnose, shippedFaults, type Evidence, type Faults } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { extreme, twoFaultsOf } from "../../../packages/core/src/diagnosis/answer/two-faults.ts";
import type { Observed } from "../../../packages/core/src/diagnosis/model/observed.ts";
import { four } from "./four-cylinders.ts";

const shipped = shippedFaults();
const about = { link: "judgement", source: "invented" } as const;
const cause = (code: string, group: "nothing" | "bottom" | "top") =>
  ({ code, name: code, group, status: "judgement", source: "invented" }) as const;

/** Three causes; gains and leaks of four classes; all invented. */
const faults: Faults = {
  ...shipped,
  causes: [
    cause("no-fault", "nothing"),
    cause("worn-rings-or-bore", "bottom"),
    cause("exhaust-valve", "top"),
  ],
  findings: {
    ...shipped.findings,
    wet: {
      ...shipped.findings.wet,
      columns: [
        { chances: [0.9, 0.08, 0.01, 0.01], ...about },
        { chances: [0.1, 0.1, 0.3, 0.5], ...about },
        { chances: [0.9, 0.08, 0.01, 0.01], ...about },
      ],
    },
    leak: {
      ...shipped.findings.leak,
      columns: [
        { chances: [0.97, 0.01, 0.01, 0.01], ...about },
        { chances: [0.3, 0.3, 0.3, 0.1], ...about },
        { chances: [0.05, 0.05, 0.1, 0.8], ...about },
      ],
    },
  },
};
/** A strong gain (density 4) and a gross leak (density 2). */
const observed: readonly Observed[] = [
  {
    finding: "wet",
    cylinder: 0,
    word: "strong",
    weight: 1,
    classes: [0, 0, 0, 4],
    likelihood: [0.04, 2, 0.04],
  },
  {
    finding: "leak",
    cylinder: 0,
    word: "gross",
    weight: 1,
    classes: [0, 0, 0, 2],
    likelihood: [0.02, 0.2, 1.6],
  },
];
const context = { faults, priors: [0.93, 0.02, 0.05], chances: [0.01, 0.7, 0.29], misfits: [] };

describe("two faults", () => {
  test("are told of where both together explain what neither explains alone", () => {
    // rings .02·2·.2 = .008, valve .05·.04·1.6 = .0032; both .02·.05·3 = .003, times
    // gain 4·(1 − .5·.99) = 2.02, leak 2·(1 − .9·.2) = 1.64: .0099384; odds 1.2423
    const two = twoFaultsOf(observed, {}, context);
    expect(two?.causes.toSorted()).toEqual(["exhaust-valve", "worn-rings-or-bore"]);
    expect(two?.odds).toBeCloseTo(1.2423, 4);
  });

  test("are likelier where a hiss in the crankcase was heard beside another path", () => {
    // times .90/.55
    const heard = [
      { place: "crankcase", faint: true },
      { place: "exhaust", faint: false },
    ] as const;
    expect(twoFaultsOf(observed, { heard }, context)?.odds).toBeCloseTo((1.2423 * 0.9) / 0.55, 3);
    expect(twoFaultsOf(observed, { heard: [heard[0]] }, context)?.odds).toBeCloseTo(1.2423, 4);
  });

  test("are held against whatever leads: a pair or a state of the engine explains it better", () => {
    // the best single one is the rings at .1, something else leads at .8: an eighth, .155, told of only beside a misfit
    const chances = [0.8, 0.1, 0.1];
    expect(twoFaultsOf(observed, {}, { ...context, chances })).toBeUndefined();
    const misfit = { finding: "wet", word: "strong", ratio: 0.1, link: "judgement", source: "" } as const;
    expect(twoFaultsOf(observed, {}, { ...context, chances, misfits: [misfit] })?.odds).toBeCloseTo(
      1.2423 / 8,
      4,
    );
  });

  test("are not told of with nothing found", () => {
    expect(twoFaultsOf([], {}, context)).toBeUndefined();
    expect(twoFaultsOf([], {}, { ...context, priors: [1, 0, 0] })).toBeUndefined();
  });
});

test("the worse of two draws is told by the sums up to each class", () => {
  // sums .5 .8 1 and .2 .7 1; at the low end 1 − .5·.8, 1 − .2·.3, 1; at the high end .1, .56, 1
  const one = [0.5, 0.3, 0.2];
  const other = [0.2, 0.5, 0.3];
  const close = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 12) as number);
  expect(extreme(one, other, "first")).toEqual(close([0.6, 0.34, 0.06]));
  expect(extreme(one, other, "last")).toEqual(close([0.1, 0.46, 0.44]));
});

const psi = 6894.757293168;
test("oil that lifts a low cylinder while air also blows out of the exhaust is told as two faults", () => {
  // rings by the oil, a valve by the ear: no cause of the tables brings both often (handbook/trade.md C2, C3)
  const evidence: Evidence = {
    ...four,
    cylinders: [150, 152, 100, 149].map((value, i) => ({
      dry: [value * psi],
      ...(i === 2
        ? {
            wet: 150 * psi,
            leak: { alpha: 1.9 },
            heard: [
              { place: "exhaust", faint: false },
              { place: "crankcase", faint: false },
            ] as const,
          }
        : {}),
    })),
  };
  const { twoFaults, misfits } = diagnose(evidence);
  expect(misfits).toContainEqual(expect.objectContaining({ finding: "wet" }));
  expect(twoFaults?.causes).toContain("exhaust-valve");
});
