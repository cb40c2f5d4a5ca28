// The worked examples W1 to W10 of handbook/diagnosis.md 7: inputs invented, results computed in the handbook by its own
// reference program, no published value. Compared to the digits printed there.

import { type Diagnosis, diagnose } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { evidenceOf, psi } from "./worked-evidence.ts";
import { near, printed } from "./worked-examples.ts";

const found = new Map(printed.map(({ id, input }) => [id, diagnose(evidenceOf(input))]));
const of = (id: string): Diagnosis => {
  const diagnosis = found.get(id);
  if (diagnosis === undefined) throw new RangeError(id);
  return diagnosis;
};

test.each(printed)(
  "$id, $about: cylinder $target is to be explained, and its causes are as worked",
  (example) => {
    const { target, causes } = of(example.id);
    expect(target + 1).toBe(example.target);
    const first = causes.slice(0, Object.keys(example.causes).length);
    expect(first.map(({ code, probability }) => [code, probability])).toEqual(
      Object.entries(example.causes).map(([code, chance]) => [code, near(chance)]),
    );
  },
);

test.each(printed)(
  "$id, $about: the groups of causes and how unsure they leave one are as worked",
  (example) => {
    const { groups } = of(example.id);
    const { top, bottom, test: ofTest, nothing, unlisted } = groups;
    const all = [top, bottom, ofTest, nothing, unlisted];
    expect(all).toEqual(example.groups.map((value) => near(value)));
    const entropy = all.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0);
    expect(entropy).toEqual(near(example.unsure));
  },
);

test.each(printed)(
  "$id, $about: the tests that are proposed first tell what they were worked to tell",
  (example) => {
    const first = of(example.id).tests.slice(0, example.tests.length);
    expect(first.map((one) => [one.test.code, one.bits, one.bitsPerHour])).toEqual(
      example.tests.map(([code, bits, rate]) => [code, near(bits), near(rate, 0.002)]),
    );
  },
);

const mostTelling = (id: string): readonly unknown[] => {
  const [best] = of(id).tests.toSorted((a, b) => b.bits - a.bits);
  return [best?.test.code, best?.bits];
};

test("the most telling test is the leak-down in W1 and W5", () => {
  expect(mostTelling("W1")).toEqual(["leak-down-and-listen", near(0.808)]);
  expect(mostTelling("W5")).toEqual(["leak-down-and-listen", near(0.354)]);
});

test("where the best test tells less than a twentieth of a bit, none would change the decision: W4, W7, W9", () => {
  expect(mostTelling("W4")).toEqual(["borescope", near(0.045)]);
  expect(mostTelling("W7")).toEqual(["retest-warm", near(0.017)]);
  const enough = printed.filter(({ id }) => of(id).enough);
  expect(enough.map(({ id }) => id)).toEqual(["W4", "W7", "W9"]);
});

test("oil in a sound cylinder pins what oil alone does: 1.040, 1.039 and 1.033 times", () => {
  expect([of("W2").oilFactor, of("W3").oilFactor, of("W7").oilFactor]).toEqual([
    near(1.04),
    near(1.039),
    near(1.033),
  ]);
  expect(of("W1").oilFactor).toBeUndefined();
});

test("the level of the day may lie above every reading: 149.1 psi in W7", () => {
  expect((of("W7").level ?? 0) / psi).toEqual(near(149.1, 0.05));
});

test("a pair of neighbours and states of the engine carry the chance where they explain it", () => {
  expect(of("W5").pairs[0]).toEqual({ cylinders: [1, 2], probability: near(0.765) });
  expect(
    of("W6")
      .states.slice(0, 3)
      .map(({ id, probability }) => [id, probability]),
  ).toEqual([
    ["all slow-cranking", near(0.655)],
    ["all worn-rings-or-bore", near(0.156)],
    ["all cam-retarded", near(0.072)],
  ]);
  expect(of("W7").states[0]).toMatchObject({ id: "some washed-or-dry-bores", probability: near(0.993) });
});

test("cranking readings alone make nothing more than probable: .991 is shown as .80", () => {
  const [first] = of("W7").causes;
  expect(of("W7").capped).toBe(true);
  expect(first).toMatchObject({ shown: 0.8, word: "probable" });
  expect(of("W9").capped).toBe(false);
});
