// The ladder of evidence and its guards: points and thresholds are judgement (handbook/decision.md 2).

import { decide, type Decision, type DecisionInput, type EvidenceId } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { ladder } from "../../../packages/core/src/decision/evidence/ladder.ts";
import { rows } from "./examples.ts";

const base: DecisionInput = {
  rows: [],
  trust: "trusted",
  wear: { kind: "unknown" },
  shares: "one-low",
  done: [],
  ownership: { kind: "years", years: 5 },
  use: "ordinary",
};
const given = (ids: readonly EvidenceId[], more: Partial<DecisionInput> = {}): Decision =>
  decide({ ...base, rows: rows(...ids), ...more });
const states = ({ scores }: Decision): readonly string[] =>
  [scores.top, scores.rings, scores.bore, scores.bottom].map(({ score, state }) => `${score} ${state}`);
const codes = ({ guards }: Decision): readonly string[] => guards.map(({ code }) => code);

test("a published condition names who published it, any other says that nobody did", () => {
  for (const { status, source } of Object.values(ladder)) {
    expect(source).not.toContain("handbook");
    if (status === "judgement") expect(source).toBe("judgement of this tool");
    if (status === "common practice") expect(source).toBe("common practice, no source");
    if (status === "published") expect(source).not.toMatch(/^(?:judgement|common practice)/);
  }
});

test("every row has points from -3 to 4, a condition and a source", () => {
  // handbook/decision.md 2: A 8, B 8, C 5, D 2, E 2, F 4, G 2, H 3, I 4, J 7
  expect(Object.keys(ladder)).toHaveLength(45);
  for (const { points, when, source } of Object.values(ladder)) {
    expect(when).not.toBe("");
    expect(source).not.toBe("");
    for (const value of Object.values(points)) expect([-3, -2, -1, 1, 2, 3, 4]).toContain(value);
  }
});

describe("scores", () => {
  test("of one line only the largest for and the largest against count", () => {
    // cranking: rings +1, +2, +2 -> 2, -1 -> -1; top +1 and -1
    expect(states(given(["A2", "A4", "A7", "A5"]))).toEqual([
      "0 not-shown",
      "1 not-shown",
      "0 not-shown",
      "0 not-shown",
    ]);
  });

  test("four points from two lines establish, from one they do not", () => {
    expect(states(given(["B2", "A2"]))[0]).toBe("4 established");
    // leak-down +3 alone
    expect(states(given(["B2"]))[0]).toBe("3 developing");
    // sight +3 and coolant +1
    expect(states(given(["I1", "H1"]))[0]).toBe("4 established");
  });

  test("a measurement inside its limit keeps other signs from establishing", () => {
    // oil pressure +2, debris +3, measured -3 = 2; noise +2 more = 4
    expect(states(given(["E1", "F3", "J6", "G1"]))[3]).toBe("4 developing");
    expect(states(given(["E1", "F3", "G1"]))[3]).toBe("7 established");
  });

  test("a measurement beyond its limit establishes alone", () => {
    expect(states(given(["J1"]))[2]).toBe("4 established");
  });

  test("compression, oil use and blow-by together establish rings against what speaks otherwise", () => {
    // the manual's rule: measured together, one alone is not enough; 2 + 2 + 2 - 2 - 2
    expect(states(given(["A7", "C0", "D1", "B1", "J4"]))[1]).toBe("2 established");
    expect(states(given(["A7", "C1", "D1", "B1", "J4"]))[1]).toBe("2 developing");
    expect(given(["A7", "C0", "D1"])).toMatchObject({ verdict: "re-ring", urgency: "planned" });
  });

  test("what was not looked at is no row and says nothing", () => {
    expect(given([])).toMatchObject({ verdict: "leave-it", reasons: ["nothing-developing"] });
    expect(given([]).missing).toEqual(["prices", "chance"]);
  });
});

describe("the word by need", () => {
  test.each([
    [["B2", "A2"], "open-the-top-end"],
    [["B5", "C1"], "re-ring"],
    [["B5", "C1", "I1", "H1", "J7"], "re-ring"],
    [["E1", "F1"], "rebuild"],
    [["B6", "I2"], "rebuild"],
  ] as const)("%j ask for %s", (ids, verdict) => {
    expect(given(ids)).toMatchObject({ verdict, basis: "needed" });
  });

  test("two points are watched", () => {
    expect(given(["A4"])).toMatchObject({ verdict: "watch-it", reasons: ["wear-developing"] });
  });

  test("an alarm of the history is watched", () => {
    expect(given(["A8"])).toMatchObject({ verdict: "watch-it", reasons: ["history-alarm"] });
  });

  test("chunks in the filter, a heavy knock and combustion gas in the coolant say stop, whatever the word", () => {
    for (const row of ["F3", "G1", "H2"] as const)
      expect(given([row])).toMatchObject({ verdict: "test-again", urgency: "stop" });
    expect(given(["B2"]).urgency).toBeUndefined();
  });
});

describe("guards", () => {
  test("G1: after a void test nothing counts but the next one", () => {
    const decision = given(["E1", "F1", "J5"], { trust: "void" });
    expect(decision).toMatchObject({ verdict: "test-again", basis: "nothing-shown" });
    expect(codes(decision)).toContain("test-void");
    expect(decision.next.step).toBe("repeat-this-test");
  });

  test("G1: after a doubtful test work is needed only by what does not rest on it", () => {
    const doubtful = given(["B2", "A2"], { trust: "doubtful" });
    expect(doubtful).toMatchObject({ verdict: "test-again", reasons: ["test-doubtful"] });
    expect(codes(doubtful)).toContain("test-doubtful");
    expect(given(["B2", "A2", "I1", "H1"], { trust: "doubtful" }).verdict).toBe("open-the-top-end");
  });

  test("G2: cranking alone brings no repair, and says so", () => {
    const decision = given(["A7", "A4"]);
    expect(decision.verdict).toBe("watch-it");
    expect(decision.guards).toContainEqual({ code: "cranking-alone", places: ["rings"] });
    expect(codes(given(["A4", "C2"]))).not.toContain("cranking-alone");
  });

  test("G2: one measurement asks to be made again before a rebuild; made twice it counts as two", () => {
    const once = given(["J5"]);
    expect(once).toMatchObject({ verdict: "test-again", reasons: ["one-line-only"], need: "rebuild" });
    expect(once.next.step).toBe("measure-again");
    expect(codes(once)).toContain("one-line-only");
    expect(decide({ ...base, rows: rows("J5").map((row) => ({ ...row, times: 2 })) }).verdict).toBe(
      "rebuild",
    );
    expect(given(["J5", "E1"]).verdict).toBe("rebuild");
  });

  test("G3: an odd test is repeated", () => {
    const decision = given(["A2"], { doubts: ["one-odd-test"] });
    expect(decision).toMatchObject({ verdict: "test-again", reasons: ["one-odd-test"] });
    expect(decision.next.step).toBe("repeat-this-test");
  });

  test("G4, G5: not itself, or low everywhere unproved, suspends the cranking rows", () => {
    const decision = given(["A7", "C2"], { doubts: ["not-itself"] });
    expect(decision.suspended.map(({ id }) => id)).toEqual(["A7"]);
    expect(decision.scores.rings.score).toBe(1);
    expect(decision.guards).toContainEqual({ code: "not-itself", suspended: ["A7"] });
    expect(decision.next.step).toBe("run-warm-and-retest");
    expect(given(["A7"], { doubts: ["low-everywhere"] }).next.step).toBe("prove-gauge-throttle-battery");
  });

  test("G6: a re-ring names what is not measured inside its limit yet", () => {
    expect(given(["B5", "C1", "J2", "J6"]).guards).toEqual([
      { code: "subject-to-measuring", open: ["ring-gap"] },
    ]);
  });

  test("G7: leak-down and cranking that contradict each other are named, either way round", () => {
    expect(given(["A1", "B2"]).guards).toContainEqual({ code: "instruments-disagree", leakDown: "leaks" });
    const reverse = given(["A2", "B1"]);
    expect(reverse.guards).toContainEqual({ code: "instruments-disagree", leakDown: "healthy" });
    expect(reverse.next.step).toBe("look-inside-and-retest");
  });

  test("G8: where safety hangs on it each word goes one step to the careful side", () => {
    const safety = { use: "safety" } as const;
    expect(given(["A1"], safety)).toMatchObject({ verdict: "watch-it", licensed: true });
    const developing = given(["A4", "C2"], safety);
    expect(developing).toMatchObject({ verdict: "test-again", reasons: ["safety-step", "wear-developing"] });
    expect(developing.next.step).toBe("second-method-with-sight");
    // watched for an alarm, nothing developing
    expect(given(["A8"], safety).verdict).toBe("watch-it");
    expect(given(["B2", "A2"], safety)).toMatchObject({
      verdict: "open-the-top-end",
      urgency: "before-further-use",
    });
  });

  test("G9: a repair dearer than half of another engine names the other engine", () => {
    const prices = { jobs: {}, work: { topEnd: 400, reRing: 900, rebuild: 2600 }, replacement: 4000 };
    const wear = { kind: "typed", probability: 0.5 } as const;
    // 2600/4000, no way in to be paid
    expect(given(["E1", "F1"], { prices, wear }).guards).toContainEqual({ code: "replacement", share: 0.65 });
    expect(codes(given(["B2", "A2"], { prices, wear }))).not.toContain("replacement");
  });
});
