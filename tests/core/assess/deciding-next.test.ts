// The one next step, which work at the top, how far ahead is asked, what a note leaves open. Engines invented.

import { shownTests } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { decided, healthyYears, inputOf, openEngine } from "./deciding-records.ts";
import { type Row, assessed } from "./records.ts";

const warm = { gauge: "red", crank_rpm: "250", throttle: "open", engine_temp: "warm" };
const dry = (date: string, cells: string): Row => ({ test: `${date}a`, ...warm, cells });
const falling = ["2020", "2021", "2022", "2023", "2024", "2025", "2026"].map((year, i) =>
  dry(`${year}-05-01`, `150 150 ${String(150 - 6 * i)} 150`),
);

test("the next step is that of the test gone by, as its own screen names it", () => {
  const { decision, nextAction } = decided({ tests: falling });
  expect(["watch-it", "test-again"]).toContain(decision.verdict);
  const [first] = shownTests(assessed({ tests: falling }).nextTests);
  expect(first?.code).toBeDefined();
  expect(nextAction).toMatchObject({
    code: first?.code,
    text: first?.text,
    minutes: first?.minutes,
    by: "test",
  });
});

test("open, what cannot be tested as it stands is measured first; out, it is tested without its starter", () => {
  const engine = { limits: { compression: { lowestToHighest: 0.78, source: "invented" } } };
  const open = decided({ engine, tests: falling }, { opened: "pistons-in" });
  expect([open.decision.verdict, open.decision.reasons[0]]).toEqual(["watch-it", "limit-too-near"]);
  expect(open.nextAction).toMatchObject({ code: "measure", how: "teardown", by: "decision" });
  expect(open.nextBy).toBe("before-closing");
  const below = decided({ engine, tests: falling }, { opened: "bottom-open" });
  expect(below.nextAction).toMatchObject({ code: "leak-down-and-listen", how: "leak-down" });
  expect(decided({ engine, tests: falling }, { engineOut: true }).nextAction?.how).toBe("leak-down");
});

test("an engine that is left as it is has no step before its date", () => {
  const { decision, nextAction } = decided(openEngine);
  expect(decision.verdict).toBe("leave-it");
  expect(nextAction).toBeUndefined();
});

test("an engine without a test begins with one, and what holds meanwhile is said", () => {
  const { nextAction, testAgain } = decided({ tests: [] });
  expect(nextAction).toEqual({
    code: "cranking",
    text: "a first test: read every cylinder, warm",
    minutes: 12,
    how: "dry",
    by: "decision",
  });
  expect(testAgain?.ifNotTested).toEqual({ verdict: "leave-it", use: "as-now" });
});

test("where lives hang on it, what is to be tested is not used before", () => {
  const { decision, testAgain, nextBy } = decided({ engine: { use: "aircraft" }, tests: falling });
  expect(decision.verdict).toBe("test-again");
  expect(testAgain?.ifNotTested.use).toBe("not-used");
  expect(nextBy).toBe("before-further-use");
});

const leak = (places: string): readonly Row[] => [
  {
    test: "2026-05-01a",
    what: "leak-down",
    cells: "76 76 40 76",
    gauge: "tester",
    regulated_psi: "80",
  },
  { test: "2026-05-01a", what: "heard", unit: "", cells: places },
];

test("the work at the top is named by what was heard and seen: valves, or the gasket", () => {
  const work = (places: string, note: string) =>
    decided({
      engine: { cooling: "liquid" },
      tests: [dry("2026-05-01", "150 150 100 150"), ...leak(places)],
      notes: [note],
    });
  const valves = work("none none exhaust none", "2026-05-02,,valve seen,burnt,,3");
  expect(valves.decision.verdict).toBe("open-the-top-end");
  expect(valves.topWork).toMatchObject({ service: "valve job", from: "evidence" });
  const gasket = work("none none coolant none", "2026-05-02,,combustion gas in coolant,some,,");
  expect(gasket.decision.verdict).toBe("open-the-top-end");
  expect(gasket.topWork).toMatchObject({ service: "head gasket", from: "evidence" });
  expect(gasket.topWork?.gasketShare).toBeGreaterThan(valves.topWork?.gasketShare ?? 1);
});

test("a question that asks far beyond the record says so", () => {
  const tests = healthyYears.slice(-4);
  const engine = { ...openEngine.engine, ownership: "12y" };
  const { reach } = decided({ engine, tests });
  // 2021-05-01 to 2026-05-01
  expect(reach).toMatchObject({ from: "2021-05-01", to: "2026-05-01", questionYears: 12, far: "yes" });
  expect(reach?.text).toBe("the record spans 5 years, the question 12");
  expect(decided({ engine: { ...engine, ownership: "9y" }, tests }).reach?.far).toBe("no");
  expect(decided({ tests: [] }).reach).toBeUndefined();
});

test("kept for good the question is the years that are left to the rings", () => {
  const { reach, decision } = decided(openEngine, { ownership: { kind: "for-good" } });
  expect(reach?.questionYears).toBe(decision.keep?.yearsLeft);
});

test("metal in the filter that nobody named is asked for, and chunks stop the engine", () => {
  const noted = (...notes: readonly string[]) => decided({ ...openEngine, notes });
  const heavy = noted("2026-05-10,,filter debris,heavy,,");
  const ask = heavy.notSeen.filter(({ line }) => line === "debris");
  expect(ask).toHaveLength(1);
  expect(ask[0]).toMatchObject({
    text: "what metal the filter holds",
    why: "filter debris was noted heavy (2026-05-10), which does not say where it comes from",
    command: 'sealtrend note engine --what "filter debris" --value "bearing metal"',
  });
  expect(ask[0]?.settles).toContain("bearing metal (crank or bearings)");
  // a clean analysis beside it does not swallow it
  const analysed = noted("2026-05-10,,filter debris,heavy,,", "2026-05-11,,oil analysis,normal,,");
  expect(analysed.notSeen.map(({ text }) => text)).toContain("what metal the filter holds");
  const chunks = noted("2026-05-10,,filter debris,chunks,,");
  expect(chunks.evidence.map(({ row }) => row)).toContain("F3");
  expect(chunks.decision.urgency).toBe("stop");
  const knock = noted("2026-05-10,,knock,heavy,,").notSeen.find(({ line }) => line === "noise");
  expect(knock?.text).toBe("which cylinder the knock goes with");
});

test("A1 near its bound names the bound and the year of the baseline", () => {
  const at = (level: number) =>
    decided({
      tests: [dry("2019-05-01", "150 150 150 150"), dry("2026-05-01", new Array(4).fill(level).join(" "))],
    }).evidence.find(({ row }) => row === "A1")?.text;
  // 129/150 = 86 %
  expect(at(129)).toBe(
    "every cylinder still above 85 % of its own 2019 baseline (86 % the lowest), none stands out",
  );
  expect(at(141)).toBe("every cylinder at 94 % of its first tests or more, none stands out");
});

test("no cylinder is named as the first to pass where none is near", () => {
  const level = healthyYears.map((row) => ({ ...row, cells: "160 160 160 160" }));
  const { decision } = decided({ ...openEngine, tests: level });
  expect(decision.chance?.probability).toBeLessThan(0.01);
  expect(decision.chance?.label).toBeUndefined();
});

test("without prices the years and the limit that change the word are told", () => {
  const engine = { ...openEngine.engine, prices: undefined, ownership: "5y" };
  const { decision } = decided({ ...openEngine, engine });
  const chanceIn = (years: number) =>
    decided({ ...openEngine, engine }, { ownership: { kind: "years", years } }).decision;
  const [years, limit] = decision.unpricedFlips;
  expect([decision.verdict, years?.input, years?.turns]).toEqual(["leave-it", "years", "watching"]);
  // the risk taken is .10
  expect(chanceIn(years?.at ?? 0).chance?.probability).toBeCloseTo(0.1, 6);
  expect(chanceIn((years?.at ?? 0) + 0.1).verdict).toBe("watch-it");
  expect(chanceIn((years?.at ?? 0) - 0.1).verdict).toBe("leave-it");
  expect(limit).toMatchObject({ input: "limit", where: "half-range" });
  expect(inputOf(openEngine).prices).toBeDefined();
  expect(decided(openEngine).decision.unpricedFlips).toEqual([]);
});
