// What was seen on the engine apart, as evidence: rows I2 to I4 of the ladder (handbook/decision.md 2), and damage that no row
// weighs. Engine and findings invented.

import { type DecisionChoices, type Measurement, assessDecision } from "@sealtrend/core";
import { expect, test } from "vitest";
import {
  type Line,
  all,
  clearances,
  measured,
  sound,
  soundBores,
  soundMains,
  soundPins,
} from "../teardown/judge-samples.ts";
import { asOpen, openEngine } from "./deciding-records.ts";
import { recordOf } from "./records.ts";

const dated = (rows: readonly Measurement[], date: string) => rows.map((row) => ({ ...row, date }) as const);
const on = (date: string, lines: readonly Line[], state = "cleaned") =>
  dated(measured(lines, { state }), date);
const now = (lines: readonly Line[]) => on("2026-05-20", lines);

const basic = ["2026-05-02,,oil use,none,,", "2026-05-02,,oil pressure hot,normal,,"];

const decided = (
  measurements: readonly Measurement[],
  notes: readonly string[] = [],
  choices: Partial<DecisionChoices> = asOpen,
) => {
  const record = recordOf({ ...openEngine, notes: [...basic, ...notes] });
  return assessDecision(
    { ...record, engine: { ...record.engine, clearances }, measurements },
    { today: "2026-05-21", ...choices },
  );
};
const sights = (measurements: readonly Measurement[], notes?: readonly string[]) =>
  decided(measurements, notes)
    .evidence.filter(({ line }) => line === "sight")
    .map(({ row, cylinder, from }) => [row, cylinder, from]);

const score = (label: string, word: string, at = ""): Line => ["bore", label, at, "score", word];
const marks = (label: string, word: string, at = ""): Line => ["bore", label, at, "crosshatch", word];

test("a score that the nail catches is a scored bore; a light one is none", () => {
  expect(sights(now([score("3", "nail catches", "top/thrust"), score("1", "light")]))).toEqual([
    ["I2", "3", "teardown 1, 2026-05-20"],
  ]);
});

test("hone marks are gone where they are gone from top to bottom", () => {
  expect(sights(now([marks("2", "none")]))).toEqual([["I3", "2", "teardown 1, 2026-05-20"]]);
  expect(sights(now([marks("2", "none", "top")]))).toEqual([]);
  const heights = ["top", "middle", "bottom"].map((at) => marks("2", "none", at));
  expect(sights(now(heights))).toEqual([["I3", "2", "teardown 1, 2026-05-20"]]);
});

test("hone marks in every bore speak against wear, unless one is scored or was not looked at", () => {
  const full = all((label): readonly Line[] => [marks(label, "full")]);
  expect(sights(now(full))).toEqual([["I4", undefined, "teardown 1, 2026-05-20"]]);
  expect(sights(now(full.slice(1)))).toEqual([]);
  expect(sights(now(full.slice(1)), ["2026-05-19,,crosshatch,full,,1"])).toEqual([
    ["I4", undefined, "teardown 1, 2026-05-20 and note 2026-05-19"],
  ]);
  expect(sights(now([...full, score("2", "light")]))).toEqual([]);
  expect(sights(now([...full, score("2", "nail catches")]))).toEqual([["I2", "2", "teardown 1, 2026-05-20"]]);
});

test("of note and finding of one bore the newer holds", () => {
  const caught = now([score("3", "nail catches")]);
  expect(sights(caught, ["2026-05-21,,score,none,,3"])).toEqual([]);
  expect(sights(caught, ["2026-05-21,,score,none,,1"])).toEqual([["I2", "3", "teardown 1, 2026-05-20"]]);
  expect(sights(caught, ["2026-05-10,,score,none,,3"])).toEqual([["I2", "3", "teardown 1, 2026-05-20"]]);
  expect(sights(now([score("3", "light")]), ["2026-05-10,,score,heavy,,3"])).toEqual([]);
});

test("a note of several bores stands for those that nobody looked at since", () => {
  const { evidence } = decided(now([score("3", "light")]), ["2026-05-10,,score,some,,2 3"]);
  expect(evidence.find(({ row }) => row === "I2")).toMatchObject({
    cylinder: "2",
    text: "scored bore seen, cylinder 2",
    from: "note 2026-05-10",
  });
});

test("a bore that was looked at again is what was seen last; another place is another look", () => {
  const first = on("2026-05-18", [score("3", "nail catches", "top/thrust")]);
  expect(sights([...first, ...now([score("3", "none")])])).toEqual([]);
  expect(sights([...first, ...now([score("3", "none", "top/thrust")])])).toEqual([]);
  expect(sights([...first, ...now([score("3", "none", "bottom/axial")])])).toHaveLength(1);
});

test("bores that were looked at are not named as unseen", () => {
  const seen = (lines: readonly Line[]) => decided(now(lines)).notSeen.some(({ line }) => line === "sight");
  expect(seen([marks("1", "part")])).toBe(false);
  expect(seen(soundBores)).toBe(true);
});

test("a scored bore leaves the bores unsettled, and its depth is what to measure", () => {
  const { decision, measureNow, notSeen } = decided(now([...sound, score("2", "nail catches")]));
  expect(decision).toMatchObject({ verdict: "test-again", reasons: ["outside-the-chance"] });
  expect(measureNow[0]).toMatchObject({ code: "again", text: "the depth of the score in bore 2" });
  expect(notSeen.find(({ line }) => line === "measured")?.why).toBe("bore 2: nail catches");
});

const shell = (word: string): Line => ["main bearing", "2", "lower", "appearance", word];

test.each(["wiped", "copper showing", "cracked or flaking"])(
  "a shell %s is no row: what it comes to is found before the engine is closed",
  (word) => {
    const { decision, damage, notSeen, evidence, nextAction, nextBy } = decided(now([...sound, shell(word)]));
    expect(evidence.some(({ row }) => row === "J5" || row === "J6")).toBe(false);
    expect(decision.scores.bottom.score).toBe(-1);
    expect(decision).toMatchObject({ verdict: "test-again", reasons: ["source-unknown"] });
    expect(damage).toEqual([`main bearing 2: ${word} (teardown 1, 2026-05-20)`]);
    expect(notSeen.find(({ settles }) => settles !== undefined)?.text).toBe(
      `main bearing 2: ${word} (teardown 1, 2026-05-20): its clearance, its journal, and what did it`,
    );
    expect(nextAction?.text).toContain("measure the clearance of main bearing 2");
    expect(nextBy).toBe("before-closing");
  },
);

test("a shell that is renewed, or goes out with the rings, holds nothing", () => {
  const wiped = now([...sound, shell("wiped")]);
  const renewed = on("2026-05-20", [shell("normal")], "new part");
  expect(decided([...wiped, ...renewed]).damage).toEqual([]);
  const out = decided(wiped, [], { ...asOpen, opened: "pistons-out" });
  expect(out.decision).toMatchObject({ verdict: "re-ring", reasons: ["rings-disturbed"] });
  expect(out.notSeen.some(({ text }) => text.startsWith("main bearing 2: wiped"))).toBe(true);
});

test("a scored journal and a crack come before rings that are due", () => {
  for (const line of [
    ["pin", "2", "", "appearance", "scored"],
    ["crack", "head", "", "found by", "dye"],
  ] as const) {
    const { decision, nextAction } = decided(now([...soundMains, ...soundPins, line]), [], {
      ...asOpen,
      opened: "crank-out",
    });
    expect(decision.reasons).toEqual(["source-unknown"]);
    expect(nextAction?.text).toMatch(/pin 2|the crack in the head/);
  }
});

test("a heavy knock that nobody has placed is no engine to close up; a placed one says stop", () => {
  const unplaced = decided([], ["2026-05-18,,knock,heavy,,"]);
  expect(unplaced.decision).toMatchObject({ verdict: "test-again", reasons: ["source-unknown"] });
  expect(unplaced.decision.urgency).toBeUndefined();
  const placed = decided([], ["2026-05-18,,knock,heavy,,3"]);
  expect(placed.decision).toMatchObject({ verdict: "test-again", urgency: "stop" });
  expect(placed.nextAction?.text).toContain("rod cap of cylinder 3 off");
});

test("what stops the engine is looked for where it can be got at", () => {
  const first = (what: string, choices: Partial<DecisionChoices>) =>
    decided([], [`2026-05-18,,${what},,`], choices).nextAction;
  expect(first("filter debris,chunks", {})?.text).toContain("pan off, caps off one by one");
  expect(first("filter debris,chunks", asOpen)?.text).toMatch(/^find where the metal comes from: caps off/);
  expect(first("combustion gas in coolant,some", {})).toMatchObject({ how: "leak-down", minutes: 25 });
  expect(first("combustion gas in coolant,some", asOpen)).toMatchObject({ how: "teardown" });
  // it is no test at a price
  expect(decided([], ["2026-05-18,,filter debris,chunks,,"]).testAgain).toEqual({
    ifNotTested: { verdict: "watch-it", use: "not-used" },
  });
});
