// Where a figure stands in one word, what stops the job, and a misprinted limit. Engine invented.

import { expect, test } from "vitest";
import type { ClearanceLimit, Engine } from "@sealtrend/core/parts";
import { inch } from "./consistency-samples.ts";
import { bore, codes, find, journal, judgedAs, limit, measured, saw, type Line } from "./judge-samples.ts";

const standingOf = (size: number, of: Engine = saw, state = "cleaned") =>
  judgedAs(measured(journal("main", "1", size), { state }), of).items[0]?.standing;
const bare = (limits: Engine["clearances"]): Engine => ({ ...saw, clearances: limits });

// mains new 57.982 to 58.000, wear 57.950 or more, by a micrometer of 4 um
test("each standing has a word of its own", () => {
  expect([57.93, 57.95, 57.965, 57.982, 57.991].map((size) => standingOf(size))).toEqual([
    "outside",
    "too-close",
    "worn",
    "close-as-new",
    "inside",
  ]);
  const wearOnly = bare([limit("main", "diameter", { wear: [57.95, undefined] })]);
  expect(standingOf(57.99, wearOnly)).toBe("inside-wear");
  expect(standingOf(57.99, bare([]))).toBeUndefined();
  // of a machined part what is wanted comes first
  expect(standingOf(57.965, saw, "after machining")).toBe("outside");
});

test("what stops the job stands first: crack, scores, shells", () => {
  const lines: readonly Line[] = [
    ["main bearing", "2", "lower", "appearance", "wiped"],
    ["bore", "3", "top/thrust", "score", "nail catches"],
    ["crack", "head", "between 2 and 3", "found by", "dye"],
  ];
  expect(judgedAs(measured([...lines, ...bore("1", 86.52)])).spoilt.map(({ text }) => text)).toEqual([
    "a crack in the head",
    "bore 3: nail catches",
    "main bearing 2: wiped",
  ]);
});

test("a misprinted limit stops that limit alone", () => {
  const wear = limit("main", "diameter", { wear: [57.95, undefined] });
  const printed: ClearanceLimit = {
    ...limit("main", "diameter", { fresh: [57.982, 58] }),
    also: { new: { low: inch(2.1828), high: inch(2.2835) }, unit: "in" },
    written: {
      "new.low": "57.982",
      "new.high": "58.000",
      "also.new.low": "2.1828",
      "also.new.high": "2.2835",
    },
  };
  const [item] = judgedAs(measured(journal("main", "1", 57.965)), bare([printed, wear])).items;
  expect(item?.waits).toBeUndefined();
  expect(item?.standing).toBe("inside-wear");
  expect(item?.verdicts).toMatchObject([
    { kind: "new", waits: true },
    { kind: "wear", verdict: "inside" },
  ]);
  const alone = judgedAs(measured(journal("main", "1", 57.965)), bare([printed]));
  expect(alone.items[0]).toMatchObject({ standing: "waits", waits: true, waitsFor: "limit" });
  expect(alone.conflicts).toMatchObject([{ code: "limit-misprint", limit: "new" }]);
  expect(codes(alone)).toContain("measure-better");
});

// by hand: 3 at 105.21 among seven at 105.12; swapping 21 to 12 would land on the others, but wear does as well
test("one worn bore among eight is a doubt, not a contradiction: its verdict stands", () => {
  const eight: Engine = {
    ...saw,
    cylinders: ["1", "2", "3", "4", "5", "6", "7", "8"],
    banks: [
      ["1", "3", "5", "7"],
      ["2", "4", "6", "8"],
    ],
    clearances: [limit("bore", "diameter", { fresh: [105, 105.03], wear: [undefined, 105.15] })],
  };
  const lines = eight.cylinders.flatMap((label) => bore(label, label === "3" ? 105.21 : 105.12));
  const judged = judgedAs(measured(lines, {}, eight), eight);
  expect(judged.conflicts).toMatchObject([{ code: "swapped-digits", label: "3", weight: "doubtful" }]);
  expect(find(judged.items, "bore", "diameter", "3")).toMatchObject([{ standing: "outside" }]);
  expect(codes(judged)).toContain("bore-oversize");
});

// limits 0.018 mm apart, 3.92 · 4.8 um = 0.0188: one reading of a 0.01 mm micrometer never shows it, two do
test("an instrument that settles it with more readings is not called unable", () => {
  const coarse = bare([limit("main", "diameter", { fresh: [57.982, 58] })]);
  const by = (resolution: number) =>
    judgedAs(measured(journal("main", "1", 57.99), { resolution }), coarse).items[0]?.verdicts;
  expect(by(0.01)).toMatchObject([{ settlement: { text: "micrometer 0.01 mm, 2 readings at each place" } }]);
  expect(by(0.01)?.[0]?.neverInside).toBeUndefined();
  const narrow = bare([limit("main", "diameter", { fresh: [57.982, 57.99] })]);
  const [verdict] =
    judgedAs(measured(journal("main", "1", 57.986), { resolution: 0.01 }), narrow).items[0]?.verdicts ?? [];
  expect(verdict).toMatchObject({ neverInside: true, neverBy: "micrometer 0.01 mm" });
});
