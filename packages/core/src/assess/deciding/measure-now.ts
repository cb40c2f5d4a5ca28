// What can be measured in the next twenty minutes while the engine is open: what no reading of sealing can see.

import type { Opening } from "./choices.ts";

export interface MeasureNow {
  readonly code:
    | "bores"
    | "ring-gaps"
    | "ring-grooves"
    | "rod-side"
    | "bearing-clearance"
    | "journals"
    | "valves"
    | "leak-down";
  /** What to do, as told to a mechanic. */
  readonly text: string;
  readonly minutes: number;
}

/** Minutes are common practice for one cylinder or one bearing, no source. @source handbook/teardown.md 1 (how) */
const measurements: Readonly<Record<MeasureNow["code"], Omit<MeasureNow, "code">>> = {
  bores: { text: "each bore at three heights, along and across the crank", minutes: 10 },
  "ring-gaps": { text: "one top ring square in the lowest part of its bore: the gap", minutes: 5 },
  "ring-grooves": { text: "a new ring in the top groove: the side clearance", minutes: 5 },
  "rod-side": { text: "side clearance of each rod, with feelers", minutes: 3 },
  "bearing-clearance": { text: "one rod and one main bearing: clearance by plastic gauge", minutes: 12 },
  journals: { text: "a rod and a main journal, two directions", minutes: 6 },
  valves: { text: "fuel in each port with the valves shut: does it weep?", minutes: 10 },
  "leak-down": { text: "a leak-down, if it can be turned", minutes: 15 },
};

const possible: Readonly<Record<Opening, readonly MeasureNow["code"][]>> = {
  "head-off": ["bores", "valves"],
  "bottom-open": ["rod-side", "bearing-clearance", "leak-down"],
  "pistons-in": ["bores", "rod-side", "bearing-clearance"],
  "pistons-out": ["bores", "ring-gaps", "ring-grooves"],
  "crank-out": ["bores", "ring-gaps", "journals"],
};

/** Nothing in place. @param porting - ports have no valves to see to */
export const measureNow = (
  opened: Opening | undefined,
  porting: "valves" | "ports" | "ports-and-exhaust-valve",
): readonly MeasureNow[] =>
  opened === undefined
    ? []
    : possible[opened]
        .filter((code) => !(code === "valves" && porting === "ports"))
        .map((code) => ({ code, ...measurements[code] }));
