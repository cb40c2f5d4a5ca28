// A percentage whose supply pressure nobody wrote down: what can be said over the pressures testers use.

import { type AbsolutePressure, gaugePressure, toSi } from "../quantity/index.ts";
import { alphaOf, cylinderOfLost } from "./alpha.ts";
import { type FlowModel, isentropicFlow } from "./flow-model.ts";

/** Two ends between which a figure lies. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** Supplies that testers are set to [Pa]: 30 to 100 psi. */
export const usualSupplies: Span = { low: toSi(30, "psi"), high: toSi(100, "psi") };
const supplies = [usualSupplies.low, usualSupplies.high].map(gaugePressure);

const spanOf = (values: readonly number[]): Span => ({
  low: Math.min(...values),
  high: Math.max(...values),
});

/** The range of alpha at this part lost. @param lost - above 0, below 1 @throws RangeError outside */
export const alphaOverSupplies = (
  lost: number,
  ambient: AbsolutePressure,
  model: FlowModel = isentropicFlow,
): Span =>
  spanOf(
    supplies.map((supply) => alphaOf({ supply, cylinder: cylinderOfLost(supply, lost), ambient }, model)),
  );

/** The margin to a master of the same day is fair all the same: it hardly depends on the supply. The fractions lost of the
 *  cylinder and of the master, which is above 0. */
export const marginOverSupplies = (
  { lost, master }: { readonly lost: number; readonly master: number },
  ambient: AbsolutePressure,
  model: FlowModel = isentropicFlow,
): Span => {
  const alphas = (part: number) =>
    supplies.map((supply) => alphaOf({ supply, cylinder: cylinderOfLost(supply, part), ambient }, model));
  const masters = alphas(master);
  return spanOf(alphas(lost).map((alpha, i) => alpha / (masters[i] ?? 1)));
};
