// The classes of each finding. They belong to the way of reckoning: how likely each is, and where the bounds of a graded
// one lie, stands in the tables.

import type { FindingName } from "./faults.ts";

export const findingClasses = {
  level: ["dead", "very low", "low", "slight", "normal", "high"],
  wet: ["none", "weak", "supports", "strong"],
  "first-stroke": ["below", "same", "above"],
  repeats: ["unstable", "stable"],
  leak: ["normal", "little", "raised", "gross"],
  path: ["crankcase", "exhaust", "intake", "neighbour", "coolant", "plug", "none"],
  oiled: ["falls", "unchanged"],
  lower: ["falls", "unchanged"],
  onset: ["sudden", "gradual", "steady"],
  running: ["low", "normal", "high"],
  lash: ["tight", "right", "loose"],
  borescope: ["nothing", "valve", "bore", "piston", "deposits", "liquid or rust"],
  gas: ["positive", "negative"],
  "second-gauge": ["normal now", "same"],
  warm: ["recovers", "same"],
  conditions: ["recovers", "same"],
  reseat: ["recovers", "same"],
  reindex: ["still there", "gone"],
  release: ["recovers", "same"],
} as const satisfies Readonly<Record<FindingName, readonly string[]>>;

/** Findings whose classes have bounds; the others are words. */
export const gradedFindings: readonly FindingName[] = ["level", "wet", "first-stroke", "leak", "running"];
