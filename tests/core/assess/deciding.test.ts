// From an engine's records to its decision. Engines invented; expected figures are those of handbook/decision.md 9 (computed
// there by a program of its own), within what the roundings of the readings leave open.

import { expect, test } from "vitest";
import { asOpen, decided, healthyYears, inputOf, openEngine, rowsIn } from "./deciding-records.ts";

test("a healthy engine open for another fault is closed up as it is: example 1", () => {
  const { decision, evidence, wear } = decided(openEngine, asOpen);
  expect(evidence.map(({ row }) => row)).toEqual(["A1", "C3", "E2", "I4"]);
  expect(decision).toMatchObject({
    verdict: "leave-it",
    basis: "nothing-shown",
    saying: "open-leave",
    margin: "clear",
  });
  // p .0852, p* .4403, K 1614.9, G 711
  expect(decision.chance?.probability).toBeCloseTo(0.085, 2);
  expect(decision.chance?.label).toBe("3");
  expect(decision.comparison?.act).toBe("reRing");
  expect(decision.comparison?.breakEven?.probability).toBeCloseTo(0.4403, 4);
  expect(decision.comparison?.breakEven?.K).toBeCloseTo(1614.9, 1);
  expect(decision.comparison?.breakEven?.G).toBeCloseTo(711, 6);
  expect(wear.map(({ against }) => against)).toEqual(new Array(4).fill("ratio-to-others"));
});

test("it would turn at 11 years of ownership, or at a twelfth of the price: example 1", () => {
  const swings = decided(openEngine, asOpen).decision.comparison?.swings ?? [];
  const flipOf = (input: string) => swings.find((swing) => swing.input === input)?.flip?.at;
  // 11.433 and 46.212
  expect(Math.abs((flipOf("years") ?? 0) - 11.433)).toBeLessThan(0.5);
  expect(Math.abs((flipOf("work.reRing") ?? 0) - 46.212)).toBeLessThan(3);
});

test("the same engine kept for good is re-ringed at this opening, subject to measuring: example 3", () => {
  const { decision, horizon } = decided(openEngine, { ...asOpen, ownership: { kind: "for-good" } });
  expect(horizon).toEqual({ kind: "for-good", years: 5, from: "typed" });
  expect(decision).toMatchObject({ verdict: "re-ring", basis: "opportunity", margin: "holds" });
  // tau 12.297, Lr 25.837, ratio .372057, used .524074, tau* 16.224
  expect(decision.keep?.yearsLeft).toBeCloseTo(12.3, 1);
  expect(decision.keep?.lifeAfter).toBeCloseTo(25.8, 1);
  expect(decision.keep?.priceRatio).toBeCloseTo(0.372057, 6);
  expect(decision.keep?.used).toBeCloseTo(0.524, 2);
  expect(decision.keep?.flipYearsAtThisLife).toBeCloseTo(16.2, 1);
  expect(decision.guards).toContainEqual({
    code: "subject-to-measuring",
    open: ["bore", "ring-gap", "bearings"],
  });
});

test("without prices the ratio is told at which it turns: example 9", () => {
  const engine = { ...openEngine.engine, prices: undefined, ownership: "10y" };
  const { decision, prices } = decided({ ...openEngine, engine }, asOpen);
  expect(prices).toEqual({
    known: "none",
    missing: ["jobs.headOff", "jobs.bottomOpen", "work.topEnd", "work.reRing", "work.rebuild"],
  });
  // p .3767, alpha* 3.408
  expect(decision.chance?.probability).toBeCloseTo(0.38, 1);
  expect(decision.ratio?.flipRatio).toBeCloseTo(3.4, 0);
  expect(decision.comparison).toBeUndefined();
});

test("prices for rings alone give the ratio of getting in again to the work", () => {
  const engine = {
    ...openEngine.engine,
    prices: { jobs: { headOff: 350, bottomOpen: 250 }, work: { reRing: 600 } },
  };
  const { decision, prices } = decided({ ...openEngine, engine }, asOpen);
  expect(prices.known).toBe("some");
  expect(prices.missing).toEqual(["work.topEnd", "work.rebuild"]);
  // (350 + 250)/600
  expect(decision.ratio?.own?.ratio).toBeCloseTo(1, 9);
});

test("a typed price goes over that of engine.json", () => {
  const prices = [
    { path: "work.reRing", value: 500 },
    { path: "work.reRing", value: 40 },
  ];
  expect(inputOf(openEngine, { ...asOpen, prices }).prices?.work).toEqual({
    topEnd: 400,
    reRing: 40,
    rebuild: 2600,
  });
  // example 1 turns at 46.2 and 40 lies below
  expect(decided(openEngine, { ...asOpen, prices }).decision.comparison?.difference).toBeGreaterThan(0);
});

test("what brought it apart, and what no reading sees, is named", () => {
  const { otherFaults, cannotSee, measureNow, notSeen } = decided(openEngine, asOpen);
  expect(otherFaults).toEqual([{ date: "2026-05-18", text: "cracked bellhousing" }]);
  expect(cannotSee).toEqual([
    "the other fault",
    "ring tension",
    "ring grooves",
    "bearings",
    "wear of all cylinders alike",
    "sudden faults",
  ]);
  expect(measureNow.map(({ code }) => code)).toEqual(["bores", "rod-side", "bearing-clearance"]);
  expect(notSeen.map(({ line }) => line)).toEqual([
    "leak-down",
    "blow-by",
    "debris",
    "noise",
    "coolant",
    "measured",
  ]);
  expect(notSeen[0]?.command).toBe('sealtrend enter engine --leak-down "74/80 74/80 74/80 74/80" --unit psi');
});

test("five years are taken where nobody said, and that is told", () => {
  const engine = { ...openEngine.engine, ownership: undefined };
  expect(decided({ ...openEngine, engine }, asOpen).horizon).toEqual({
    kind: "years",
    years: 5,
    from: "usual",
  });
  expect(decided(openEngine, asOpen).horizon.from).toBe("engine.json");
});

test("what is open decides what can be measured and what is paid for", () => {
  expect(inputOf(openEngine, { opened: "head-off" }).done).toEqual(["headOff"]);
  expect(inputOf(openEngine, { opened: "bottom-open" }).done).toEqual(["bottomOpen"]);
  expect(inputOf(openEngine, asOpen).done).toEqual(["headOff", "bottomOpen", "engineOut"]);
  expect(inputOf(openEngine, { engineOut: true }).done).toEqual(["engineOut"]);
  expect(inputOf(openEngine).test?.what).toBe("cranking");
  expect(inputOf(openEngine, { engineOut: true }).test?.what).toBe("leak-down");
  // a measurement takes the time of a test, 15
  expect(inputOf(openEngine, asOpen).test).toEqual({
    what: "measurement",
    cost: 15,
    tells: { kind: "as-judged" },
  });
  expect(decided(openEngine).measureNow).toEqual([]);
});

test("an aircraft, and a boat with no other engine to come home with, are safety-critical", () => {
  const used = (use: string, remote: boolean) =>
    inputOf({ ...openEngine, engine: { ...openEngine.engine, use, remote } }).use;
  expect(used("aircraft", false)).toBe("safety");
  expect(used("boat", true)).toBe("safety");
  expect(used("boat", false)).toBe("ordinary");
  expect(used("farm", true)).toBe("remote");
});

test("an engine without a test is to be tested, and its chance is unknown", () => {
  const { decision, test: gone, speaks, chanceUnknown, wear } = decided({ tests: [] });
  expect(decision).toMatchObject({ verdict: "test-again", basis: "nothing-shown" });
  expect(decision.chance).toBeUndefined();
  expect([gone, speaks, wear]).toEqual([undefined, "none", []]);
  expect(chanceUnknown).toBe("no cranking test counts yet");
});

test("one test tells no trend, and nothing is claimed of the years", () => {
  const written = { tests: healthyYears.slice(-1) };
  const { decision, chanceUnknown } = decided(written);
  expect(rowsIn(written)).toEqual([]);
  expect(decision.missing).toContain("chance");
  expect(chanceUnknown).toMatch(/^too few tests for a trend/);
});

test("a test older than a year speaks no more: test again while it can be, else the years are all there is", () => {
  const later = { today: "2027-06-01" };
  expect(decided(openEngine, later)).toMatchObject({
    speaks: "too-old",
    decision: { verdict: "test-again" },
  });
  const open = decided(openEngine, { ...later, ...{ opened: "pistons-in" } });
  expect(open.input.trust).toBe("trusted");
  expect(open.evidence.some(({ line }) => line === "cranking")).toBe(false);
  expect(open.decision.chance).toBeDefined();
});

test("work on all cylinders since the last test leaves nothing to go by", () => {
  const written = { ...openEngine, services: ["2026-05-10,,re-ring"] };
  const { speaks, chanceUnknown } = decided(written);
  expect(speaks).toBe("too-old");
  expect(chanceUnknown).toBe("nothing was tested since the last work on it");
  expect(rowsIn(written)).toEqual(["I4"]);
});

test("the age of an engine kept for good counts from its last re-ring, else from what engine.json says", () => {
  const forGood = { ownership: { kind: "for-good" } } as const;
  expect(inputOf(openEngine, forGood).ownership).toMatchObject({ kind: "for-good", years: 5 });
  const ageOf = (written: typeof openEngine) => {
    const { ownership } = inputOf(written, forGood);
    return ownership.kind === "for-good" ? ownership.age : undefined;
  };
  expect(ageOf(openEngine)).toBeCloseTo(20, 2);
  expect(ageOf({ ...openEngine, services: ["2013-05-21,,re-ring"] })).toBeCloseTo(13, 2);
  expect(ageOf({ ...openEngine, engine: { ...openEngine.engine, renewed: "2006" } })).toBeCloseTo(19.9, 1);
});

test("a test that the record does not hold is refused", () => {
  expect(() => decided(openEngine, { test: "2020-01-01a" })).toThrow(RangeError);
});

test("a chosen test is gone by, and later ones are left aside", () => {
  const { test: gone } = decided(openEngine, { test: "2024-05-01a" });
  expect(gone?.test.id).toBe("2024-05-01a");
});
