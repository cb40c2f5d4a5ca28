// The likelihoods of one cylinder over the grids of the day, worked out once: the sum over states only multiplies them.

import type { Evidence } from "../evidence.ts";
import type { Faults } from "../faults/faults.ts";
import { type AtDay, type Day, dryMeans, evenDensity, levelDoubt } from "./day.ts";
import { findingsOn, type Weighed } from "./findings.ts";
import { type LevelParts, levelPartsOf } from "./level-parts.ts";
import type { State } from "./priors.ts";
import type { DayPart } from "./readers.ts";
import { type Rows, largest, rowsOf } from "./rows.ts";

export interface PreparedCylinder {
  /** Π of all findings that do not depend on the day, aligned with the causes. */
  readonly fixed: Float64Array;
  readonly level: LevelParts;
  /** By the oil factor and the tester shift. */
  readonly byOil: Rows;
  readonly byTester: Rows;
  /** Oil as kind to each cause as any: the most that any factor gives. */
  readonly kindestOil: Float64Array;
  /** By state, then by level: likelihood of the level of an unharmed cylinder; empty for a state that meets only some. */
  readonly even: readonly Float64Array[];
}

/** Where on the grids of the day each kind of finding is looked at. */
export type Grid = Readonly<Record<DayPart, readonly AtDay[]>>;

export const gridOf = ({ levels, oilFactors, testerShifts }: Day): Grid => ({
  nothing: [anywhere],
  level: levels.map((level) => ({ ...anywhere, level })),
  oil: oilFactors.map((oilFactor) => ({ ...anywhere, oilFactor })),
  tester: testerShifts.map(({ shift }) => ({ ...anywhere, testerShift: shift })),
});

/** For findings that ask for none of it. */
const anywhere: AtDay = { level: 1, oilFactor: 1, testerShift: 0 };

interface Context {
  readonly evidence: Evidence;
  readonly faults: Faults;
  readonly day: Day;
  readonly grid: Grid;
}

export const prepared = (cylinder: number, context: Context, states: readonly State[]): PreparedCylinder => {
  const { faults, grid } = context;
  const found = findingsOn(cylinder, context);
  const ofPart = (part: DayPart): readonly Weighed[] => found.filter(({ dependsOn }) => dependsOn === part);
  const rows = (part: DayPart): Rows => rowsOf(ofPart(part), grid[part], faults);
  const byOil = rows("oil");
  return {
    fixed: rows("nothing").values,
    level: levelPartsOf(ofPart("level"), grid.level, faults),
    byOil,
    byTester: rows("tester"),
    kindestOil: largest(byOil),
    even: evenRows(cylinder, context, { states, found }),
  };
};

const evenRows = (
  cylinder: number,
  { evidence, faults, day }: Context,
  { states, found }: { readonly states: readonly State[]; readonly found: readonly Weighed[] },
): readonly Float64Array[] => {
  const p = dryMeans(evidence)[cylinder];
  const takes = evidence.cylinders[cylinder]?.dry?.length ?? 0;
  const weight = found.find(({ finding }) => finding === "level")?.weight;
  if (p === undefined || weight === undefined) {
    const ones = new Float64Array(Math.max(1, day.levels.length)).fill(1);
    return states.map(() => ones);
  }
  const rowOf = (scatter: number): Float64Array => {
    const row = new Float64Array(day.levels.length);
    day.levels.forEach((level, m) => {
      const ratio = p / level;
      const density = evenDensity(ratio, scatter, levelDoubt(ratio, takes, faults));
      const likelihood = (density * day.unit) / level;
      row[m] = weight === 1 ? likelihood : likelihood ** weight;
    });
    return row;
  };
  // many states scatter alike
  const known = new Map<number, Float64Array>();
  return states.map(({ meets }) => {
    if (meets.kind === "some") return none;
    const row = known.get(meets.scatter) ?? rowOf(meets.scatter);
    known.set(meets.scatter, row);
    return row;
  });
};

const none = new Float64Array(0);
