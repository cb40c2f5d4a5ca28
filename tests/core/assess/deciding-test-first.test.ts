// What is to be done first, from records: swapped readings, new rings, an unproved gauge, a second method, an overdue test.
// Engines invented.

import { shownTests } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { asOpen, decided } from "./deciding-records.ts";
import { type Row, assessed } from "./records.ts";

const warm = { gauge: "red", crank_rpm: "250", throttle: "open", engine_temp: "warm" };
const dry = (date: string, cells: string, meter = ""): Row => ({ test: `${date}a`, ...warm, meter, cells });
const leak = (date: string, cells: string): Row => ({
  test: `${date}a`,
  what: "leak-down",
  gauge: "tester",
  regulated_psi: "80",
  cells,
});
const heard = (date: string, cells: string): Row => ({ test: `${date}a`, what: "heard", unit: "", cells });

const twins = {
  cylinders: 2,
  tests: [dry("2026-05-01", "95 118"), dry("2026-05-03", "120 95")],
};

test("two tests that contradict each other in one pair ask first whether it was entered in swapped order", () => {
  const { oddTest, nextAction } = decided(twins);
  // 1 - 95/120 and 1 - 95/118
  expect(oddTest?.text).toBe(
    "cylinder 2 read 21 % below the other in 2026-05-03a and cylinder 1 19 % below 2 in 2026-05-01a, as if once entered in swapped order",
  );
  expect(oddTest?.swapped).toMatchObject({ pair: ["1", "2"], before: "2026-05-01a", date: "2026-05-01" });
  expect(oddTest?.swapped?.by).toBeCloseTo(1 - 95 / 118, 6);
  const [first] = shownTests(assessed(twins).nextTests);
  expect(first?.text).toContain("see whether 1 and 2 were entered in swapped order");
  expect(nextAction).toMatchObject({ code: "repeat", text: first?.text, by: "test" });
});

test("a pair is named among more, and none where the tests agree, work lies between, or no swap explains them", () => {
  const four = (cells: string, more = {}) =>
    decided({ tests: [dry("2026-05-01", "150 150 118 150"), dry("2026-05-03", cells)], ...more }).oddTest
      ?.swapped;
  expect(four("150 118 150 150")).toMatchObject({ pair: ["2", "3"] });
  expect(four("150 150 118 150")).toBeUndefined();
  expect(four("118 150 150 118")).toBeUndefined();
  expect(four("150 118 150 150", { services: ["2026-05-02,,valve job"] })).toBeUndefined();
});

test("a valve is asked after before the head comes off, as the screen of the test says", () => {
  const tests = ["2023-05-01", "2024-05-01", "2025-05-01"].map((date) => dry(date, "150 150 150 150"));
  const low = [
    ...tests,
    dry("2026-05-01", "150 150 100 150"),
    leak("2026-05-01", "76 76 40 76"),
    heard("2026-05-01", "none none exhaust none"),
  ];
  const burnt = { tests: low, notes: ["2026-05-02,,valve seen,burnt,,3"] };
  const { decision, nextAction } = decided(burnt);
  expect(decision).toMatchObject({ verdict: "open-the-top-end", basis: "needed" });
  expect(nextAction?.by).toBe("test");
  expect(nextAction?.text).toMatch(/lash|leak-down|valve/);
  expect(decided(burnt, { opened: "head-off" }).nextAction?.text ?? "").not.toContain("before the head");
});

const rerung = {
  engine: { meter: "h" },
  tests: [
    dry("2024-05-01", "150 150 150 150", "800"),
    dry("2025-05-01", "150 150 150 150", "900"),
    dry("2026-04-01", "150 150 120 150", "1000"),
  ],
  services: ["2026-05-10,1010,re-ring"],
};

test("after new rings it is run in, then tested; the date counts from the work, and the old test says so", () => {
  const found = decided(rerung);
  expect(found.nextAction).toMatchObject({
    code: "run-in",
    text: "run it in for 25 h, then read every cylinder, warm; again after 50 h, the new baseline",
    by: "test",
  });
  // 200 h in 1.915 years: 25 h are run 87 days after the work, by 1010 + 25 h
  expect(found.nextTest).toEqual({ date: "2026-08-05", meter: 1035, reckoned: "by-hours" });
  const old = assessed(rerung);
  expect(old.workAfter).toMatchObject({ what: "re-ring", date: "2026-05-10" });
  expect(shownTests(old.nextTests).map(({ code }) => code)).toEqual(["run-in"]);
});

test("a test after the work takes its place; other work on all cylinders asks for a test at once", () => {
  const after = { ...rerung, tests: [...rerung.tests, dry("2026-05-20", "150 150 150 150", "1040")] };
  expect(decided(after).nextAction?.code).not.toBe("run-in");
  expect(assessed(after).workAfter).toBeUndefined();
  const valves = { ...rerung, services: ["2026-05-10,1010,valve job,all,all"] };
  expect(decided(valves).nextAction).toMatchObject({
    code: "cranking",
    text: "read every cylinder anew, warm",
  });
});

test("low oil pressure on a gauge that nobody proved is asked after, and bearing metal is not run hard", () => {
  const tests = [dry("2026-05-01", "150 150 150 150")];
  const notes = ["2026-05-10,,oil pressure hot,low,,", "2026-05-10,,filter debris,bearing metal,,"];
  const found = decided({ tests, notes });
  expect(found.evidence.map(({ row }) => row)).toEqual(["F1"]);
  expect(found.notSeen.filter(({ line }) => line === "oil pressure")).toMatchObject([
    { command: 'sealtrend note engine --what "oil pressure hot" --value "proved low"' },
  ]);
  expect(found.decision).toMatchObject({ urgency: "no-hard-use" });
  expect(found.decision.need).toBeUndefined();
  expect(found.nextAction).toMatchObject({ code: "oil-pressure", by: "decision" });
  const proved = ["2026-05-10,,oil pressure hot,proved low,,", "2026-05-10,,filter debris,bearing metal,,"];
  expect(decided({ tests, notes: proved }).decision).toMatchObject({
    verdict: "rebuild",
    urgency: "no-hard-use",
  });
});

const falling = ["2018", "2020", "2022", "2024", "2026"].map((year, i) =>
  dry(`${year}-04-01`, `150 150 ${String(150 - 6 * i)} 150`),
);
const air = [leak("2026-04-01", "76 76 56 76"), heard("2026-04-01", "none none crankcase none")];
const crankcase = [...falling, ...air];

test("where lives hang on it the second method is one that was not made yet", () => {
  const boat = { engine: { use: "boat", remote: true } };
  const step = (tests: readonly Row[], notes: readonly string[] = []) =>
    decided({ ...boat, tests, notes }).nextAction;
  expect(step(crankcase)).toMatchObject({ code: "borescope" });
  expect(step(crankcase)?.text).not.toContain("cranking");
  const thirsty = ["2018-04-02,,oil use,0.1,L/100h,", "2026-04-02,,oil use,0.2,L/100h,"];
  expect(step(falling, thirsty)?.text).toMatch(/^leak-down .*borescope$/);
  expect(step(air)?.text).toMatch(/^a cranking test .*borescope$/);
  expect(step(crankcase, ["2026-04-02,,crosshatch,full,,"])?.text).not.toContain("borescope");
});

test("a test that is overdue says since when, and is the next step itself", () => {
  const level = ["2021", "2022", "2023", "2024", "2025"].map((year) =>
    dry(`${year}-06-01`, "150 150 150 150"),
  );
  const { nextTest, nextAction, decision } = decided({ tests: crankcase }, { today: "2026-11-26" });
  expect(decision.verdict).toBe("watch-it");
  // half a year from 2026-04-01, for something speaks for wear
  expect(nextTest).toMatchObject({ date: "2026-11-26", since: "2026-09-30" });
  expect(nextAction).toBeDefined();
  expect(decided({ tests: level }, { today: "2026-05-21" }).nextTest.since).toBeUndefined();
});

test("open with no test at all, what can be measured is measured before it is closed", () => {
  const { decision, nextAction, nextBy } = decided({ tests: [] }, asOpen);
  expect(decision).toMatchObject({ verdict: "watch-it", reasons: ["test-void"] });
  expect(nextAction).toMatchObject({ code: "measure", how: "teardown" });
  expect(nextBy).toBe("before-closing");
});

test("a reading that rounds two ways is rounded one way: 7.5 % lost is 8 %", () => {
  // 80 to 74 psi: 7.5 % lost
  const { evidence } = decided({ tests: [leak("2026-05-01", "76 74 76 76")] });
  expect(evidence.find(({ row }) => row === "B1")?.text).toBe("no cylinder lost more than 8 %");
});
