// What follows from a teardown, in the order of asking: block, bore, crank, head. Measuring better comes before any work.

import type { MeasuredPart } from "../../record/index.ts";
import type { WorkCode, WorkLine } from "../asked-for.ts";
import { crackRepair } from "./block-work.ts";
import { boreOversize, fileGaps, newPistons, reRing, sleeveOrReplace } from "./bore-work.ts";
import { aircraftLimits } from "./cautions.ts";
import { fineSteps, grindCrank, newBearings, rodWork, straighten, thrustWashers } from "./crank-work.ts";
import { guidesAndSeats, skim, springs, valves } from "./head-work.ts";
import type { Answer, Known } from "./known.ts";
import { clearConflicts, measureAgain, measureBetter, measureMissing, returned } from "./measuring.ts";
import { useAgain } from "./use-again.ts";

interface Row {
  readonly code: WorkCode;
  readonly asked: (known: Known) => Answer | undefined;
  /** Machined: what is too close to tell of them is no longer asked, what was not measured is. */
  readonly machines?: readonly MeasuredPart[];
  /** Replaced: nothing of them is asked any more. */
  readonly renews?: readonly MeasuredPart[];
}

interface Group {
  readonly parts: readonly MeasuredPart[];
  readonly rows: readonly Row[];
}

/** @source handbook/teardown.md 5: makers' manuals where named beside each work, else common practice */
const groups: readonly Group[] = [
  { parts: ["crack"], rows: [{ code: "repair-crack", asked: crackRepair }] },
  {
    parts: ["bore", "piston", "ring", "crown"],
    rows: [
      { code: "bore-oversize", asked: boreOversize, machines: ["bore"], renews: ["piston", "ring"] },
      { code: "sleeve-or-replace", asked: sleeveOrReplace, machines: ["bore"], renews: ["piston", "ring"] },
      { code: "pistons", asked: newPistons },
      { code: "re-ring-and-hone", asked: reRing, renews: ["ring"] },
      { code: "re-ring-and-hone", asked: fileGaps },
    ],
  },
  {
    parts: ["main", "pin", "main bearing", "rod bearing", "crank", "rod", "housing"],
    rows: [
      {
        code: "grind-crank",
        asked: grindCrank,
        machines: ["main", "pin"],
        renews: ["main bearing", "rod bearing"],
      },
      { code: "fine-step-shells", asked: fineSteps },
      { code: "new-bearings", asked: newBearings },
      { code: "straighten-crank", asked: straighten },
      { code: "thrust-washers", asked: thrustWashers },
      { code: "rods", asked: rodWork },
    ],
  },
  {
    parts: ["deck", "head", "guide", "stem", "seat", "valve", "spring", "chamber"],
    rows: [
      { code: "skim-deck", asked: skim("deck") },
      { code: "skim-head", asked: skim("head") },
      { code: "guides-and-seats", asked: guidesAndSeats },
      { code: "valves", asked: valves },
      { code: "springs", asked: springs },
    ],
  },
];

export const workList = (known: Known): readonly WorkLine[] => {
  const lines = groups.flatMap((group) => ofGroup(group, known));
  const again = useAgain(known, lines.length);
  const all = again === undefined ? lines : [...lines, { code: "use-again" as const, ...again }];
  return known.engine.use === "aircraft" ? all.map(withLicence) : all;
};

const ofGroup = ({ parts, rows }: Group, known: Known): readonly WorkLine[] => {
  const works = rows.flatMap(({ code, asked, machines = [], renews = [] }) => {
    const answer = asked(known);
    return answer === undefined ? [] : [{ line: { code, ...answer }, machines, renews }];
  });
  const renewed = works.flatMap(({ renews }) => renews);
  const machined = works.flatMap(({ machines }) => machines);
  const better = [
    ...clearConflicts(known, parts),
    ...returned(known, parts),
    ...measureBetter(known, parts, [...machined, ...renewed]),
  ];
  const again = measureAgain(known, parts);
  return [
    ...(again === undefined ? [] : [{ code: "measure-again" as const, ...again }]),
    ...better.map((answer): WorkLine => ({ code: "measure-better", ...answer })),
    ...measureMissing(known, parts, renewed).map((answer): WorkLine => ({
      code: "measure-missing",
      ...answer,
    })),
    ...works.map(({ line }) => line),
  ];
};

const withLicence = (line: WorkLine): WorkLine => ({
  ...line,
  caution: line.caution === undefined ? aircraftLimits : `${line.caution} ${aircraftLimits}`,
});
