// What of the open engine was measured already, and what of that has to be measured again before it says anything.

import type { Engine, MeasuredPart } from "../../record/index.ts";
import { type WorkLine, currentFindings, isComplete } from "../../teardown/index.ts";
import type { Opening } from "./choices.ts";
import type { MeasuredNow } from "./measured-now.ts";

type Kind = readonly [part: MeasuredPart, quantity: string];

type OfParts = "bores" | "ring-gaps" | "ring-grooves" | "rod-side" | "bearing-clearance" | "journals";

/** As counts of the teardown name them; a bore is measured once it has a taper. */
const kindsOf: Readonly<Record<OfParts, readonly Kind[]>> = {
  bores: [["bore", "taper"]],
  "ring-gaps": [["ring", "end gap"]],
  "ring-grooves": [["ring", "side clearance"]],
  "rod-side": [["rod", "side clearance"]],
  "bearing-clearance": [
    ["rod bearing", "clearance"],
    ["main bearing", "clearance"],
  ],
  journals: [
    ["pin", "diameter"],
    ["main", "diameter"],
  ],
};

/** Labels of a kind that nobody measured yet; undefined where all of them are left, or nobody can tell which. */
export const leftToMeasure = (
  code: OfParts,
  engine: Engine,
  now: MeasuredNow | undefined,
): readonly string[] | undefined => {
  if (now === undefined) return undefined;
  const { assessment: measured, found } = now;
  const isBottom = code === "bearing-clearance" || code === "journals";
  if (isBottom && found.some(({ place, within }) => place === "bottom" && within === "yes")) return [];
  if (code === "bores") {
    const done = measured.derived.filter(({ part, quantity }) => part === "bore" && quantity === "taper");
    return engine.cylinders.filter((label) => !done.some((one) => one.label === label));
  }
  const counts = kindsOf[code].map(([part, quantity]) =>
    measured.counts.find((one) => one.part === part && one.quantity === quantity),
  );
  const known = counts.flatMap((count) => count ?? []);
  if (known.length < counts.length || !known.every((count) => isComplete(count) || count.missing.length > 0))
    return undefined;
  return known.flatMap(({ missing }) => missing);
};

const head: readonly MeasuredPart[] = ["bore", "head", "deck", "guide", "stem", "seat", "valve", "spring"];
const below: readonly MeasuredPart[] = ["rod", "rod bearing", "main bearing", "crank"];
const between: readonly MeasuredPart[] = ["piston", "ring", "pin"];

/** What can be got at. */
const reach: Readonly<Record<Opening, readonly MeasuredPart[]>> = {
  "head-off": head,
  "bottom-open": below,
  "pistons-in": [...head, ...below],
  "pistons-out": [...head, ...below, ...between],
  "crank-out": [...head, ...below, ...between, "main", "housing"],
};

/** What a single reading decides first, then what is too close to tell or contradicts itself. */
export const measureAgainLines = (
  opened: Opening,
  measured: MeasuredNow | undefined,
): readonly WorkLine[] => {
  const lines = (measured?.assessment.work ?? []).filter(
    ({ part }) => part !== undefined && reach[opened].includes(part),
  );
  return [
    ...lines.filter(({ code }) => code === "measure-again"),
    ...lines.filter(({ code }) => code === "measure-better"),
  ];
};

/** Scores that the nail catches and whose depth nobody took. */
export const scoresToMeasure = (
  opened: Opening,
  measured: MeasuredNow | undefined,
): readonly Pick<WorkLine, "part" | "text" | "labels">[] => {
  if (measured === undefined || !reach[opened].includes("bore")) return [];
  const { items, findings } = measured.assessment;
  const deep = currentFindings(findings, [...items, ...findings])
    .filter(({ part, quantity, word }) => part === "bore" && quantity === "score" && word === "nail catches")
    .flatMap(({ label }) => label ?? []);
  return [...new Set(deep)]
    .filter((label) => !items.some((one) => one.quantity === "score depth" && one.label === label))
    .map((label) => ({ part: "bore", text: `the depth of the score in bore ${label}`, labels: [label] }));
};
