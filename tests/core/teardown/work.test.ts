// The work that follows from a teardown, in the order of asking. What follows from what: makers' manuals named in the
// handbook's table, else common practice. Engine invented.

import { expect, test } from "vitest";
import { mm } from "./consistency-samples.ts";
import {
  containing,
  type Line,
  all,
  bore,
  codes,
  journal,
  judgedAs,
  limit,
  measured,
  saw,
  sound,
  soundBores,
  soundMains,
  soundPins,
  soundRings,
  workOf,
} from "./judge-samples.ts";

const tapered = bore("3", 86.7, 86.68, 86.62, 86.6, 86.55, 86.54);
const others = all((label) => bore(label, 86.54, 86.53, 86.53, 86.52, 86.52, 86.52), ["1", "2", "4"]);

test("all measured and inside: it goes back together as it is", () => {
  expect(workOf(sound)).toMatchObject([
    { code: "use-again", why: "inside their limits: bores, rings, main bearings, rod bearings" },
  ]);
});

test("only some of it measured: that goes back, and of the rest nothing is said", () => {
  expect(workOf(soundPins)).toMatchObject([
    {
      code: "use-again",
      text: "rod bearings: back as they are, new gaskets and seals, every part in its place",
      why: "inside their limits: rod bearings; nothing is said of bores, rings, main bearings: not measured, or without a limit",
    },
  ]);
});

test("without any limit nothing follows", () => {
  expect(judgedAs(measured(sound), { ...saw, clearances: [] }).work).toEqual([]);
});

test("a pin that was not measured is asked for, not taken for good", () => {
  expect(workOf(soundPins.filter(([, label]) => label !== "4"))).toMatchObject([
    {
      code: "measure-missing",
      text: "measure pin 4, diameter",
      why: "3 of 4 measured, the usual number; if this engine has fewer: sealtrend engine set saw layout.pins 3",
    },
  ]);
});

// 86.5 mm, largest 86.70: worst 2·86.70 − 86.50 = 86.90 and more, so +0.50; centred 86.70 + 0.02 + guard, so +0.25
test("a bore past its taper is bored, all of them to one size, with both answers where they differ", () => {
  const [again, line, ...rest] = workOf([...tapered, ...others]);
  expect(again?.code).toBe("measure-again");
  expect(rest).toEqual([]);
  expect(line).toMatchObject({
    code: "bore-oversize",
    labels: ["3"],
    why: "bore 3 taper 0.15 mm, limit 0.10 mm",
    text: "bore all to +0.50 mm (finish 87.00, bore to 86.98); +0.25 mm if the shop centres the bar in the worn bore: ask; measure the new pistons before the shop bores",
  });
  expect(line?.caution).toContain("aluminium");
});

test("a bore that was not measured may need more than the one that was", () => {
  expect(codes(judgedAs(measured(tapered)))).toEqual(["measure-again", "measure-missing", "bore-oversize"]);
});

test("a score that catches the nail is bored out whatever the diameters say", () => {
  const score: Line = ["bore", "2", "", "score", "nail catches"];
  expect(workOf([...soundBores, score])).toMatchObject([
    { code: "bore-oversize", labels: ["2"], why: "bore 2 score: nail catches" },
  ]);
});

test("no size that is offered cleans up: sleeve, or another block", () => {
  const small = { ...saw, offered: { bore: { unit: "mm" as const, sizes: [mm(0.1)] } } };
  expect(workOf([...tapered, ...others], small)).toMatchObject([
    { code: "measure-again" },
    { code: "sleeve-or-replace" },
  ]);
});

test("sizes that nobody wrote down are asked for, not guessed", () => {
  const [, line] = workOf([...tapered, ...others], { ...saw, offered: {} });
  expect(line?.text).toContain("sealtrend engine set saw limits.offered");
  expect(judgedAs(measured([...tapered, ...others]), { ...saw, offered: {} }).oversize).toBeUndefined();
});

test("an engine that was bored before says so, and its sizes count from the standard bore", () => {
  const unworn: Line = ["bore", "3", "unworn/thrust", "diameter", 86.76];
  const worn = bore("3", 86.96, 86.94, 86.88, 86.86, 86.8, 86.8);
  const { oversize } = judgedAs(measured([...worn, unworn]));
  expect(oversize?.alreadyBored).toBeCloseTo(0.00025, 9);
  expect(oversize?.original).toBeCloseTo(0.08676, 9);
  expect(oversize?.originalFrom).toBe("unworn reading");
  // worst: 2·86.96 − 86.76 = 87.16 and more, so +0.75 on 86.50
  expect(oversize?.answers[0]?.size).toBeCloseTo(0.00075, 9);
});

test("too close to tell is measured better, never machined", () => {
  // 0.099 mm by a gauge of 5.9 um: about even
  const close = bore("1", 86.62, 86.61, 86.56, 86.55, 86.521, 86.52);
  const lines = workOf([
    ...close,
    ...all((label) => bore(label, 86.54, 86.53, 86.53, 86.52, 86.52, 86.52), ["2", "3", "4"]),
  ]);
  expect(lines).toMatchObject([{ code: "measure-better", labels: ["1"] }]);
  expect(lines[0]?.why).toContain("too close to tell: bore 1 taper 0.099 mm, limit 0.10 mm");
});

test("a loose piston in a good bore: pistons; in a worn bore they come with the boring", () => {
  const pistons = all((label): readonly Line[] => [
    ["piston", label, "", "diameter", label === "2" ? 86.36 : 86.48],
  ]);
  expect(workOf([...soundBores, ...pistons])).toMatchObject([
    { code: "measure-again", labels: ["2"] },
    { code: "pistons", labels: ["2"] },
  ]);
  expect(codes(judgedAs(measured([...tapered, ...others, ...pistons])))).toEqual(["bore-oversize"]);
});

test("rings past their gap in good bores: re-ring and hone", () => {
  const gaps = all((label): readonly Line[] => [
    ["ring", label, "1/bottom", "end gap", label === "1" ? "1.20..1.25" : "0.35..0.40"],
  ]);
  expect(workOf([...soundBores, ...gaps])).toMatchObject([
    { code: "re-ring-and-hone", labels: ["1"], caution: containing("30 psi") },
  ]);
});

test("glaze is honed, fine vertical scratches are not asked about", () => {
  const marks = (word: string): Line => ["bore", "1", "", "crosshatch", word];
  expect(workOf([...soundBores, marks("none")])).toMatchObject([{ code: "re-ring-and-hone", labels: ["1"] }]);
  expect(codes(judgedAs(measured([...soundBores, marks("part")])))).toEqual(["use-again"]);
});

test("new rings with too small a gap are filed", () => {
  const tight = measured([["ring", "1", "1/bottom", "end gap", "0.10..0.15"]], { state: "new part" });
  const [line] = judgedAs(tight, { ...saw, cylinders: ["1"], banks: [["1"]] }).work;
  expect(line?.text).toContain("file the ring gaps of cylinder 1");
});

test("the order of asking: block, bore, crank, head", () => {
  const lines: readonly Line[] = [
    ["guide", "3ex", "", "rocking", 0.4],
    ...all((label) => journal("pin", label, 47.9)),
    ...tapered,
    ...others,
    ["crack", "head", "between 2 and 3", "found by", "dye"],
  ];
  const fitted = lines.filter(([part]) => part !== "guide");
  expect(codes(judgedAs(measured(lines)))).toEqual([
    "repair-crack",
    "bore-oversize",
    "grind-crank",
    "measure-missing",
    "guides-and-seats",
  ]);
  expect(codes(judgedAs(measured(fitted)))).toEqual(["repair-crack", "bore-oversize", "grind-crank"]);
});

test("work on valves warns of the springs", () => {
  const [, line] = workOf([["guide", "3ex", "", "rocking", 0.4]]);
  expect(line).toMatchObject({
    code: "guides-and-seats",
    why: "guide 3ex clearance 0.20 mm, limit 0.10 mm",
    caution: containing("Springs under load fly"),
  });
});

test("of an aircraft every line defers to the maker and a licensed person", () => {
  const lines = workOf([...tapered, ["crack", "case", "", "found by", "dye"]], { ...saw, use: "aircraft" });
  expect(lines.length).toBeGreaterThan(1);
  for (const { caution } of lines) expect(caution).toContain("licensed person's");
  expect(lines[0]?.text).toContain("an approved repair");
});

test("a bore that contradicts itself is measured again before anything is bored", () => {
  const slip = bore("3", 8.67, 86.53, 86.53, 86.52, 86.52, 86.52);
  const assessment = judgedAs(measured([...slip, ...others]));
  expect(assessment.conflicts).toMatchObject([{ code: "likely-slip", label: "3" }]);
  expect(codes(assessment)).toEqual(["measure-better"]);
  expect(assessment.work[0]?.text).toContain("was 86.70 mm");
});

test("six pins and seven mains are thirteen things, and all thirteen are counted", () => {
  const six = ["1", "2", "3", "4", "5", "6"];
  const engine = { ...saw, cylinders: six, banks: [six] };
  const lines = [
    ...all((label) => journal("pin", label, 47.985), six),
    ...all((label) => journal("main", label, 57.985), [...six, "7"]),
  ];
  const { counts } = judgedAs(measured(lines, {}, engine), engine);
  expect(counts.map(({ expected, measured: done }) => [expected, done])).toEqual([
    [6, 6],
    [7, 7],
  ]);
});

test("a part that stands above its fellows is worked on whichever the order of the rows", () => {
  const lines = [...tapered, ...others, ...soundRings, ...soundMains, ...soundPins];
  expect(workOf(lines.toReversed())).toEqual(workOf(lines));
});

test("what the shop gave back outside its new limit goes back to the shop, not under the bar again", () => {
  const machined = bore("1", 87.05, 87.05, 87.02, 87.02, 87.0, 87.0);
  const limits = [limit("bore", "taper", { fresh: [undefined, 0.02], wear: [undefined, 0.1] })];
  const of = { ...saw, cylinders: ["1"], banks: [["1"]], clearances: limits };
  const { work } = judgedAs(measured(machined, { state: "after machining" }, of), of);
  expect(work).toMatchObject([
    { code: "measure-better", labels: ["1"], why: "bore 1 taper 0.05 mm, new limit 0.02 mm" },
  ]);
  expect(work[0]?.text).toContain("show the shop");
});
