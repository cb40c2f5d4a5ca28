// One cylinder as the sum looks at it, at every oil factor.

import { Looked } from "./looked.ts";
import type { PreparedCylinder } from "./prepared.ts";

export interface Views {
  /** At each oil factor; one for all where its likelihoods do not depend on it. */
  readonly byOil: readonly Looked[];
  /** With oil as kind to each cause as any. */
  readonly kindest: Looked;
}

export const viewsOf = (
  one: PreparedCylinder,
  local: readonly number[],
  known: { readonly levels: number; readonly sound: number; readonly pair: number },
): Views => {
  const { count, width, values } = one.byOil;
  const byOil = Array.from({ length: count }, (_, c) => {
    const oil = values.subarray(c * width, (c + 1) * width);
    return new Looked(one, { local, oil }, known);
  });
  const [first] = byOil;
  const alone = count === 1 ? first : undefined;
  return { byOil, kindest: alone ?? new Looked(one, { local, oil: one.kindestOil }, known) };
};
