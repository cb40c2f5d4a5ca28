// What the dry readings of the day share: the level of a sound cylinder, what oil does to one, the scale of the tester.
// Each is a grid of places with the chance of each; where it plays no part, one place.

import { normalDensity } from "../../statistics/index.ts";
import type { Evidence } from "../evidence.ts";
import type { Faults } from "../faults/faults.ts";
import { around, blunder, classDensities, mixed } from "./classes.ts";
import { placeOfCause, soundCause } from "./known-causes.ts";
import type { State } from "./priors.ts";

export interface Day {
  /** M, the level that sound cylinders read [Pa gauge]; empty without dry readings. */
  readonly levels: readonly number[];
  /** What oil multiplies a sound reading by. */
  readonly oilFactors: readonly number[];
  /** Shift of ln alpha, with the chance of each. */
  readonly testerShifts: readonly { readonly shift: number; readonly chance: number }[];
  /** Mean of the upper half of the dry readings [Pa gauge]: what gains are held against. */
  readonly reference?: number;
  /** The middle of the grid of levels [Pa gauge]: densities of readings are per so much. */
  readonly unit: number;
}

/** Step of ln M, and how far the grid reaches below and above the highest reading. @source handbook/diagnosis.md 1 */
const grid = { step: 0.0125, below: 0.48, above: 0.5, aboveWithExpectation: 1.2 } as const;
const oilSteps = 12;

/** The mean of the takes of each cylinder; undefined where none was taken. */
export const dryMeans = ({ cylinders }: Evidence): readonly (number | undefined)[] =>
  cylinders.map(({ dry }) =>
    dry === undefined || dry.length === 0
      ? undefined
      : dry.reduce((sum, value) => sum + value, 0) / dry.length,
  );

export const dayOf = (evidence: Evidence, faults: Faults): Day => {
  const dry = dryMeans(evidence).filter((value) => value !== undefined);
  const hasOil = evidence.cylinders.some(({ dry: own, wet }) => own !== undefined && wet !== undefined);
  const hasLeak = evidence.cylinders.some(({ leak }) => leak !== undefined);
  const upper = dry.toSorted((a, b) => b - a).slice(0, Math.ceil(dry.length / 2));
  const reference = upper.reduce((sum, value) => sum + value, 0) / upper.length;
  const highest = Math.max(0, ...dry);
  // where every cylinder holds nothing any level will do: a ratio of 0 is 0
  const unit = highest > 0 ? highest : (evidence.expected?.level ?? 1);
  return {
    unit,
    levels: dry.length === 0 ? [] : levelsRound(unit, evidence),
    oilFactors: hasOil ? oilFactorsOf(evidence, faults) : [1],
    testerShifts: hasLeak && evidence.restrictor === "unknown" ? testerShiftsOf(faults) : [noShift],
    ...(reference > 0 ? { reference } : {}),
  };
};

const noShift = { shift: 0, chance: 1 } as const;

const levelsRound = (middle: number, { expected }: Evidence): readonly number[] => {
  const above = expected === undefined ? grid.above : grid.aboveWithExpectation;
  const count = Math.floor((grid.below + above) / grid.step + 1e-9) + 1;
  return Array.from({ length: count }, (_, i) => middle * Math.exp(i * grid.step - grid.below));
};

/** Equal steps from 1 to 1 + B. B: a tenth more than the oil's room explains; unknown: the tables' most. */
const oilFactorsOf = ({ oilRise }: Evidence, { settings }: Faults): readonly number[] => {
  const most = oilRise === undefined ? settings.oilMost : 1.1 * oilRise;
  return Array.from({ length: oilSteps + 1 }, (_, i) => 1 + (most * i) / oilSteps);
};

const testerShiftsOf = ({ settings }: Faults): Day["testerShifts"] => {
  const steps = [-2, -1, 0, 1, 2];
  const sum = steps.reduce((total, j) => total + normalDensity(j), 0);
  return steps.map((j) => ({ shift: j * settings.testerDoubt, chance: normalDensity(j) / sum }));
};

/** P(M | state) for the sound engine and each state, aligned with the levels, up to one factor common to all. With an
 *  expectation X: S = M/X, u = S·u_X, S·step·Σ P(class | cause)·f(S); the cause is the state's where it meets all alike,
 *  else no fault. Without: 1, and an even loss cannot be seen. */
export const levelChances = (
  levels: readonly number[],
  states: readonly State[],
  { evidence, faults }: { readonly evidence: Evidence; readonly faults: Faults },
): readonly (readonly number[])[] => {
  const { expected } = evidence;
  const flat = levels.map(() => 1);
  if (expected === undefined) return [flat, ...states.map(() => flat)];
  const { baselineDoubt, makerDoubt, estimateDoubt } = faults.settings;
  const doubt = { baseline: baselineDoubt, maker: makerDoubt, estimate: estimateDoubt }[expected.from];
  const { shapes, columns } = faults.findings.level;
  const shares = levels.map((level) => level / expected.level);
  const densities = shares.map((share) => classDensities(shapes, share, share * doubt));
  const ofCause = (cause: number): readonly number[] =>
    densities.map(
      (density, m) => (shares[m] ?? 0) * grid.step * mixed(columns[cause]?.chances ?? [], density),
    );
  const sound = ofCause(placeOfCause(faults, soundCause));
  return [sound, ...states.map(({ meets, cause }) => (meets.kind === "all" ? ofCause(cause) : sound))];
};

/** Standard uncertainty of ρ = p/M. @source handbook/diagnosis.md 3 */
export const levelDoubt = (ratio: number, takes: number, { settings }: Faults): number =>
  Math.sqrt((settings.repeatability * ratio) ** 2 / takes + 0.004 ** 2);

/** Density of ρ of a cylinder that has nothing of its own while a state meets all alike: normal round 1.
 *  @param scatter - of ρ under the state @param doubt - u of ρ */
export const evenDensity = (ratio: number, scatter: number, doubt: number): number =>
  blunder + around(ratio, 1, Math.sqrt(scatter ** 2 + doubt ** 2));

/** Where on the day's grids a likelihood is asked for. */
export interface AtDay {
  readonly level: number;
  readonly oilFactor: number;
  readonly testerShift: number;
}
