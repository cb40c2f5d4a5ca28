// Whether two faults in the target explain it nearly as well as the best single one.

import type { Diagnosis } from "../diagnosis.ts";
import type { Evidence } from "../evidence.ts";
import type { Faults, FindingName } from "../faults/faults.ts";
import { mixed } from "../model/classes.ts";
import type { Observed } from "../model/observed.ts";

/** How many of the best causes are paired; odds from which two are told of, and where something does not fit.
 *  @source handbook/diagnosis.md 5.6, judgement */
const limits = { paired: 8, odds: 1 / 3, oddsOfMisfit: 0.1 } as const;

/** Of two faults the worse shows: the lowest class of the level, the highest of gain and leak. */
const worse: Readonly<Partial<Record<FindingName, "first" | "last">>> = {
  level: "first",
  wet: "last",
  leak: "last",
};

/** Air in the crankcase beside another path is said to be a faint hiss, and is dropped: likelier with a leak into the
 *  crankcase than without, by this. @source handbook/diagnosis.md 5.6, judgement */
const crankcase = {
  factor: 0.9 / 0.55,
  causes: ["worn-rings-or-bore", "broken-ring-or-piston", "stuck-rings", "washed-or-dry-bores"],
} as const;

interface Single {
  readonly place: number;
  readonly code: string;
  readonly prior: number;
  /** ln(prior·Π likelihood^weight). */
  readonly score: number;
}

/** odds = P₁·P₂·f·Π Lik_pair^w / max(P·Π Lik^w) over the causes of single cylinders; where something else leads the
 *  target, times the chance of the best of them over that of the leading one.
 *  @param priors - of the target's own faults @param chances - of the target, both aligned with the causes
 *  @returns undefined below odds of a third, or a tenth where something does not fit */
export const twoFaultsOf = (
  observed: readonly Observed[],
  { heard }: Evidence["cylinders"][number],
  {
    faults,
    priors,
    chances,
    misfits,
  }: {
    readonly faults: Faults;
    readonly priors: readonly number[];
    readonly chances: readonly number[];
    readonly misfits: Diagnosis["misfits"];
  },
): Diagnosis["twoFaults"] => {
  const singles = faults.causes
    .map(({ code, group }, place): Single & { readonly group: string } => {
      const prior = priors[place] ?? 0;
      const score = observed.reduce(
        (sum, { likelihood, weight }) => sum + weight * Math.log(likelihood[place] ?? 0),
        Math.log(prior),
      );
      return { place, code, group, prior, score };
    })
    .filter(({ group, score }) => group !== "nothing" && group !== "unlisted" && score > -Infinity)
    .sort((a, b) => b.score - a.score)
    .slice(0, limits.paired);
  const [single] = singles;
  if (single === undefined) return undefined;
  const faint = crankcaseBesideAnother(heard ?? []);
  const [best] = singles
    .flatMap((one, i) =>
      singles.slice(i + 1).map((other) => ({ one, other, score: pairScore(one, other, observed, faults) })),
    )
    .map(({ one, other, score }) => ({
      one,
      other,
      score: score + (faint && [one, other].some(isRinglike) ? Math.log(crankcase.factor) : 0),
    }))
    .sort((a, b) => b.score - a.score);
  if (best === undefined) return undefined;
  const besideLeading = Math.min(1, (chances[single.place] ?? 0) / Math.max(...chances));
  const odds = Math.exp(best.score - single.score) * besideLeading;
  if (!(odds >= (misfits.length > 0 ? limits.oddsOfMisfit : limits.odds))) return undefined;
  return { causes: [best.one.code, best.other.code], odds };
};

const pairScore = (one: Single, other: Single, observed: readonly Observed[], faults: Faults): number =>
  observed.reduce(
    (sum, found) => sum + found.weight * Math.log(ofBoth(found, one, other, faults)),
    Math.log(one.prior * other.prior * faults.settings.twoFaultFactor),
  );

const ofBoth = (
  { finding, classes, likelihood }: Observed,
  one: Single,
  other: Single,
  { findings }: Faults,
): number => {
  const [first, second] = [one, other].map(({ place }) => findings[finding].columns[place]?.chances ?? []);
  if (first === undefined || second === undefined) return 0;
  // unstable is the first class: either makes it so
  const shows = finding === "repeats" ? "first" : worse[finding];
  if (shows === undefined) return ((likelihood[one.place] ?? 0) + (likelihood[other.place] ?? 0)) / 2;
  return mixed(extreme(first, second, shows), classes);
};

/** Chances of the class of the first or the last of two independent draws, from the sums up to each class. */
export const extreme = (
  first: readonly number[],
  second: readonly number[],
  shows: "first" | "last",
): readonly number[] => {
  const upTo = (row: readonly number[], k: number): number =>
    row.slice(0, k + 1).reduce((sum, chance) => sum + chance, 0);
  const both = first.map((_, k) => {
    const [f, s] = [upTo(first, k), upTo(second, k)];
    return shows === "last" ? f * s : 1 - (1 - f) * (1 - s);
  });
  return both.map((sum, k) => sum - (both[k - 1] ?? 0));
};

const crankcaseBesideAnother = (heard: NonNullable<Evidence["cylinders"][number]["heard"]>): boolean =>
  heard.some(({ place }) => place === "crankcase") &&
  heard.some(({ place }) => place !== "crankcase" && place !== "none");

const isRinglike = ({ code }: Single): boolean => crankcase.causes.some((one) => one === code);
