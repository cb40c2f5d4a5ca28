// What is likely before any reading is looked at, shifted by what is known of the engine and its past.

import type { Evidence } from "../evidence.ts";
import type { Faults, Shift } from "../faults/faults.ts";
import { bankCauses, pairCause, placeOfCause, soundCause, wearCause } from "./known-causes.ts";

/** A state of the engine or of one bank; the sound state is not among them. */
export interface State {
  /** `all CODE`, `some CODE`, or `bank N CODE`. */
  readonly id: string;
  /** Place of its cause. */
  readonly cause: number;
  readonly chance: number;
  /** Every cylinder alike, with a scatter of the level; or each cylinder with its own chance of being met. */
  readonly meets:
    | { readonly kind: "all"; readonly scatter: number }
    | { readonly kind: "some"; readonly shares: readonly number[] };
}

export interface Pair {
  readonly cylinders: readonly [number, number];
  readonly chance: number;
}

export interface Priors {
  /** P(cause) in each cylinder by itself, aligned with the causes; no fault has the rest. */
  readonly local: readonly (readonly number[])[];
  readonly states: readonly State[];
  readonly noState: number;
  readonly pairs: readonly Pair[];
  readonly noPair: number;
}

/** Together the faults of one cylinder are never likelier than this, nor the states of the engine than that; no pair keeps
 *  at least the third. @source judgement of the handbook */
const most = { local: 0.6, states: 0.9, noPair: 0.05 } as const;

/** @source handbook/diagnosis.md 1 and 2 */
export const priorsOf = (evidence: Evidence, all: Faults): Priors => {
  const faults = { ...all, shifts: all.shifts.filter(({ when }) => holds(when, evidence)) };
  const states = statesOf(evidence, faults);
  const sum = states.reduce((total, { chance }) => total + chance, 0);
  const capped = sum > most.states ? states.map((one) => scaled(one, most.states / sum)) : states;
  const pairs = pairsOf(evidence, faults);
  return {
    local: evidence.cylinders.map((_, i) => localOf(i, evidence, faults)),
    states: capped,
    noState: 1 - Math.min(sum, most.states),
    pairs,
    noPair: Math.max(most.noPair, 1 - pairs.reduce((total, { chance }) => total + chance, 0)),
  };
};

const scaled = (state: State, by: number): State => ({ ...state, chance: state.chance * by });

const localOf = (cylinder: number, evidence: Evidence, faults: Faults): readonly number[] => {
  const sound = placeOfCause(faults, soundCause);
  const raw = faults.causes.map(({ code, prior = 0 }) =>
    shifted(prior, shiftsOn(code, [cylinder], evidence, faults)),
  );
  const sum = raw.reduce((total, one) => total + one, 0);
  const by = sum > most.local ? most.local / sum : 1;
  return raw.map((one, h) => (h === sound ? 1 - sum * by : one * by));
};

const statesOf = (evidence: Evidence, faults: Faults): State[] => {
  const { cylinders } = evidence;
  const everywhere = cylinders.map((_, i) => i);
  const alone = cylinders.length === 1;
  const ofEngine = faults.states
    .filter(({ reach, cause }) => !alone || (reach === "all" && cause !== wearCause))
    .map((state): State => {
      const id = `${state.reach} ${state.cause}`;
      return {
        id,
        cause: placeOfCause(faults, state.cause),
        chance: shifted(state.prior, shiftsOn(id, everywhere, evidence, faults)),
        meets:
          state.reach === "all"
            ? { kind: "all", scatter: state.scatter }
            : { kind: "some", shares: everywhere.map(() => state.share) },
      };
    });
  return [...ofEngine, ...banksOf(evidence, faults)].filter(({ chance }) => chance > 0);
};

/** Each bank of an engine with two or more; what shifts the same state of the whole engine shifts it too. */
const banksOf = (evidence: Evidence, faults: Faults): State[] => {
  const { banks, cylinders } = evidence;
  if (banks.length < 2) return [];
  const { bankRetardedPrior, bankBentPrior, bankRetardedShare, bankBentShare } = faults.settings;
  return banks.flatMap((bank, i) =>
    [
      { code: bankCauses.retarded, prior: bankRetardedPrior, share: bankRetardedShare, as: "all" },
      { code: bankCauses.bent, prior: bankBentPrior, share: bankBentShare, as: "some" },
    ].map(({ code, prior, share, as }): State => ({
      id: `bank ${String(i + 1)} ${code}`,
      cause: placeOfCause(faults, code),
      chance: shifted(prior, shiftsOn(`${as} ${code}`, bank, evidence, faults)),
      meets: { kind: "some", shares: cylinders.map((_, place) => (bank.includes(place) ? share : 0)) },
    })),
  );
};

const pairsOf = (evidence: Evidence, faults: Faults): Pair[] => {
  if (!evidence.sharedGasket || evidence.cylinders.length < 2) return [];
  return evidence.banks
    .flatMap((bank) =>
      bank.slice(1).map((second, i): Pair => {
        const cylinders = [bank[i] ?? second, second] as const;
        const shifts = shiftsOn(pairCause, cylinders, evidence, faults);
        return { cylinders, chance: shifted(faults.settings.pairPrior, shifts) };
      }),
    )
    .filter(({ chance }) => chance > 0);
};

const holds = (when: Shift["when"], { circumstances }: Evidence): boolean =>
  circumstances.some((one) => one.when === when);

/** What the circumstances do to an entry; those that touched only other cylinders do nothing. */
const shiftsOn = (
  entry: string,
  cylinders: readonly number[],
  { circumstances }: Evidence,
  { shifts }: Faults,
): readonly Shift[] => {
  if (shifts.length === 0) return shifts;
  const holding = circumstances.filter(
    ({ cylinders: touched }) => touched === undefined || cylinders.some((place) => touched.includes(place)),
  );
  return shifts.filter((shift) => shift.entry === entry && holding.some(({ when }) => when === shift.when));
};

/** Odds stand in place of the prior, the largest where there are several; then factors multiply. */
const shifted = (prior: number, shifts: readonly Shift[]): number => {
  const odds = shifts.flatMap(({ by }) => (by.kind === "odds" ? [by.value] : []));
  const start = odds.length === 0 ? prior : Math.max(...odds) / (1 + Math.max(...odds));
  return shifts.reduce((chance, { by }) => (by.kind === "factor" ? chance * by.value : chance), start);
};
