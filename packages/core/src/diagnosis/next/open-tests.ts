// Which tests of the table can still say something about the target, and which of their findings are new.

import type { Evidence } from "../evidence.ts";
import type { Faults, FindingName, FurtherTest, Obstacle } from "../faults/faults.ts";

export interface OpenTest {
  readonly test: FurtherTest;
  /** Findings of it that the target has not yet; at least one. */
  readonly fresh: readonly FindingName[];
}

/** A test is left out where all its findings are taken on the target, where it is blocked, and where it only goes on from
 *  a reading that is not there. @source handbook/diagnosis.md 6 */
export const openTests = (target: number, evidence: Evidence, faults: Faults): readonly OpenTest[] => {
  const taken = takenOn(target, evidence);
  const obstacles = obstaclesOf(taken, target, evidence);
  return faults.tests.flatMap((test): OpenTest[] => {
    const fresh = test.findings.filter((finding) => !taken.has(finding));
    if (fresh.length === 0) return [];
    if (test.blocked.some((obstacle) => obstacles.has(obstacle))) return [];
    if (!taken.has("level") && fresh.every((finding) => fromDry.includes(finding))) return [];
    return [{ test, fresh }];
  });
};

/** Each is held against a dry cranking reading of the cylinder. */
const fromDry: readonly FindingName[] = [
  "wet",
  "first-stroke",
  "repeats",
  "second-gauge",
  "conditions",
  "release",
];

/** Findings that the target has. */
const takenOn = (target: number, { cylinders, gas }: Evidence): ReadonlySet<FindingName> => {
  const {
    dry = [],
    wet,
    firstStroke,
    running,
    leak,
    heard,
    oiled,
    lower,
    onset,
    seen = {},
  } = cylinders[target] ?? {};
  const given: readonly (readonly [FindingName, unknown])[] = [
    ["level", dry[0]],
    ["repeats", dry[1]],
    ["wet", wet],
    ["first-stroke", firstStroke],
    ["running", running],
    ["leak", leak],
    ["path", heard],
    ["oiled", oiled],
    ["lower", lower],
    ["onset", onset],
    ["gas", gas],
    ["lash", seen.lash],
    ["borescope", seen.borescope],
    ["second-gauge", seen["second-gauge"]],
    ["warm", seen.warm],
    ["conditions", seen.conditions],
    ["reseat", seen.reseat],
    ["reindex", seen.reindex],
    ["release", seen.release],
  ];
  return new Set(given.flatMap(([finding, value]) => (value === undefined ? [] : [finding])));
};

/** What the engine has, and what the evidence on the target shows. */
const obstaclesOf = (
  taken: ReadonlySet<FindingName>,
  target: number,
  { obstacles, cylinders }: Evidence,
): ReadonlySet<Obstacle> => {
  const heard = cylinders[target]?.heard ?? [];
  const held: readonly (readonly [Obstacle, boolean])[] = [
    ["one cylinder", cylinders.length === 1],
    ["no leak-down yet", !taken.has("leak")],
    ["no air at a neighbour", !heard.some(({ place }) => place === "neighbour")],
  ];
  return new Set([...obstacles, ...held.flatMap(([obstacle, holds]) => (holds ? [obstacle] : []))]);
};
