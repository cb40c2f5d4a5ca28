// The comparison without any price: by the ratio of the way in to the work.

import type { DecisionInput } from "../input.ts";
import type { Margin } from "../words.ts";
import { marginByRatio } from "./keep.ts";
import { redoOf, sharesOf } from "./money-case.ts";
import { breakEvenChance, flipRatio, shareToOpen } from "./ratio.ts";

/** One act against waiting without any price: by what getting in costs beside the work. Shares and ratios. */
export interface RatioView {
  readonly act: "topEnd" | "reRing";
  /** Chance that this very work is needed within the horizon; kept for good, the share of life used up. */
  readonly chance: number;
  /** phi: share of the way in that is still to do. */
  readonly toOpen: number;
  /** alpha*: acting pays only if getting in again costs more than so many times the work; absent: at no ratio. */
  readonly flipRatio?: number;
  /** With the user's own ratio: the chance at which it breaks even, whether acting pays, and how clearly. */
  readonly own?: {
    readonly ratio: number;
    readonly breakEven: number;
    readonly pays: "yes" | "no";
    readonly margin: Margin;
  };
}

/** @param probability - of passing the limit within the horizon  @source handbook/decision.md 3 */
export const ratioView = (input: DecisionInput, probability: number): RatioView => {
  const act = input.considered === "topEnd" ? "topEnd" : "reRing";
  const shares = sharesOf(input);
  return ratioAt(input, act, probability * (act === "topEnd" ? shares.top : shares.rings));
};

/** The same for an engine kept for good. @param used - share of life used up, in the place of the chance */
export const ratioWhenKept = (input: DecisionInput, used: number): RatioView =>
  ratioAt(input, input.considered === "topEnd" ? "topEnd" : "reRing", used);

/** rho of an engine kept for good, by the user's ratio: the same expression as the break-even chance. */
export const priceRatioBy = (input: DecisionInput): number | undefined => {
  if (input.accessRatio === undefined) return undefined;
  const act = input.considered === "topEnd" ? "topEnd" : "reRing";
  return breakEvenChance(input.accessRatio, leftOf(input, act));
};

const leftOf = (input: DecisionInput, act: "topEnd" | "reRing") => ({
  phi: shareToOpen(input.done, act),
  q: redoOf(input, act),
});

const ratioAt = (input: DecisionInput, act: "topEnd" | "reRing", chance: number): RatioView => {
  const left = leftOf(input, act);
  const flip = flipRatio(chance, left);
  const view = { act, chance, toOpen: left.phi, ...(flip === undefined ? {} : { flipRatio: flip }) };
  const ratio = input.accessRatio;
  if (ratio === undefined) return view;
  const pays = flip !== undefined && ratio > flip ? "yes" : "no";
  const margin = flip === undefined || flip <= 0 || ratio <= 0 ? "clear" : marginByRatio(ratio, flip);
  return { ...view, own: { ratio, breakEven: breakEvenChance(ratio, left), pays, margin } };
};
