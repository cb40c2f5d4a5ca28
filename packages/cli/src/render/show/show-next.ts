// What to do next: what spoils the day first, then the quickest test and the one that tells most.

import { type NextTest, type TestAssessment, isWorthExplaining } from "@sealtrend/core";
import { prose } from "../prose.ts";

/** Which page of `how` tells the steps. */
const pages: Readonly<Partial<Record<string, string>>> = {
  wet: "wet",
  "first-stroke": "first-stroke",
  "leak-down-and-listen": "leak-down",
  "leak-down-lower-down": "leak-down",
  "re-seat-and-repeat": "leak-down",
  "re-index-the-neighbour": "leak-down",
  cranking: "dry",
  conditions: "dry",
  "retest-warm": "dry",
  repeat: "dry",
};

const most = 3;

export const nextLines = (assessment: TestAssessment, width: number): readonly string[] => {
  const { record, test } = assessment;
  const shown = shownTests(assessment.nextTests);
  if (shown.length === 0) return enoughLines(assessment, width);
  const leakOnly = test.rows.every(({ what }) => what.startsWith("leak-down"));
  const page = shown
    .map(({ code }) => (code === "repeat" && leakOnly ? "leak-down" : pages[code]))
    .find((kind) => kind !== undefined);
  const lines = shown.map(
    ({ text, minutes, rank }) =>
      `${text}, ${String(minutes)} minutes${rank === "most-telling" ? " (tells most)" : ""}`,
  );
  return [
    "",
    ...lines.flatMap((line, i) => prose(line, width, i === 0 ? "next   " : "       ")),
    ...(page === undefined
      ? []
      : prose(`steps and cautions: sealtrend how ${page} ${record.engine.id}`, width, "       ")),
  ];
};

/** Those of plain rules stand before the first that the diagnosis ranks. */
const shownTests = (tests: readonly NextTest[]): readonly NextTest[] => {
  const ranked = tests.findIndex(({ rank }) => rank !== undefined);
  const plain = ranked === -1 ? tests : tests.slice(0, ranked);
  const best = tests.filter(({ rank }) => rank !== undefined);
  const room = Math.max(0, most - plain.length);
  return [...plain.slice(0, most), ...best.slice(Math.max(0, best.length - room))];
};

/** What a valve may leak by without being burnt. @source handbook/trade.md C5 (lash; debris on the seat) */
const spared: readonly string[] = ["exhaust-valve", "intake-valve", "sticking-valve", "tight-lash"];

/** Knowing enough is an answer; what is cheaper than the head goes before it. */
const enoughLines = (assessment: TestAssessment, width: number): readonly string[] => {
  const { diagnosis, cylinders } = assessment;
  if (diagnosis?.enough !== true || !isWorthExplaining(assessment)) return [];
  const label = cylinders[diagnosis.target]?.label ?? "";
  const first = diagnosis.causes[0]?.code ?? "";
  return [
    "",
    ...prose(`no test left would change what to do about ${label}: you know enough`, width, "next   "),
    ...(spared.includes(first)
      ? prose("before the head comes off: lash, and a tap on its valves, then again", width, "       ")
      : []),
  ];
};
