// Reasons for and against, misfits. Expected values are worked by hand beside them.

import { diagnose, shippedFaults, type Evidence } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { misfitsOf } from "../../../packages/core/src/diagnosis/answer/misfits.ts";
import { reasonsOf, signWitnesses } from "../../../packages/core/src/diagnosis/answer/reasons.ts";
import { signsSeen } from "../../../packages/core/src/diagnosis/model/signs.ts";
import { four } from "./four-cylinders.ts";
import { psi } from "./worked-evidence.ts";

const faults = shippedFaults();
const link = { link: "published", source: "some-manual" } as const;
const heard = (likelihood: readonly number[], weight = 1) =>
  ({
    finding: "path",
    cylinder: 0,
    word: "exhaust",
    likelihood,
    weight,
    links: likelihood.map(() => link),
  }) as const;

describe("a reason", () => {
  test("is measured against the mix that the others would be without it", () => {
    // before: q/L = .5/.8, .25/.1, .25/.4 = .625, 2.5, .625
    // for the first: .8·(2.5 + .625)/(.25 + .25) = 5; second: .1·1.25/.75 = 1/6; third: .4·3.125/.75 = 5/3, no reason
    const witness = heard([0.8, 0.1, 0.4]);
    const of = (cause: number) => reasonsOf(cause, [0.5, 0.25, 0.25], [witness]);
    expect(of(0)).toEqual({
      for: [
        { finding: "path", cylinder: 0, word: "exhaust", ratio: expect.closeTo(5, 12) as number, ...link },
      ],
      against: [],
    });
    expect(of(1).for).toEqual([]);
    expect(of(1).against.map(({ ratio }) => ratio)).toEqual([expect.closeTo(1 / 6, 12)]);
    expect(of(2)).toEqual({ for: [], against: [] });
  });

  test("of a finding that counts only in part is measured with that part taken back", () => {
    // before, second and third: .25/√.25 = .5, .25/1 = .25; ratio of the first: 1·.75/(.5·.25 + .25) = 2
    const { for: told } = reasonsOf(0, [0.5, 0.25, 0.25], [heard([1, 0.25, 1], 0.5)]);
    expect(told.map(({ ratio }) => ratio)).toEqual([expect.closeTo(2, 12)]);
  });

  test("does not depend on the unit of the likelihood", () => {
    const [one, other] = [heard([0.8, 0.1, 0.4]), heard([0.8e-200, 0.1e-200, 0.4e-200])];
    const ratio = reasonsOf(0, [0.5, 0.25, 0.25], [one]).for[0]?.ratio ?? 0;
    expect(reasonsOf(0, [0.5, 0.25, 0.25], [other]).for[0]?.ratio).toBeCloseTo(ratio, 9);
  });

  test("of what is impossible with the cause is 0, and there is none where nothing else is possible", () => {
    expect(reasonsOf(0, [0.5, 0.5], [heard([0, 1])]).against.map(({ ratio }) => ratio)).toEqual([0]);
    expect(reasonsOf(0, [1, 0], [heard([1, 0])])).toEqual({ for: [], against: [] });
  });

  test("stands the stronger the earlier", () => {
    const told = reasonsOf(0, [0.5, 0.5], [heard([0.6, 0.2]), heard([0.9, 0.1]), heard([0.5, 0.4])]);
    expect(told.for.map(({ ratio }) => Math.round(ratio))).toEqual([9, 3]);
  });
});

test("a sign of the engine is told by what it did to the chances", () => {
  // .6 of .2 and .4 of .8: thrice and half as likely; the first beside the rest 3·(.8/.4) = 6 times
  const seen = {
    name: "oil use",
    state: "present",
    absent: { sign: 0.9, keeps: [] },
    links: [link, link],
  } as const;
  const told = signWitnesses([seen], [0.6, 0.4], () => [0.2, 0.8]);
  expect(told).toMatchObject([{ finding: "oil use", word: "present" }]);
  expect(told[0]?.likelihood).toEqual([expect.closeTo(3, 12), expect.closeTo(0.5, 12)]);
  expect(told[0]).not.toHaveProperty("cylinder");
  expect(reasonsOf(0, [0.6, 0.4], told).for).toMatchObject([{ ratio: expect.closeTo(6, 12) as number }]);
  // what is impossible either way speaks for nothing
  expect(signWitnesses([seen], [0, 1], () => [0, 1])[0]?.likelihood).toEqual([1, 1]);
});

test("a sign that raised what all cylinders share is named for it", () => {
  // all low alike, with a slow fall of the third; oil use is what rings bring, and what a valve does not
  const cylinders = [131, 133, 118, 130].map((value, i) => ({
    dry: [value * psi],
    ...(i === 2 ? { onset: "gradual" as const } : {}),
  }));
  const level = { level: 150 * psi, from: "estimate" } as const;
  const found: Evidence = { ...four, cylinders, expected: level };
  const seen = diagnose({ ...found, signs: { "oil use": "present" } });
  const [leading] = seen.causes;
  const before = diagnose(found).causes.find(({ code }) => code === leading?.code)?.probability ?? 0;
  expect(leading?.code).toBe("worn-rings-or-bore");
  expect(leading?.cylinders).toEqual([0, 1, 2, 3]);
  const after = leading?.probability ?? 0;
  // the odds with it over the odds without: the rule of Bayes
  const ratio = (after / (1 - after)) * ((1 - before) / before);
  expect(ratio).toBeGreaterThan(2);
  const reason = leading?.for.find(({ finding }) => finding === "oil use");
  expect(reason?.ratio).toBeCloseTo(ratio, 6);
});

test("gas in the coolant keeps the words of its table", () => {
  const [witness] = signWitnesses(signsSeen({ ...four, gas: "positive" }, faults), [], () => []);
  expect(witness).toMatchObject({ finding: "gas", word: "positive" });
});

describe("what does not fit", () => {
  const states = [{ id: "all slow-cranking", cause: "slow-cranking", probability: 0.21 }];
  const placeOf = (wanted: string): number => faults.causes.findIndex(({ code }) => code === wanted);
  /** Likelihood 1 for all but the leading cause. */
  const lone = (leading: string, likelihood: number) =>
    faults.causes.map(({ code }) => (code === leading ? likelihood : 1));

  test("is a finding to which the leading cause gives less than .15 of the best", () => {
    const of = (likelihood: number) =>
      misfitsOf("exhaust-valve", [heard(lone("exhaust-valve", likelihood))], {
        faults,
        posterior: { states: [] },
      });
    expect(of(0.151)).toEqual([]);
    expect(of(0.149)).toMatchObject([{ finding: "path", ratio: 0.149, source: "some-manual" }]);
    expect(placeOf("exhaust-valve")).toBeGreaterThan(0);
  });

  test("is not the level where a state of all cylinders leads", () => {
    const level = { ...heard(lone("slow-cranking", 0.01)), finding: "level" } as const;
    const of = (probability: number) =>
      misfitsOf("slow-cranking", [level], {
        faults,
        posterior: { states: states.map((state) => ({ ...state, probability })) },
      });
    expect(of(0.21)).toEqual([]);
    expect(of(0.2)).toHaveLength(1);
  });
});

describe("on an engine", () => {
  const reasonsFor = (evidence: Evidence, wanted: string) =>
    diagnose(evidence).causes.find(({ code }) => code === wanted);
  const withThird = (more: Evidence["cylinders"][number]): Evidence => ({
    ...four,
    cylinders: four.cylinders.map((one, i) => (i === 2 ? { ...one, ...more } : one)),
  });

  test("oil that lifts a low cylinder speaks for rings and against a valve, as the makers' manuals say", () => {
    // a strong cylinder with the same oil tells what its room does; 5 % of the chamber
    const { cylinders } = withThird({ wet: 145 * psi });
    const evidence = {
      ...four,
      cylinders: cylinders.map((one, i) => (i === 0 ? { ...one, wet: 160 * psi } : one)),
      oilRise: 0.0627,
    };
    const wet = { finding: "wet", word: "supports", link: "published", cylinder: 2 };
    expect(reasonsFor(evidence, "worn-rings-or-bore")?.for).toContainEqual(expect.objectContaining(wet));
    expect(reasonsFor(evidence, "exhaust-valve")?.against).toContainEqual(expect.objectContaining(wet));
  });

  test("air at the exhaust speaks for the exhaust valve although a tight one would bring it too", () => {
    const evidence = withThird({ leak: { alpha: 1.3 }, heard: [{ place: "exhaust", faint: false }] });
    expect(reasonsFor(evidence, "exhaust-valve")?.for).toContainEqual(
      expect.objectContaining({ finding: "path", word: "exhaust" }),
    );
  });

  test("a level like its fellows' speaks neither for nor against what lowers all alike", () => {
    const even: Evidence = {
      ...four,
      cylinders: [110, 108, 112, 109].map((value) => ({ dry: [value * psi] })),
      expected: { level: 150 * psi, from: "maker" },
      circumstances: [{ when: "speed low" }],
    };
    const slow = reasonsFor(even, "slow-cranking");
    expect(slow?.cylinders).toEqual([0, 1, 2, 3]);
    expect([...(slow?.for ?? []), ...(slow?.against ?? [])]).toEqual([]);
  });

  test("a cylinder seen to be sound though it reads nothing is a conflict that is told", () => {
    const evidence = withThird({
      dry: [149 * psi],
      heard: [{ place: "exhaust", faint: false }],
    });
    const { causes, misfits } = diagnose(evidence);
    expect(causes[0]?.code).toBe("no-fault");
    expect(misfits).toMatchObject([{ finding: "path", word: "exhaust", cylinder: 2 }]);
  });
});
