// What a teardown says of wear in each place. Engine invented.

import { wearFound } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import {
  type Line,
  all,
  bore,
  clearances,
  journal,
  judgedAs,
  measured,
  saw,
  sound,
  soundBores,
  soundMains,
  soundPins,
} from "./judge-samples.ts";

const foundIn = (lines: readonly Line[], of = saw) =>
  wearFound(judgedAs(measured(lines, {}, of), of), of).map(({ place, within, beyond, open }) => [
    place,
    within,
    beyond.length,
    open.length,
  ]);

test("each place is inside where each one was measured", () => {
  expect(foundIn(sound)).toEqual([
    ["bore", "yes", 0, 0],
    ["rings", "yes", 0, 0],
    ["bottom", "yes", 0, 0],
  ]);
});

test("one that was not measured leaves it open", () => {
  expect(foundIn(soundBores.filter(([, label]) => label !== "4"))).toEqual([["bore", "no", 0, 0]]);
  expect(foundIn(soundPins)).toEqual([["bottom", "no", 0, 0]]);
});

test("a bore with one diameter has no taper to be inside of its limit", () => {
  const lines = [
    ...all((label) => bore(label, 86.52, 86.52, 86.52, 86.52, 86.52, 86.52), ["1", "2", "3"]),
    ...bore("4", 86.52),
  ];
  expect(foundIn(lines)).toEqual([["bore", "no", 0, 0]]);
});

test("a maker's limit of out-of-round alone proves no bore", () => {
  const limits = clearances.filter(({ part, quantity }) => part === "bore" && quantity === "out-of-round");
  expect(foundIn(soundBores, { ...saw, clearances: limits })).toEqual([["bore", "no", 0, 0]]);
});

test("bearings by thread or by their sizes, one in the other's place", () => {
  const threads = all((label): readonly Line[] =>
    label === "2" ? [] : [["rod bearing", label, "middle", "thread clearance", 0.05]],
  );
  const second: readonly Line[] = [
    ...journal("pin", "2", 47.98),
    ["rod bearing", "2", "middle/90", "bore", 48.03],
  ];
  const limits = clearances.filter(({ part }) => part === "rod bearing" || part === "main");
  const of = { ...saw, clearances: limits };
  const rows = [
    ...measured(threads, { instrument: "thread" }, of),
    ...measured([...second, ...soundMains], {}, of),
  ];
  const judged = judgedAs(rows, of);
  expect(wearFound(judged, of)).toMatchObject([{ place: "bottom", within: "yes" }]);
  expect(judged.counts.find(({ part }) => part === "rod bearing")).toMatchObject({
    expected: 4,
    measured: 4,
  });
});

test("a fit that is too tight is outside its limit and no wear", () => {
  const tight: Line = ["ring", "1", "1/bottom", "end gap", "0.10..0.15"];
  const limits = clearances.filter(({ part }) => part === "ring").map(({ wear: _, ...limit }) => limit);
  expect(foundIn([tight], { ...saw, clearances: limits })).toEqual([["rings", "no", 0, 0]]);
});

test("a score that catches the nail, or a scored pin, is not sound whatever the sizes", () => {
  const score: Line = ["bore", "2", "", "score", "nail catches"];
  const pin: Line = ["pin", "1", "front", "appearance", "scored"];
  expect(foundIn([...sound, score, pin]).map(([place, within]) => [place, within])).toEqual([
    ["bore", "no"],
    ["rings", "yes"],
    ["bottom", "no"],
  ]);
});
