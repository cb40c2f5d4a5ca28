// Kept for good: every engine needs it some day, so the question is whether this opening is early enough to be worth it.

import type { Ownership } from "../input.ts";
import { margins, usual } from "../judgements.ts";
import { passedBy, type SingleWear } from "../wear/outlook.ts";
import type { Margin } from "../words.ts";

export interface Keep {
  /** tau, median years left. */
  readonly yearsLeft: number;
  /** Lr = f (a + tau), years that a re-ring lasts. */
  readonly lifeAfter: number;
  /** rho = (now + redo)/(again + redo); absent without prices. */
  readonly priceRatio?: number;
  /** u, the share of life used up, discounted: acting at this opening pays where rho < u. */
  readonly used: number;
  /** Years left at which it turns, the life after a re-ring moving with them; absent without prices or where no number of
   *  years does. */
  readonly flipYears?: number;
  /** tau*, the same with that life held. */
  readonly flipYearsAtThisLife?: number;
  /** By tau*, which never lies farther off than where it turns: that life is a judgement (ours). */
  readonly margin?: Margin;
  /** rho < u. */
  readonly pays?: "yes" | "no";
}

/** u = 1 - tau/Lr, with interest d (e^(-d tau) - e^(-d Lr)) / (1 - e^(-d Lr)); Lr held,
 *  tau* = (1 - rho) Lr, with interest -ln[rho (1 - e^(-d Lr)) + e^(-d Lr)]/d.
 *  @param ratio - rho; @returns undefined where age or years left are unknown
 *  @source handbook/decision.md 3 (derived; renewals at full price for ever against one at this opening) */
export const keepOf = (
  { age, left, lifeFactor }: Extract<Ownership, { kind: "for-good" }>,
  wear: SingleWear | undefined,
  { ratio, interest }: { readonly ratio: number | undefined; readonly interest: number },
): Keep | undefined => {
  const yearsLeft = medianYears(wear) ?? left;
  if (age === undefined || yearsLeft === undefined) return undefined;
  const life: Life = { age, factor: lifeFactor ?? usual.lifeFactor, interest };
  const lifeAfter = life.factor * (age + yearsLeft);
  const used = usedUp(life, yearsLeft);
  if (ratio === undefined) return { yearsLeft, lifeAfter, used };
  const end = Math.exp(-interest * lifeAfter);
  const held = interest === 0 ? (1 - ratio) * lifeAfter : -Math.log(ratio * (1 - end) + end) / interest;
  const turns = turningYears(life, ratio);
  return {
    yearsLeft,
    lifeAfter,
    priceRatio: ratio,
    used,
    ...(turns === undefined ? {} : { flipYears: turns }),
    ...(held > 0 ? { flipYearsAtThisLife: held } : {}),
    margin: held > 0 ? marginByRatio(held, yearsLeft) : "clear",
    pays: ratio < used ? "yes" : "no",
  };
};

interface Life {
  readonly age: number;
  readonly factor: number;
  readonly interest: number;
}

/** u, below 0 where a re-ring would not last as long as what is left. */
const usedUp = ({ age, factor, interest }: Life, yearsLeft: number): number => {
  const lifeAfter = factor * (age + yearsLeft);
  if (lifeAfter === 0) return 1;
  if (interest === 0) return 1 - yearsLeft / lifeAfter;
  const end = Math.exp(-interest * lifeAfter);
  return (Math.exp(-interest * yearsLeft) - end) / (1 - end);
};

/** rho = u(tau), u falling as tau grows: rho = 1 - tau/(f (a + tau)) gives tau = (1 - rho) f a/(1 - (1 - rho) f); with interest
 *  it is looked for within 1000 years.  @source handbook/decision.md 3, solved here */
const turningYears = (life: Life, ratio: number): number | undefined => {
  const { age, factor, interest } = life;
  const share = (1 - ratio) * factor;
  if (age === 0 || share <= 0) return undefined;
  if (interest === 0) return share < 1 ? (share * age) / (1 - share) : undefined;
  let [pays, not] = [0, 1000];
  if (usedUp(life, not) > ratio) return undefined;
  for (let round = 0; round < 60; round += 1) {
    const half = (pays + not) / 2;
    if (usedUp(life, half) > ratio) pays = half;
    else not = half;
  }
  return not;
};

/** The age from which acting at this opening pays, where the age is not known: rho < u solved for it,
 *  a = tau/(f (1 - rho)) - tau, with interest Lr = -ln[(e^(-d tau) - rho)/(1 - rho)]/d and a = Lr/f - tau.
 *  @returns undefined where years left or rho are unknown, or no age does  @source handbook/decision.md 3, solved here */
export const keepFromAge = (
  { age, left, lifeFactor = usual.lifeFactor }: Extract<Ownership, { kind: "for-good" }>,
  wear: SingleWear | undefined,
  { ratio, interest }: { readonly ratio: number | undefined; readonly interest: number },
): number | undefined => {
  const yearsLeft = medianYears(wear) ?? left;
  if (age !== undefined || yearsLeft === undefined || ratio === undefined) return undefined;
  const rest = (Math.exp(-interest * yearsLeft) - ratio) / (1 - ratio);
  if (ratio >= 1 || rest <= 0) return undefined;
  const lifeAfter = interest === 0 ? yearsLeft / (1 - ratio) : -Math.log(rest) / interest;
  return Math.max(0, lifeAfter / lifeFactor - yearsLeft);
};

/** How far two figures lie apart that tip the verdict where they meet; both above 0. */
export const marginByRatio = (a: number, b: number): Margin => {
  const apart = Math.max(a / b, b / a);
  return apart < margins.closeRatio ? "close" : apart < margins.holdsRatio ? "holds" : "clear";
};

/** F(tau) = 1/2, looked for within 100 years; a typed chance knows nothing beyond its horizon. */
const medianYears = (wear: SingleWear | undefined): number | undefined => {
  if (wear?.kind !== "line" || passedBy(wear, 100) < 0.5) return undefined;
  let [before, after] = [0, 100];
  for (let round = 0; round < 60; round += 1) {
    const half = (before + after) / 2;
    if (passedBy(wear, half) < 0.5) before = half;
    else after = half;
  }
  return after;
};
