// Signs of the whole engine: each cylinder's cause may bring them, and they may show by themselves (noisy or).

import type { Evidence } from "../evidence.ts";
import { type Column, type Faults, type SignName, signNames } from "../faults/faults.ts";

/** One term of the sum that present signs expand into: `sign · Π over cylinders of keeps[cause]`. */
export interface SignTerm {
  readonly sign: number;
  /** Aligned with the causes: the chance that the cause brings none of the signs of this term. */
  readonly keeps: readonly number[];
}

/** P(absent | causes) = (1 − background)·Π(1 − q(cause)); present = 1 − that. With several present, by inclusion and
 *  exclusion. A sign that nobody looked for changes nothing. @source handbook/diagnosis.md 3 */
export const signTerms = (signs: readonly SignSeen[], faults: Faults): readonly SignTerm[] => {
  const start: readonly SignTerm[] = [{ sign: 1, keeps: faults.causes.map(() => 1) }];
  return signs.reduce((terms, { state, absent }) => {
    const absentTerms = terms.map((term) => both(term, absent));
    return state === "absent"
      ? absentTerms
      : [...terms, ...absentTerms.map((term) => ({ ...term, sign: -term.sign }))];
  }, start);
};

const both = (one: SignTerm, other: SignTerm): SignTerm => ({
  sign: one.sign * other.sign,
  keeps: one.keeps.map((keep, h) => keep * (other.keeps[h] ?? 1)),
});

export interface SignSeen {
  readonly name: SignName | "gas";
  readonly state: "present" | "absent";
  /** The term of its absence. */
  readonly absent: SignTerm;
  /** How its link to each cause is known, aligned with the causes. */
  readonly links: readonly Pick<Column, "link" | "source">[];
}

/** What was looked for on the whole engine. */
export const signsSeen = (evidence: Evidence, faults: Faults): readonly SignSeen[] => [
  ...signNames.flatMap((name) => {
    const state = evidence.signs[name];
    if (state === undefined) return [];
    const { background, brings, status, source } = faults.signs[name];
    const absent = { sign: 1 - background, keeps: brings.map((q) => 1 - q) };
    return [{ name, state, absent, links: brings.map(() => ({ link: status, source })) }];
  }),
  ...gasLookedFor(evidence, faults),
];

/** Gas in the coolant is looked for once for the engine: its column, told for one cylinder, as a sign of it.
 *  q = 1 − P(negative | cause)/P(negative | no fault), not below 0. */
const gasLookedFor = ({ gas }: Evidence, { findings }: Faults): readonly SignSeen[] => {
  if (gas === undefined) return [];
  const { classes, columns } = findings.gas;
  const place = classes.indexOf("negative");
  const negative = columns.map(({ chances }) => chances[place] ?? 1);
  const [sound = 1] = negative;
  const absent = { sign: sound, keeps: negative.map((chance) => Math.min(1, chance / sound)) };
  return [{ name: "gas", state: gas === "positive" ? "present" : "absent", absent, links: columns }];
};
