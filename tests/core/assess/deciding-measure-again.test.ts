// What is left to measure of an open engine that was measured: what decides first, then what nobody measured. Invented.

import { type DecisionChoices, type Measurement, assessDecision } from "@sealtrend/core";
import { expect, test } from "vitest";
import {
  type Line,
  all,
  bore,
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

const now = (lines: readonly Line[]): readonly Measurement[] =>
  measured(lines).map((row) => ({ ...row, date: "2026-05-20" }) as const);

const decided = (measurements: readonly Measurement[], opened: NonNullable<DecisionChoices["opened"]>) => {
  const record = recordOf(openEngine);
  return assessDecision(
    { ...record, engine: { ...record.engine, clearances }, measurements },
    { ...asOpen, opened },
  );
};
const codes = (lines: readonly Line[], opened: NonNullable<DecisionChoices["opened"]>) =>
  decided(now(lines), opened).measureNow.map(({ code }) => code);

const but = (label: string, lines: readonly Line[]) => lines.filter((line) => line[1] !== label);
const tapered = bore("3", 86.7, 86.68, 86.62, 86.6, 86.55, 86.54);
// 57.95 mm at least, by a micrometer of 3.9 um
const close = journal("main", "2", 57.96, 57.96, 57.951, 57.95);

test("what was measured is not asked for again", () => {
  expect(codes([], "crank-out")).toEqual(["bores", "ring-gaps", "journals"]);
  expect(codes(soundBores, "crank-out")).toEqual(["ring-gaps", "journals"]);
  expect(codes([...soundBores, ...soundRings], "crank-out")).toEqual(["journals"]);
  expect(codes(sound, "crank-out")).toEqual([]);
  // bearings are inside by their journals
  expect(codes(sound, "pistons-in")).toEqual(["rod-side"]);
  expect(codes([...soundMains, ...soundPins], "pistons-in")).toEqual(["bores", "rod-side"]);
});

test("of bores measured in part one that is left is named", () => {
  const [first] = decided(now(but("2", soundBores)), "pistons-in").measureNow;
  expect(first).toMatchObject({ code: "bores", text: "bore 2 at three heights, along and across the crank" });
});

test("a bore read once past its limit decides, and is named first, before what is too close to tell", () => {
  const lines = [...tapered, ...but("3", soundBores), ...close, ...but("2", soundMains)];
  const { decision, measureNow, nextAction } = decided(now(lines), "crank-out");
  expect(decision.reasons).toEqual(["one-line-only"]);
  expect(measureNow.slice(0, 2).map(({ code, text }) => [code, text.split(":")[0]])).toEqual([
    ["again", "bore 3 once more, set up anew"],
    ["again", "main 2 diameter better"],
  ]);
  expect(measureNow[0]?.limits.map(({ text }) => text)).toContain("bore taper up to 0.1 mm (wear)");
  expect(nextAction?.text).toBe("measure bore 3 once more, set up anew, before you order");
});

test("two readings, or two parts, need no third", () => {
  const others = but("3", soundBores);
  const before = measured([...tapered, ...others]).map((row) => ({ ...row, date: "2026-05-19" }) as const);
  const twice = [...before, ...now([...tapered, ...others])];
  expect(decided(twice, "pistons-in").measureNow.map(({ code }) => code)).not.toContain("again");
  const second = bore("1", 86.7, 86.68, 86.62, 86.6, 86.55, 86.54);
  expect(codes([...tapered, ...second, ...but("1", others)], "pistons-in")).not.toContain("again");
});

// one reading of the bore makes its taper and the clearance of its piston: G2 counts it once
test("a bore and the clearance that hangs on it are one measurement", () => {
  const pistons = all((label): readonly Line[] => [["piston", label, "", "diameter", 86.48]]);
  const { decision, evidence } = decided(
    now([...tapered, ...but("3", soundBores), ...pistons]),
    "pistons-out",
  );
  expect(evidence.filter(({ row }) => row === "J1")).toHaveLength(1);
  expect(decision.reasons).toEqual(["one-line-only"]);
});

test("what cannot be got at is not asked for", () => {
  const lines = [...journal("main", "2", 57.93), ...but("2", soundMains)];
  const again = (opened: NonNullable<DecisionChoices["opened"]>) => codes(lines, opened).includes("again");
  expect([again("crank-out"), again("pistons-in"), again("head-off")]).toEqual([true, false, false]);
});

test("before ordering only what nobody measured is named", () => {
  const { decision, nextAction } = decided(now([...soundBores, ...soundRings]), "pistons-out");
  expect(decision.verdict).toBe("re-ring");
  expect(nextAction?.text).toBe("measure bearings before you order");
  expect(decided(now(sound), "pistons-out").nextAction).toBeUndefined();
});

test("what contradicts itself is a job: that place once more", () => {
  const twice = [...journal("pin", "2", 47.97, 47.97), ...journal("pin", "2", 47.4)];
  const [first] = decided(now([...twice, ...soundBores]), "crank-out").measureNow;
  expect(first).toMatchObject({ code: "again", text: "pin 2 front/0 once more" });
});
