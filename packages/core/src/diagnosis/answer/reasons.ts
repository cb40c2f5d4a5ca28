// What speaks for a cause and against it: findings that are much likelier with it than without, or much less likely.

import type { Reason } from "../diagnosis.ts";
import type { Faults } from "../faults/faults.ts";
import type { SignSeen } from "../model/signs.ts";
import type { Observed } from "../model/observed.ts";

/** Below this ratio, up or down, a finding is no reason. @source judgement: twice as likely is worth telling */
const worthTelling = 2;

/** One thing found, with how likely each cause of the target makes it, up to a factor. */
export type Witness = Omit<Reason, "ratio" | "link" | "source"> & {
  /** Aligned with the causes. */
  readonly likelihood: readonly number[];
  /** Its power in the chances. */
  readonly weight: number;
  /** Of each cause with it, aligned with the causes. */
  readonly links: readonly Pick<Reason, "link" | "source">[];
};

/** Findings on the target. */
export const findingWitnesses = (observed: readonly Observed[], faults: Faults): readonly Witness[] =>
  observed.map(({ finding, cylinder, word, likelihood, weight }) => ({
    finding,
    cylinder,
    word,
    likelihood,
    weight,
    links: faults.findings[finding].columns,
  }));

/** Signs of the engine. One that every cylinder may bring raises what all share as well, a state of the engine, and no view from
 *  one cylinder with the others as they are shows that: it is in them already. So each is told by what it did to the chances,
 *  q = q'·L up to a factor: L = q/q'.
 *  @param chances - q, of the target, aligned with the causes  @param without - q', the same with a sign left out */
export const signWitnesses = (
  signs: readonly SignSeen[],
  chances: readonly number[],
  without: (name: SignSeen["name"]) => readonly number[],
): readonly Witness[] =>
  signs.map(({ name, state, links }) => {
    const before = without(name);
    const likelihood = chances.map((chance, h) => {
      const one = before[h] ?? 0;
      return one > 0 ? chance / one : 1;
    });
    return { finding: name, word: name === "gas" ? gasWords[state] : state, likelihood, weight: 1, links };
  });

/** Gas is a finding of the tables too, and keeps its words. */
const gasWords = { present: "positive", absent: "negative" } as const;

/** How much likelier what was found is with the cause than without it, beside everything else that was found: to the mix of
 *  all other causes in the chances they would have without this finding, q/L^w. The chances as they are would hold it
 *  already, and nothing would ever speak for a cause that its near fellows explain as well.
 *  ratio = L(cause)·Σ q/L^w / Σ q·L/L^w, sums over the other causes.
 *  @param cause - its place @param chances - q, of the target, aligned with the causes
 *  @returns reasons for (ratio 2 and more) and against (a half and less), the strongest first; none where nothing but the
 *  cause is possible @source the odds form of the rule of Bayes */
export const reasonsOf = (
  cause: number,
  chances: readonly number[],
  witnesses: readonly Witness[],
): { readonly for: readonly Reason[]; readonly against: readonly Reason[] } => {
  const told = witnesses.flatMap((witness) => {
    const { likelihood, weight } = witness;
    const most = Math.max(...likelihood);
    let [before, withIt] = [0, 0];
    for (const [h, chance] of chances.entries()) {
      const relative = (likelihood[h] ?? 0) / most;
      if (h === cause || !(relative > 0)) continue;
      const without = chance / (weight === 1 ? relative : relative ** weight);
      before += without;
      withIt += without * relative;
    }
    const ratio = ((likelihood[cause] ?? 0) / most) * (before / withIt);
    const isTold = withIt > 0 && (ratio >= worthTelling || ratio <= 1 / worthTelling);
    return isTold ? reason(witness, cause, ratio) : [];
  });
  return {
    for: told.filter(({ ratio }) => ratio >= worthTelling).sort((a, b) => b.ratio - a.ratio),
    against: told.filter(({ ratio }) => ratio <= 1 / worthTelling).sort((a, b) => a.ratio - b.ratio),
  };
};

/** @returns the one reason that it is; none for a cause that the tables do not link with it */
export const reason = (
  { finding, cylinder, word, links }: Witness,
  cause: number,
  ratio: number,
): readonly Reason[] => {
  const found = { finding, ...(cylinder === undefined ? {} : { cylinder }), word, ratio };
  return links.slice(cause, cause + 1).map(({ link, source }) => ({ ...found, link, source }));
};
