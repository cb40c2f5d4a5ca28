// One teardown judged: figures made of readings, their verdicts, states of the work, contradictions. Engine invented.

import { expect, test } from "vitest";
import { type TeardownItem, judgeTeardown } from "@sealtrend/core";
import { inch } from "./consistency-samples.ts";
import {
  containing,
  type Line,
  bore,
  clearances,
  journal,
  judgedAs,
  limit,
  measured,
  saw,
  sound,
  find,
} from "./judge-samples.ts";

const inMm = (items: readonly TeardownItem[]) => items.map(({ value }) => Number((value * 1000).toFixed(4)));

test("nothing measured is nothing judged", () => {
  expect(judgeTeardown({ engine: saw, measurements: [] })).toBeUndefined();
});

test("the newest teardown is judged unless another is named", () => {
  const measurements = [
    ...measured(bore("1", 86.6), { teardown: 1 }),
    ...measured(bore("1", 86.7), { teardown: 2 }),
  ];
  expect(judgedAs(measurements)).toMatchObject({ teardown: 2, from: "2026-03-02", to: "2026-03-02" });
  expect(inMm(judgedAs(measurements, saw, 1).items)).toEqual([86.6]);
});

// computed (handbook teardown.md 7, Q1): taper +0.09, out-of-round 0.04, cylindricity 0.09, wear 0.12 on 86.50
test("six diameters of a bore come to taper, out-of-round, cylindricity and wear", () => {
  const { derived } = judgedAs(measured(bore("1", 86.62, 86.58, 86.56, 86.55, 86.53, 86.52)));
  expect(
    derived.map(({ quantity, at, value, from }) => [quantity, at, Number((value * 1000).toFixed(6)), from]),
  ).toEqual([
    ["taper", "thrust", 0.09, "top/thrust 86.62 less bottom/thrust 86.53"],
    ["out-of-round", "top", 0.04, "top/thrust 86.62 less top/axial 86.58"],
    ["cylindricity", undefined, 0.09, "top/thrust 86.62 less bottom/thrust 86.53"],
    ["wear", undefined, 0.12, "top/thrust 86.62 less 86.50, the low end of the new limit"],
  ]);
});

// computed (handbook 3.4): taper +0.080 by a 0.01 mm gauge, u = √2·4.163 = 5.89 µm, limit 0.10: p 0.9997, inside;
// out-of-round +0.045, limit 0.05: p 0.8021, too close, needs u 3.04 µm
test("a taper is held against its limit with the uncertainty of a difference", () => {
  const { derived } = judgedAs(measured(bore("1", 86.615, 86.57, 86.56, 86.55, 86.535, 86.535)));
  const [taper] = find(derived, "bore", "taper");
  expect(taper?.uncertainty).toBeCloseTo(5.89e-6, 8);
  expect(taper?.verdicts).toMatchObject([
    { kind: "wear", verdict: "inside", source: "workshop manual p. 62" },
  ]);
  expect(taper?.verdicts[0]?.probability).toBeCloseTo(0.9997, 4);
  const [round] = find(derived, "bore", "out-of-round");
  expect(round?.verdicts[0]?.probability).toBeCloseTo(0.8021, 3);
  expect(round?.verdicts[0]).toMatchObject({ verdict: "too-close-to-tell" });
  expect((round?.verdicts[0]?.settlement?.needed ?? 0) * 1e6).toBeCloseTo(3.04, 2);
});

test("a bore that is tight at the top has a taper below 0, judged by its size", () => {
  const { derived } = judgedAs(measured(bore("1", 86.52, 86.52, 86.56, 86.56, 86.66, 86.64)));
  const [taper] = find(derived, "bore", "taper");
  expect(inMm(taper === undefined ? [] : [taper])).toEqual([-0.14]);
  expect(taper?.verdicts).toMatchObject([{ verdict: "outside" }]);
});

test("wear counts from the unworn spot where one was measured, and the gauge's own error drops out", () => {
  const unworn: Line = ["bore", "1", "unworn/thrust", "diameter", 86.51];
  const { derived, items } = judgedAs(measured([...bore("1", 86.62, 86.6), unworn]));
  const [wear] = find(derived, "bore", "wear");
  expect(inMm(wear === undefined ? [] : [wear])).toEqual([0.11]);
  expect(wear?.from).toBe("top/thrust 86.62 less 86.51, the unworn reading");
  expect(wear?.uncertainty).toBeCloseTo(5.89e-6, 8);
  expect(find(items, "bore", "diameter", "1", "unworn/thrust")[0]?.verdicts).toEqual([]);
});

test("repeats of one place are one figure, and it is known better", () => {
  const once = judgedAs(measured(bore("1", 86.62)));
  const twice = judgedAs(measured([...bore("1", 86.62), ...bore("1", 86.63)]));
  expect(twice.items).toHaveLength(1);
  expect(inMm(twice.items)).toEqual([86.625]);
  expect(twice.items[0]?.readings).toBe(2);
  expect(twice.items[0]?.uncertainty).toBeLessThan(once.items[0]?.uncertainty ?? 0);
});

test("a machined part takes the place of the one as found, and is judged by the new limit", () => {
  const before = measured(bore("1", 86.75, 86.7, 86.65, 86.62, 86.56, 86.55), { state: "as found" });
  const after = measured(bore("1", 87.01, 87.01, 87.01, 87.01, 87.01, 87.01), { state: "after machining" });
  const judged = judgedAs([...before, ...after], {
    ...saw,
    clearances: [limit("bore", "taper", { fresh: [undefined, 0.02], wear: [undefined, 0.1] })],
  });
  expect(judged.items).toHaveLength(12);
  expect(judged.items.filter(({ superseded }) => superseded === true)).toHaveLength(6);
  expect(find(judged.derived, "bore", "taper")).toMatchObject([{ state: "after machining", value: 0 }]);
  expect(judged.work.map(({ code }) => code)).not.toContain("bore-oversize");
});

test("what was cleaned takes the place of what was found at the same place only", () => {
  const found = measured(journal("main", "1", 57.97, 57.98), { state: "as found" });
  const cleaned = measured(journal("main", "1", 57.96), { state: "cleaned" });
  const { items } = judgedAs([...found, ...cleaned]);
  expect(items.map(({ at, state, superseded }) => [at, state, superseded])).toEqual([
    ["front/0", "as found", true],
    ["front/90", "as found", undefined],
    ["front/0", "cleaned", undefined],
  ]);
});

// feelers: computed (handbook 3.4, 6): 0.35 goes, 0.40 stops, limit 0.15 to 0.40: p 0.9521, inside
test("a gap by feeler is judged by its two leaves", () => {
  const ring: Line = ["ring", "1", "1/bottom", "end gap", "0.35..0.40"];
  const gaps = { ...saw, clearances: [limit("ring", "end gap", { fresh: [0.15, 0.4] })] };
  const [gap] = judgedAs(measured([ring]), gaps).items;
  expect(gap?.between).toBeDefined();
  expect(gap?.verdicts[0]?.probability).toBeCloseTo(0.9521, 4);
  expect(gap?.verdicts[0]).toMatchObject({ kind: "new", verdict: "inside" });
});

// computed (handbook 3.4, 5): journal 2.7475 in by a 0.0001 in micrometer, low limit 2.7480: p 0.0005, outside
test("a journal in inches is told in inches", () => {
  const inches = {
    ...saw,
    clearances: [limit("main", "diameter", { wear: [2.748, undefined], unit: "in" })],
  };
  const { items } = judgedAs(
    measured(journal("main", "1", 2.7475), { unit: "in", resolution: 0.0001 }),
    inches,
  );
  expect(items[0]?.value).toBeCloseTo(inch(2.7475), 12);
  expect(items[0]?.unit).toBe("in");
  expect(items[0]?.verdicts[0]?.probability).toBeLessThan(0.001);
  expect(items[0]?.verdicts[0]).toMatchObject({ verdict: "outside" });
});

const line = (name: string, ...gaps: readonly string[]): readonly Line[] =>
  gaps.map((gap, i) => ["head", "", `${name}/${String(75 * i)}`, "gap", gap]);
const flat = ["<0.03", "<0.03", "<0.03", "<0.03", "<0.03"];

test("a head is flat only when both diagonals were looked along", () => {
  const half = judgedAs(measured([...line("long1", ...flat), ...line("diagonal1", ...flat)]));
  expect(find(half.derived, "head", "flatness")[0]?.verdicts).toMatchObject([
    { verdict: "too-close-to-tell", settlement: { text: containing("both diagonals") } },
  ]);
  const both = judgedAs(measured([...line("diagonal1", ...flat), ...line("diagonal2", ...flat)]));
  expect(find(both.derived, "head", "flatness")[0]?.verdicts).toMatchObject([{ verdict: "inside" }]);
});

test("a deep gap is outside without them, and the skim is told", () => {
  const bowed = judgedAs(measured(line("long1", "<0.03", "0.12..0.14", "0.18..0.20", "0.12..0.14", "<0.03")));
  expect(find(bowed.derived, "head", "flatness")[0]?.verdicts).toMatchObject([{ verdict: "outside" }]);
  // 0.19 mm deep, 0.02 mm more
  expect(bowed.work).toMatchObject([{ code: "skim-head", text: containing("0.21 mm at least"), labels: [] }]);
});

// computed (handbook Q12): bounds of all by 1 − Σ(1 − p)
test("a part of many readings is inside only where all of them can be", () => {
  const { parts } = judgedAs(measured(sound));
  const pins = parts.find(
    ({ part, label, quantity, kind }) =>
      part === "pin" && label === undefined && quantity === "diameter" && kind === "wear",
  );
  expect(pins).toMatchObject({ verdict: "inside" });
  expect(pins?.atLeast).toBeLessThanOrEqual(pins?.atMost ?? 0);
});

test("new and wear limits are judged apart: worn and serviceable", () => {
  const { items } = judgedAs(measured(journal("main", "1", 57.965)));
  expect(items[0]?.verdicts).toMatchObject([
    { kind: "new", verdict: "outside" },
    { kind: "wear", verdict: "inside" },
  ]);
});

test("figures without a limit, volumes and forces are named, not passed over", () => {
  const assessment = judgedAs(measured([...bore("1", 86.52), ["seat", "1ex", "", "width", 1.4]]), {
    ...saw,
    clearances: clearances.filter(({ part }) => part === "bore"),
  });
  expect(assessment.withoutLimit).toEqual([{ part: "seat", quantity: "width" }]);
  const springs = measured([["spring", "1in", "", "load", 250]], { unit: "N" });
  expect(judgedAs(springs)).toMatchObject({
    items: [],
    notJudged: [{ part: "spring", label: "1in", quantity: "load" }],
  });
});

test("findings are kept with their words, those of a renewed part no longer count", () => {
  const shell = (word: string): Line => ["main bearing", "3", "lower", "appearance", word];
  const found = judgedAs(measured([shell("wiped")]));
  expect(found.findings).toEqual([
    {
      date: "2026-03-02",
      part: "main bearing",
      label: "3",
      at: "lower",
      quantity: "appearance",
      word: "wiped",
      state: "cleaned",
    },
  ]);
  expect(found.work.map(({ code }) => code)).toEqual(["new-bearings"]);
  const renewed = judgedAs([
    ...measured([shell("wiped")], { state: "as found" }),
    ...measured([shell("normal")], { state: "new part" }),
  ]);
  expect(renewed.findings).toHaveLength(2);
  expect(renewed.work).toEqual([]);
});
