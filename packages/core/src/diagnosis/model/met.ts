// The states of the engine as the sum takes them, the sound engine first, as one that meets no cylinder.

import type { MeetsOne } from "./looked.ts";
import type { PreparedCylinder } from "./prepared.ts";
import type { Priors } from "./priors.ts";

export interface Met {
  readonly chance: number;
  readonly cylinders: readonly MeetsOne[];
  /** P(M | state), by level. */
  readonly levels: readonly number[];
}

/** @param levels - P(M | state), by level, the sound engine first */
export const metBy = (
  { noState, states }: Priors,
  prepared: readonly PreparedCylinder[],
  { sound, levels }: { readonly sound: number; readonly levels: readonly (readonly number[])[] },
): readonly Met[] => [
  {
    chance: noState,
    cylinders: prepared.map(() => ({ cause: sound, share: 0, even: nothing })),
    levels: levels[0] ?? [],
  },
  ...states.map(({ cause, chance, meets }, e): Met => ({
    chance,
    cylinders: prepared.map(({ even }, i) =>
      meets.kind === "all"
        ? { cause, even: even[e] ?? nothing }
        : { cause, share: meets.shares[i] ?? 0, even: nothing },
    ),
    levels: levels[e + 1] ?? [],
  })),
];

const nothing = new Float64Array(0);
