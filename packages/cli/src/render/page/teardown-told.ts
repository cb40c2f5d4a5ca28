// Words about an engine apart that several pages share: what was seen, what was not measured, what contradicts.

import type { Engine, MeasuredPart, TeardownAssessment, TeardownFinding } from "@sealtrend/core";
import type { PageTeardown } from "./page-input.ts";
import { kept } from "./page-words.ts";
import { partNamed } from "../teardown/teardown-words.ts";
import { joined, sentence } from "../words.ts";

/** `crack, between valves 2: found by pressure`, a crack first. */
export const findingTexts = (
  findings: readonly TeardownFinding[],
  notes: "shown" | "left-out" = "shown",
): readonly string[] => {
  const sorted = findings.toSorted((a, b) => Number(b.part === "crack") - Number(a.part === "crack"));
  return sorted.map(({ part, label, at, quantity, word, note, state }) => {
    const where = [partNamed(part, label === undefined ? [] : [kept(label)]), (at ?? "").replaceAll("/", " ")]
      .filter((text) => text !== "")
      .join(", ");
    const beside = [
      ...(state === "new part" || state === "after machining" ? [state] : []),
      ...(note === undefined || notes === "left-out" ? [] : [kept(note)]),
    ];
    return `${where}: ${quantity} ${word}${beside.length === 0 ? "" : ` (${beside.join("; ")})`}`;
  });
};

/** What a sheet holds of an engine that was measured throughout. @source handbook/teardown.md 6.2 */
const whole: readonly { readonly part: MeasuredPart; readonly quantity?: string; readonly name: string }[] = [
  { part: "bore", name: "bores" },
  { part: "piston", name: "pistons" },
  { part: "ring", quantity: "end gap", name: "ring gaps" },
  { part: "ring", quantity: "side clearance", name: "side clearance of rings" },
  { part: "main", name: "mains" },
  { part: "pin", name: "pins" },
  { part: "main bearing", name: "main bearings" },
  { part: "rod bearing", name: "rod bearings" },
  { part: "crank", quantity: "end play", name: "end play" },
  { part: "crank", quantity: "runout", name: "runout" },
  { part: "deck", name: "deck" },
  { part: "head", name: "head" },
  { part: "guide", name: "guides" },
  { part: "spring", name: "springs" },
];
const ofValves: readonly MeasuredPart[] = ["guide", "spring"];

/** One sentence, or none where all was measured. */
export const notMeasuredText = (
  { items, counts, notJudged = [] }: TeardownAssessment,
  { porting }: Engine,
): readonly string[] => {
  const measured = [...items, ...notJudged];
  const never = whole
    .filter(({ part }) => porting !== "ports" || !ofValves.includes(part))
    .filter(
      ({ part, quantity }) =>
        !measured.some((one) => one.part === part && (quantity === undefined || one.quantity === quantity)),
    )
    .map(({ name }) => name);
  const missing = counts.flatMap(({ part, quantity = "", missing: labels }) => {
    const named = labels.filter((label) => label !== "");
    return named.length === 0 ? [] : [`${partNamed(part, named)} ${quantity}`.trim()];
  });
  const all = [...missing, ...never];
  return all.length === 0 ? [] : [`Not measured: ${all.join("; ")}.`];
};

/** Each once, its part named. */
export const conflictTexts = (
  { conflicts }: TeardownAssessment,
  mends: "with mends" | "without" = "with mends",
): readonly string[] => [
  ...new Set(
    conflicts.map(({ part, label, text, mend }) => {
      const named = partNamed(part, label === undefined ? [] : [label]);
      const said = text.includes(part) ? kept(text) : `${named}: ${kept(text)}`;
      return `Does not fit: ${said.replace(/\.$/, "")}.${mends === "without" ? "" : ` ${sentence(kept(mend))}`}`;
    }),
  ),
];

/** That the engine was apart at other times too. */
export const otherTimesText = ({ now, others }: PageTeardown): readonly string[] =>
  others.length === 0
    ? []
    : [
        `This is teardown ${String(now.teardown)} of ${String(others.length + 1)}; also apart: ${joined(others.map(({ teardown, date }) => `teardown ${String(teardown)}, ${date}`))}.`,
      ];
