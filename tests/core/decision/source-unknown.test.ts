// Damage whose source nobody knows: no word that closes an engine up stands under "stop" (handbook/decision.md 8; that it is
// test again is our judgement). Rings and parts past their limit that do not go back in.

import { type DecisionInput, type EvidenceId, decide } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";

const row = (id: EvidenceId) => ({ id, text: id, restsOn: "other-records" as const });
const bare: DecisionInput = {
  rows: [],
  trust: "trusted",
  wear: { kind: "typed", probability: 0.05 },
  shares: "healthy",
  done: [],
  use: "ordinary",
  ownership: { kind: "years", years: 5 },
};
const given = (ids: readonly EvidenceId[], more: Partial<DecisionInput> = {}) =>
  decide({ ...bare, ...more, rows: ids.map(row) });
const fullyOpen = ["headOff", "bottomOpen", "engineOut"] as const;

describe.each(["F3", "G1", "H2"] as const)("%s", (id) => {
  test.each([
    ["in place", []],
    ["out and closed", ["engineOut"]],
    ["with the head off", ["headOff"]],
    ["with the pan off", ["bottomOpen"]],
    ["fully open", fullyOpen],
  ] as const)("%s it is neither left nor watched, and not run until the source is found", (_, done) => {
    // against it everything that can be: hot pressure, no coolant lost, all measured inside
    expect(given([id, "E2", "H3", "A1", "B1", "J2", "J4", "J6"], { done })).toMatchObject({
      verdict: "test-again",
      reasons: ["source-unknown"],
      urgency: "stop",
      next: { step: "find-the-source" },
      ifNotTested: { use: "not-used" },
    });
  });

  test("readings in doubt, rings that are due and a void test come behind it", () => {
    expect(given([id], { trust: "doubtful" }).reasons[0]).toBe("source-unknown");
    expect(given([id], { trust: "void" }).reasons).toEqual(["source-unknown", "test-void"]);
    expect(given([id], { ringsDue: "yes", done: fullyOpen }).reasons[0]).toBe("source-unknown");
  });
});

test("work that is needed stays the word", () => {
  expect(given(["F3", "E1"])).toMatchObject({ verdict: "rebuild", basis: "needed", urgency: "stop" });
  expect(given(["H2", "B3"])).toMatchObject({ verdict: "open-the-top-end", basis: "needed" });
  expect(given(["F3", "E1"]).guards.map(({ code }) => code)).not.toContain("source-unknown");
});

test("damage that no row weighs holds the word as well, without a stop", () => {
  const found = given([], { damage: "unsettled" });
  expect(found).toMatchObject({ verdict: "test-again", reasons: ["source-unknown"] });
  expect(found.urgency).toBeUndefined();
  expect(found.guards).toContainEqual({ code: "source-unknown" });
});

test("new rings do not cure a scored bore: it is measured before they are ordered", () => {
  expect(given(["I2"], { ringsDue: "yes", done: fullyOpen })).toMatchObject({
    verdict: "test-again",
    reasons: ["scored-bore"],
    guards: [{ code: "scored-bore" }],
    ifNotTested: { verdict: "re-ring" },
  });
});

describe("measured past what may stay in, in the open engine", () => {
  test("it does not go back in, though alone it establishes nothing", () => {
    expect(given(["J7", "A1"], { pastLimit: "topEnd", done: ["headOff"] })).toMatchObject({
      verdict: "open-the-top-end",
      basis: "opportunity",
      reasons: ["past-its-limit"],
    });
    const rings = given(["J3", "A1"], { pastLimit: "reRing", done: fullyOpen });
    expect(rings).toMatchObject({ verdict: "re-ring", reasons: ["past-its-limit"] });
    // G6: the gap is measured, and past its limit; bores and bearings are open
    expect(rings.guards).toContainEqual({ code: "subject-to-measuring", open: ["bore", "bearings"] });
    expect(rings.need).toBeUndefined();
  });

  test("what is needed anyway, or more, stands before it", () => {
    expect(given(["J7", "B2"], { pastLimit: "topEnd", done: ["headOff"] })).toMatchObject({
      basis: "needed",
      reasons: ["need-established"],
    });
    expect(given(["J5", "E1"], { pastLimit: "topEnd", done: fullyOpen }).verdict).toBe("rebuild");
  });
});
