// What was measured on the engine apart, as evidence of the decision: rows J of the ladder (handbook decision.md 2; points
// are judgement, conditions of makers). Engine and figures invented.

import { type DecisionChoices, type EngineRecord, type Measurement, assessDecision } from "@sealtrend/core";
import { expect, test } from "vitest";
import {
  type Line,
  all,
  bore,
  containing,
  clearances,
  journal,
  measured,
  sound,
  soundBores,
  soundMains,
  soundPins,
  soundRings,
} from "../teardown/judge-samples.ts";
import { asOpen, openEngine } from "./deciding-records.ts";
import { recordOf } from "./records.ts";

const dated = (rows: readonly Measurement[], date: string) => rows.map((row) => ({ ...row, date }) as const);

interface Case {
  readonly services?: readonly string[];
  readonly clearances?: EngineRecord["engine"]["clearances"];
}

const decided = (
  measurements: readonly Measurement[],
  { services = [], clearances: limits = clearances }: Case = {},
  choices: Partial<DecisionChoices> = asOpen,
) => {
  const record = recordOf({ ...openEngine, services });
  return assessDecision(
    { ...record, engine: { ...record.engine, clearances: limits }, measurements },
    { today: "2026-05-21", ...choices },
  );
};

const rowsJ = (lines: readonly Measurement[], more?: Case) =>
  decided(lines, more)
    .evidence.filter(({ line }) => line === "measured")
    .map(({ row, cylinder }) => [row, cylinder]);
const now = (lines: readonly Line[], how: Parameters<typeof measured>[1] = {}) =>
  dated(measured(lines, how), "2026-05-20");

const tapered = bore("3", 86.7, 86.68, 86.62, 86.6, 86.55, 86.54);

test("a taper beyond its limit establishes the bore by itself, and says which and how much", () => {
  const { evidence, decision } = decided(now(tapered));
  expect(evidence.filter(({ line }) => line === "measured")).toMatchObject([
    {
      row: "J1",
      cylinder: "3",
      text: "bore 3 taper 0.15 mm, limit 0.10 mm",
      from: "teardown 1, 2026-05-20",
      points: { bore: 4 },
    },
  ]);
  expect(decision.scores.bore.state).toBe("established");
});

// G2: no rebuild from one line; a direct measurement made again counts as two
test("one reading of one bore asks to be made again, a repeated one is a rebuild", () => {
  const once = decided(now(tapered)).decision;
  expect(once.verdict).not.toBe("rebuild");
  expect(once.guards).toContainEqual({ code: "one-line-only" });
  const twice = decided([...dated(measured(tapered), "2026-05-19"), ...now(tapered)]).decision;
  expect(twice).toMatchObject({ verdict: "rebuild", basis: "needed" });
});

test("two bores beyond their limit are two measurements", () => {
  const second = bore("1", 86.7, 86.68, 86.62, 86.6, 86.55, 86.54);
  const lines = now([...tapered, ...second]);
  expect(rowsJ(lines)).toEqual([
    ["J1", "3"],
    ["J1", "1"],
  ]);
  expect(decided(lines).decision).toMatchObject({ verdict: "rebuild", basis: "needed" });
});

test("all measured and inside speaks against wear, and the engine is closed up", () => {
  const { evidence, decision, notSeen, cannotSee } = decided(now(sound));
  expect(evidence.map(({ row }) => row)).toEqual(["A1", "C3", "E2", "I4", "J2", "J4", "J6"]);
  expect(decision).toMatchObject({ verdict: "leave-it", basis: "nothing-shown" });
  expect(notSeen.map(({ line }) => line)).not.toContain("measured");
  expect(cannotSee).not.toContain("bearings");
  expect(cannotSee).toContain("ring grooves");
});

test("a re-ring on what is measured inside has nothing open", () => {
  const { decision } = decided(now(sound), {}, { ...asOpen, ownership: { kind: "for-good" } });
  expect(decision).toMatchObject({ verdict: "re-ring" });
  expect(decision.guards).toContainEqual({ code: "subject-to-measuring", open: [] });
});

test.each([
  [
    "three bores of four",
    soundBores.filter(([, label]) => label !== "2"),
    "bores measured; ring gaps and bearings",
  ],
  ["pins without mains", soundPins, "bores and ring gaps measured; bearings"],
  ["bores and rings alone", [...soundBores, ...soundRings], "bearings"],
])("%s: nothing is said of the rest", (_, lines, left) => {
  const { notSeen } = decided(now(lines));
  const unseen = notSeen.filter(({ line }) => line === "measured");
  expect(unseen.map(({ text }) => text).join("; ")).toBe(`${left} measured`);
  expect(unseen.every(({ command }) => command === "sealtrend teardown engine")).toBe(true);
});

test("only where each one was measured is there a row of all inside", () => {
  expect(rowsJ(now(soundBores.filter(([, label]) => label !== "2")))).toEqual([]);
  expect(rowsJ(now(soundPins))).toEqual([]);
  expect(rowsJ(now([...soundPins, ...soundMains]))).toEqual([["J6", undefined]]);
});

test("what is too close to tell is no row, and is named among what to measure", () => {
  // 0.099 mm by a gauge of 5.9 um
  const close = bore("1", 86.62, 86.61, 86.56, 86.55, 86.521, 86.52);
  const lines = now([...close, ...soundBores.filter(([, label]) => label !== "1")]);
  expect(rowsJ(lines)).toEqual([]);
  expect(decided(lines).notSeen.find(({ line }) => line === "measured")?.why).toBe(
    "too close to tell: bore 1 taper 0.099 mm, limit 0.10 mm",
  );
});

test("ring gaps, journals and guides beyond their limits are rows of their places", () => {
  const gap: Line = ["ring", "2", "1/bottom", "end gap", "1.20..1.25"];
  const guide: Line = ["guide", "4ex", "", "rocking", 0.4];
  expect(rowsJ(now([gap, ...journal("pin", "3", 47.9), guide]))).toEqual([
    ["J3", "2"],
    ["J5", undefined],
    ["J7", "4"],
  ]);
});

test("a contradiction is no row until it is cleared", () => {
  const slip = bore("3", 8.67, 86.53, 86.53, 86.52, 86.52, 86.52);
  expect(rowsJ(now([...slip, ...soundBores.filter(([, label]) => label !== "3")]))).toEqual([]);
});

test("without limits there is nothing to be beyond, and that is said", () => {
  const { evidence, notSeen } = decided(now(sound), { clearances: [] });
  expect(evidence.some(({ line }) => line === "measured")).toBe(false);
  expect(notSeen.find(({ line }) => line === "measured")?.why).toBe(
    "measured, but engine.json has no limits for them",
  );
});

test("work since then, or a year, makes it untrue", () => {
  const old = dated(measured(tapered), "2024-05-20");
  expect(rowsJ(old)).toEqual([]);
  expect(decided(old).notSeen.find(({ line }) => line === "measured")?.why).toContain("older than a year");
  const before = dated(measured(tapered), "2026-05-10");
  expect(rowsJ(before, { services: ["2026-05-12,,valve job,all"] })).toEqual([["J1", "3"]]);
  expect(rowsJ(before, { services: ["2026-05-12,,rebore,all"] })).toEqual([]);
  expect(rowsJ(before, { services: ["2026-05-12,,rebore,1"] })).toEqual([["J1", "3"]]);
});

test("on the day of the work what was found was before it, what was machined is its outcome", () => {
  const day = { services: ["2026-05-20,,rebore,all"] };
  expect(rowsJ(now(tapered), day)).toEqual([]);
  const machined = all((label) => bore(label, 87.01, 87.01, 87.01, 87.01, 87.01, 87.01));
  const limits = clearances.filter(({ quantity }) => quantity === "taper" || quantity === "out-of-round");
  expect(rowsJ(now(machined, { state: "after machining" }), { ...day, clearances: limits })).toEqual([
    ["J2", undefined],
  ]);
});

test("measured beyond its limit, an engine in place is still told to be measured again or rebuilt", () => {
  const { decision } = decided([...dated(measured(tapered), "2026-05-19"), ...now(tapered)], {}, {});
  expect(decision.scores.bore.state).toBe("established");
  expect(decision).toMatchObject({ verdict: "rebuild" });
});

test("a row names its source of limits in the ladder", () => {
  expect(decided(now(tapered)).evidence.find(({ row }) => row === "J1")).toMatchObject({
    status: "published",
    source: containing("the engine's own manual wins"),
    use: "counted",
  });
});
