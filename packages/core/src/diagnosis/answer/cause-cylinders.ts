// Which cylinders a cause is about: the target alone, a pair under one gasket, a bank, or the engine.

import type { Evidence } from "../evidence.ts";
import { pairCause } from "../model/known-causes.ts";
import type { Posterior } from "../model/posterior.ts";

/** A cause that comes mostly with a state of the engine is about all that the state meets: with `all` every cylinder,
 *  with `some` or a bank those where it is likelier than not, and the target. At most the chance of a state can come with
 *  it, so above half of the target's the larger part is taken to. Of pairs the likeliest that holds the target.
 *  @param cause - place and code of the cause @returns places, rising */
export const cylindersOf = (
  cause: { readonly place: number; readonly code: string },
  target: number,
  { posterior, banks }: { readonly posterior: Posterior; readonly banks: Evidence["banks"] },
): readonly number[] => {
  if (cause.code === pairCause) return likeliestPair(target, posterior);
  const everywhere = posterior.cylinders.map((_, i) => i);
  const chanceIn = (i: number): number => posterior.cylinders[i]?.[cause.place] ?? 0;
  const [likeliest] = posterior.states
    .filter((state) => state.cause === cause.code)
    .map(({ id, probability }) => ({ id, probability, reach: reachOf(id, { everywhere, banks }) }))
    .filter(({ reach }) => reach.includes(target))
    .sort((a, b) => b.probability - a.probability);
  if (likeliest === undefined || 2 * likeliest.probability <= chanceIn(target)) return [target];
  if (likeliest.id.startsWith("all ")) return everywhere;
  return likeliest.reach.filter((i) => i === target || chanceIn(i) > 0.5).toSorted((a, b) => a - b);
};

/** Places that a state can meet, by its id: `all CODE`, `some CODE`, `bank N CODE`. */
const reachOf = (
  id: string,
  { everywhere, banks }: { readonly everywhere: readonly number[]; readonly banks: Evidence["banks"] },
): readonly number[] => {
  const [kind, number] = id.split(" ");
  return kind === "bank" ? (banks[Number(number) - 1] ?? []) : everywhere;
};

const likeliestPair = (target: number, { pairs }: Posterior): readonly number[] => {
  const [first] = pairs
    .filter(({ cylinders }) => cylinders.includes(target))
    .toSorted((a, b) => b.probability - a.probability);
  return first === undefined ? [target] : first.cylinders.toSorted((a, b) => a - b);
};
