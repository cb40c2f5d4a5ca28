// The likelihoods of one cylinder over the grids of the day, worked out once: the sum over states only multiplies them.

import type { Evidence } from "../evidence.ts";
import type { Faults } from "../faults/faults.ts";
import { type AtDay, type Day, dryMeans, evenDensity, levelDoubt } from "./day.ts";
import { findingsOn, multiplyIn, type Weighed } from "./findings.ts";
import type { State } from "./priors.ts";

export interface PreparedCylinder {
  /** Π of all findings that do not depend on the day, aligned with the causes. */
  readonly fixed: Float64Array;
  /** By the place of the level, the oil factor, the tester shift; one row of ones where a finding is missing. */
  readonly byLevel: readonly Float64Array[];
  readonly byOil: readonly Float64Array[];
  readonly byTester: readonly Float64Array[];
  /** By state, then by level: likelihood of the level of an unharmed cylinder; empty for a state that meets only some. */
  readonly even: readonly Float64Array[];
}

export const prepared = (
  cylinder: number,
  context: { readonly evidence: Evidence; readonly faults: Faults; readonly day: Day },
  states: readonly State[],
): PreparedCylinder => {
  const { faults, day } = context;
  const found = findingsOn(cylinder, context);
  const rows = (dependsOn: Weighed["dependsOn"], places: readonly Partial<AtDay>[]): Float64Array[] => {
    const ofKind = found.filter((one) => one.dependsOn === dependsOn);
    return places.map((place) => product(ofKind, { ...anywhere, ...place }, faults));
  };
  const levels = day.levels.length === 0 ? [{}] : day.levels.map((level) => ({ level }));
  const [fixed = new Float64Array(faults.causes.length)] = rows("nothing", [{}]);
  return {
    fixed,
    byLevel: rows("level", levels),
    byOil: rows(
      "oil",
      day.oilFactors.map((oilFactor) => ({ oilFactor })),
    ),
    byTester: rows(
      "tester",
      day.testerShifts.map(({ shift }) => ({ testerShift: shift })),
    ),
    even: evenRows(cylinder, context, { states, found }),
  };
};

/** The same cylinder with oil as kind to each cause as any: its weight is the most that any oil factor gives. */
export const mostByOil = (one: PreparedCylinder): PreparedCylinder => ({
  ...one,
  byOil: [one.fixed.map((_, h) => Math.max(...one.byOil.map((row) => row[h] ?? 0)))],
});

/** For findings that ask for none of it. */
const anywhere: AtDay = { level: 1, oilFactor: 1, testerShift: 0 };

const product = (found: readonly Weighed[], at: AtDay, faults: Faults): Float64Array => {
  const row = new Float64Array(faults.causes.length).fill(1);
  for (const one of found) multiplyIn(row, one, { at, faults });
  return row;
};

const evenRows = (
  cylinder: number,
  { evidence, faults, day }: { readonly evidence: Evidence; readonly faults: Faults; readonly day: Day },
  { states, found }: { readonly states: readonly State[]; readonly found: readonly Weighed[] },
): readonly Float64Array[] => {
  const p = dryMeans(evidence)[cylinder];
  const takes = evidence.cylinders[cylinder]?.dry?.length ?? 0;
  const weight = found.find(({ finding }) => finding === "level")?.weight;
  if (p === undefined || weight === undefined)
    return states.map(() => new Float64Array(Math.max(1, day.levels.length)).fill(1));
  const ratios = day.levels.map((level) => p / level);
  const doubts = ratios.map((ratio) => levelDoubt(ratio, takes, faults));
  return states.map(({ meets }) =>
    meets.kind === "some"
      ? new Float64Array(0)
      : Float64Array.from(day.levels, (level, m) => {
          const density = evenDensity(ratios[m] ?? 0, meets.scatter, doubts[m] ?? 0);
          return ((density * day.unit) / level) ** weight;
        }),
  );
};
