// What would change the comparison: each input varied alone, the others fixed.

import type { Margin, Repair } from "../words.ts";
import { margins } from "../judgements.ts";
import { differenceOf } from "./break-even.ts";
import { priceOfAct } from "./expected.ts";
import { leversOf, type Lever } from "./levers.ts";
import type { MoneyCase } from "./money-case.ts";

export interface Swing {
  readonly input: string;
  readonly value: number;
  /** Ends of its range, and the difference (idle less act) there. */
  readonly low: { readonly at: number; readonly difference: number };
  readonly high: { readonly at: number; readonly difference: number };
  /** Nearest value at which the sign turns, and where it lies. */
  readonly flip?: { readonly at: number; readonly where: "half-range" | "range" | "outside" };
}

/** The widest first; inputs that change nothing are left out.  @source handbook/decision.md 4 */
export const tornadoOf = (money: MoneyCase, act: Repair): readonly Swing[] =>
  leversOf(money, act)
    .map((lever) => swingOf(lever, act, differenceOf(money, act)))
    .filter((swing) => width(swing) > 0 || swing.flip !== undefined)
    .toSorted((a, b) => width(b) - width(a));

/** close: the difference is below a tenth of the job, or an input tips it within half its range; holds: within its range.
 *  @source handbook/decision.md 4 (judgement) */
export const marginOf = (money: MoneyCase, act: Repair, swings: readonly Swing[]): Margin => {
  const tips = swings.map(({ flip }) => flip?.where);
  const level = Math.abs(differenceOf(money, act)) < margins.shareOfJob * priceOfAct(money, act);
  if (level || tips.includes("half-range")) return "close";
  return tips.includes("range") ? "holds" : "clear";
};

const width = ({ low, high }: Swing): number => Math.abs(high.difference - low.difference);

const swingOf = (lever: Lever, act: Repair, now: number): Swing => {
  const { input, value, range, set } = lever;
  const difference = (at: number): number => differenceOf(set(at), act);
  const end = (at: number): Swing["low"] => ({ at, difference: difference(at) });
  const at = flipOf(lever, difference, now);
  return {
    input,
    value,
    low: end(range[0]),
    high: end(range[1]),
    ...(at === undefined ? {} : { flip: { at, where: placeOf(lever, at) } }),
  };
};

/** Of the two tipping points, one each way, the nearer one on the scale of the input. */
const flipOf = (lever: Lever, difference: (at: number) => number, now: number): number | undefined => {
  const { beyond, value } = lever;
  if (beyond.every((end) => difference(end) === now)) return undefined;
  const found = beyond.flatMap((end) => firstFlip(lever, end, { difference, now }) ?? []);
  const away = (at: number): number => Math.abs(onScale(lever, at) - onScale(lever, value));
  return found.length === 0 ? undefined : found.reduce((a, b) => (away(b) < away(a) ? b : a));
};

/** The difference is a straight line in a price, but for a kink or two; it bends gently in limit and years. */
const steps = 24;

/** Walks from the value to the end and halves the step in which the sign turns. */
const firstFlip = (
  lever: Lever,
  end: number,
  { difference, now }: { readonly difference: (at: number) => number; readonly now: number },
): number | undefined => {
  const acts = (place: number): boolean => difference(fromScale(lever, place)) > 0;
  const [start, stop] = [onScale(lever, lever.value), onScale(lever, end)];
  if (start === stop) return undefined;
  const place = (step: number): number => start + ((stop - start) * step) / steps;
  let step = 1;
  while (step <= steps && acts(place(step)) === now > 0) step += 1;
  if (step > steps) return undefined;
  let [same, turned] = [place(step - 1), place(step)];
  for (let round = 0; round < 50; round += 1) {
    const half = (same + turned) / 2;
    if (acts(half) === now > 0) same = half;
    else turned = half;
  }
  return fromScale(lever, turned);
};

const placeOf = (lever: Lever, at: number): "half-range" | "range" | "outside" => {
  const on = (one: number): number => onScale(lever, one);
  const [value, place, low, high] = [on(lever.value), on(at), on(lever.range[0]), on(lever.range[1])];
  if (place < low || place > high) return "outside";
  return place >= (value + low) / 2 && place <= (value + high) / 2 ? "half-range" : "range";
};

const onScale = ({ scale }: Lever, value: number): number =>
  scale === "ratio" ? Math.log(value) : scale === "odds" ? Math.log(value / (1 - value)) : value;

const fromScale = ({ scale }: Lever, place: number): number =>
  scale === "ratio" ? Math.exp(place) : scale === "odds" ? 1 / (1 + Math.exp(-place)) : place;
