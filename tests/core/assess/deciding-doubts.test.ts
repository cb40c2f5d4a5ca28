// What is wrong with the readings beside their trust: the guards G3, G4, G5 and G7 of handbook/decision.md 2. Readings
// invented.

import { expect, test } from "vitest";
import { asOpen, decided, examplePrices, inputOf } from "./deciding-records.ts";
import type { Row } from "./records.ts";

const warm = { gauge: "red", crank_rpm: "250", throttle: "open", engine_temp: "warm" };
const dry = (date: string, cells: string, more: Partial<Row> = {}): Row => ({
  test: `${date}a`,
  ...warm,
  ...more,
  cells,
});
const leak = (take: string): Row => ({
  test: "2026-05-01a",
  what: "leak-down",
  take,
  cells: "76 76 40 76",
  gauge: "tester",
  regulated_psi: "80",
});
const sound = ["2022-05-01", "2023-05-01", "2024-05-01", "2025-05-01"].map((date) =>
  dry(date, "150 150 150 150"),
);

test("one odd test asks for a repeat", () => {
  const { decision, input } = decided({ tests: [...sound, dry("2026-05-01", "150 150 135 150")] });
  expect(input.doubts).toEqual(["one-odd-test"]);
  expect(decision).toMatchObject({ verdict: "test-again", next: { step: "repeat-this-test" } });
});

test("the odd test is named, with its cylinder and by how much, and the chance behind it stands", () => {
  const prices = { ...examplePrices, work: { topEnd: 400, reRing: 100, rebuild: 2600 } };
  const engine = { limits: { compression: { lowestToHighest: 0.9, source: "invented" } }, prices };
  const tests = [...sound, dry("2026-05-01", "150 150 136 150")];
  const odd = decided({ engine, tests }, asOpen);
  // 1 - 136/150 = 9.3 %
  expect(odd.oddTest).toMatchObject({
    test: "2026-05-01a",
    date: "2026-05-01",
    cylinder: "3",
    kind: "dry",
    against: "others",
    text: "cylinder 3 read 9 % below the others in 2026-05-01a, and nothing else says so",
  });
  expect(odd.oddTest?.by).toBeCloseTo(1 - 136 / 150, 6);
  // with it no line can be drawn on; without it there are four years of 150 in each
  expect(odd.chanceWithout).toBe("2026-05-01a");
  expect(odd.decision.chance).toEqual(decided({ engine, tests: sound }).decision.chance);
  expect(odd.decision.chance?.probability).toBeGreaterThan(0.01);
  expect(odd.decision.comparison?.breakEven?.probability).toBeGreaterThan(0.2);
  // open it cannot be read again: it is measured, closed and watched
  expect(odd.decision).toMatchObject({ verdict: "watch-it", reasons: ["one-odd-test"] });
});

test("of a leak-down the odd cylinder is named by what it lost beyond the others", () => {
  const { oddTest } = decided({
    tests: [...sound, dry("2026-05-01", "150 150 150 150"), { ...leak("1"), cells: "76 76 62 76" }],
  });
  // 80 - 62 and 80 - 76: 22.5 % less 5 %
  expect(oddTest).toMatchObject({ cylinder: "3", kind: "leak-down", against: "others" });
  expect(oddTest?.by).toBeCloseTo(18 / 80 - 4 / 80, 6);
});

test("low and then risen again: both tests are named", () => {
  const tests = [dry("2026-05-01", "150 150 100 150"), dry("2026-05-03", "150 150 150 150")];
  const { oddTest } = decided({ tests });
  // 150/100
  expect(oddTest).toMatchObject({ test: "2026-05-03a", before: "2026-05-01a", against: "test-before" });
  expect(oddTest?.by).toBeCloseTo(0.5, 2);
});

test("what another line of evidence says as well is no odd test: an aircraft's valve, heard and seen", () => {
  const heard: Row = { test: "2026-05-01a", what: "heard", unit: "", cells: "none none exhaust none" };
  const once = [
    ...sound,
    dry("2026-05-01", "150 150 150 150"),
    { ...leak("1"), cells: "76 76 50 76" },
    heard,
  ];
  const engine = { use: "aircraft", cooling: "air" };
  expect(inputOf({ engine, tests: once }).doubts).toEqual(["one-odd-test"]);
  const seen = decided({ engine, tests: once, notes: ["2026-05-02,,valve seen,burnt,,3"] });
  expect(seen.input.doubts).toEqual([]);
  expect(seen.decision).toMatchObject({
    verdict: "open-the-top-end",
    basis: "needed",
    urgency: "before-further-use",
    licensed: true,
    next: { step: "look-at-the-valve" },
  });
  expect(seen.nextAction).toMatchObject({
    code: "borescope",
    text: "look at the valves of 3 with a borescope",
    how: "leak-down",
  });
  expect(seen.nextBy).toBe("before-further-use");
  // the same valve in another cylinder bears nothing out
  const other = inputOf({ engine, tests: once, notes: ["2026-05-02,,valve seen,burnt,,1"] });
  expect(other.doubts).toEqual(["one-odd-test"]);
});

test("two tests that contradict each other, with no work in between, ask for a third", () => {
  const tests = [dry("2026-05-01", "150 150 100 150"), dry("2026-05-03", "150 150 150 150")];
  const { decision } = decided({ tests });
  expect(decision).toMatchObject({ verdict: "test-again", reasons: ["one-odd-test"] });
  expect(decision.chance).toBeUndefined();
  const worked = decided({ tests, services: ["2026-05-02,,valve job,3"] });
  expect(worked.input.doubts).toEqual([]);
});

test("low after flooding: run it warm and test again, and its cranking rows stand aside", () => {
  const tests = [...sound, dry("2026-05-01", "150 150 100 150")];
  const { input, evidence, decision } = decided({ tests, services: ["2026-04-20,,flooded"] });
  expect(input.doubts).toContain("not-itself");
  expect(evidence.filter(({ line }) => line === "cranking").every(({ use }) => use === "set-aside")).toBe(
    true,
  );
  expect(decision.verdict).toBe("test-again");
  const retested = [...tests, dry("2026-05-05", "150 150 100 150")];
  expect(inputOf({ tests: retested, services: ["2026-04-20,,flooded"] }).doubts).toEqual([]);
});

test("why it was not itself is told: how long it stood, or what befell it", () => {
  const tests = [...sound, dry("2026-05-01", "150 150 100 150")];
  const why = (service: string) => decided({ tests, services: [service] }).notItself;
  expect(why("2026-04-20,,storage,,,,9 months")).toEqual({
    what: "storage",
    date: "2026-04-20",
    months: 9,
    text: "it stood 9 months",
  });
  expect(why("2026-04-20,,storage")?.text).toBe("it stood before (storage noted 2026-04-20)");
  expect(why("2026-04-20,,overheated,3")?.text).toBe("cylinder 3 was overheated (2026-04-20)");
  expect(why("2026-04-20,,flooded")?.text).toBe("it was flooded (2026-04-20)");
  const fresh = decided({
    engine: { meter: "h" },
    tests: [...sound, dry("2026-05-01", "118 118 90 118", { meter: "110" })],
    services: ["2026-04-20,100,re-ring,3"],
  });
  expect(fresh.notItself?.text).toBe("it was still running in after the re-ring of 2026-04-20");
});

test("low everywhere: gauge, throttle and speed first, unless they were proved", () => {
  const tests = [...sound, dry("2026-05-01", "118 118 118 118")];
  expect(inputOf({ tests }).doubts).toContain("low-everywhere");
  expect(decided({ tests }).decision.next.step).toBe("prove-gauge-throttle-battery");
  const notes = ["2026-05-02,,gauge proved,yes,,"];
  expect(inputOf({ tests, notes }).doubts).not.toContain("low-everywhere");
});

test("low everywhere all at once and everything proved: a leak-down comes before anything is decided", () => {
  const notes = ["2026-05-02,,gauge proved,yes,,"];
  const low = [...sound, dry("2026-05-01", "118 118 118 118")];
  const asked = decided({ tests: low, notes });
  expect(asked.decision).toMatchObject({
    verdict: "test-again",
    reasons: ["one-method-only"],
    next: { step: "second-method" },
  });
  expect(asked.nextAction).toMatchObject({ code: "leak-down-and-listen", minutes: 25, how: "leak-down" });
  // its rows count all the same
  expect(asked.evidence.every(({ use }) => use === "counted")).toBe(true);
  const leaked: Row = { ...leak("1"), cells: "62 62 62 62" };
  expect(inputOf({ tests: [...low, leaked], notes }).doubts).not.toContain("one-method-only");
  const never = { leakDownTest: { allowed: false, source: "invented" } };
  expect(inputOf({ engine: never, tests: low, notes }).doubts).not.toContain("one-method-only");
});

test("a milder test after one that was low everywhere does not make it good", () => {
  const tests = [...sound, dry("2026-05-01", "118 118 118 118"), dry("2026-05-10", "131 131 131 131")];
  const unproved = decided({ tests });
  expect(unproved.decision).toMatchObject({ verdict: "test-again", reasons: ["low-everywhere"] });
  expect(unproved.lowEverywhere).toMatchObject({ test: "2026-05-01a", sudden: "yes", unproved: ["gauge"] });
  // 118/150 and 131/150
  expect(unproved.lowEverywhere?.change).toBeCloseTo(118 / 150 - 1, 6);
  expect(unproved.lowEverywhere?.milder).toBeCloseTo(131 / 150 - 1, 6);
  const proved = decided({ tests, notes: ["2026-05-02,,gauge proved,yes,,"] });
  expect(proved.decision).toMatchObject({ verdict: "test-again", reasons: ["one-method-only"] });
  const back = [...tests.slice(0, -1), dry("2026-05-10", "148 148 148 148")];
  expect(decided({ tests: back }).lowEverywhere).toBeUndefined();
});

test("what fell year by year asks for no second method", () => {
  const tests = [150, 146, 142, 138, 134, 130, 126].map((level, i) =>
    dry(`${String(2020 + i)}-05-01`, new Array(4).fill(level).join(" ")),
  );
  const { input, lowEverywhere } = decided({
    engine: { limits: { compression: { minimum: "128psi" } } },
    tests,
    notes: ["2026-05-02,,gauge proved,yes,,"],
  });
  expect(lowEverywhere).toMatchObject({ sudden: "no", unproved: [] });
  expect(input.doubts).toEqual([]);
});

test("level with each other is not level with what it was", () => {
  const heard: Row = { test: "2026-05-01a", what: "heard", unit: "", cells: "none none crankcase none" };
  const torn = (level: string) =>
    decided({ tests: [...sound, dry("2026-05-01", level), leak("1"), leak("2"), heard] }).conflicts;
  expect(torn("150 150 150 150")).toEqual([
    { code: "leak-down-leaks", text: "the leak-down finds a leak, the cranking readings are level" },
  ]);
  // 132/150 = 12 % below the first tests, those of 2022 on
  const [fallen] = torn("132 132 132 132");
  expect(fallen?.text).toBe(
    "the leak-down finds a leak, the cranking readings are level with each other, but 12 % below 2022",
  );
  expect(fallen?.fall?.change).toBeCloseTo(132 / 150 - 1, 6);
});

test("a leak-down that leaks under level cranking readings is told, not averaged", () => {
  const tests: readonly Row[] = [
    ...sound,
    dry("2026-05-01", "150 150 150 150"),
    leak("1"),
    leak("2"),
    { test: "2026-05-01a", what: "heard", unit: "", cells: "none none crankcase none" },
  ];
  const { conflicts, decision } = decided({ tests });
  expect(conflicts.map(({ code }) => code)).toEqual(["leak-down-leaks"]);
  expect(decision.next.step).toBe("look-inside-and-retest");
});

test("a void test is made again, whatever else is known", () => {
  const { decision } = decided({ tests: [dry("2026-05-01", "90 90 90 90", { throttle: "closed" })] });
  expect(decision).toMatchObject({ verdict: "test-again", reasons: ["test-void"] });
});

test("a step in one cylinder cannot be drawn on", () => {
  const tests = [...sound, dry("2026-05-01", "150 150 100 150"), dry("2026-05-10", "150 150 100 150")];
  const { chanceUnknown, input } = decided({ tests });
  expect(input.wear).toEqual({ kind: "unknown" });
  expect(chanceUnknown).toBe("cylinder 3 moved in one step, and a step cannot be drawn on");
});

test("leak-down readings alone foretell nothing", () => {
  const tests = sound.map(({ test: id }): Row => ({
    test: id,
    what: "leak-down",
    unit: "%",
    cells: "5 5 6 5",
  }));
  expect(decided({ tests }).chanceUnknown).toMatch(/^leak-down readings scatter too much/);
});
