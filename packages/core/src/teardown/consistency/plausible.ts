// Where a figure can be at all, from what is known of the engine. Wide on purpose: outside it is a slip, not wear.

import type { Engine, LimitPair, MeasuredPart } from "../../record/index.ts";
import type { TeardownItem } from "../teardown.ts";

export interface Plausible {
  /** [m] */
  readonly low: number;
  readonly high: number;
  /** What it was taken from, as told to a mechanic. */
  readonly from: string;
}

type Known = Pick<Engine, "clearances" | "geometry">;

const mm = 0.001;
/** Below and above the nominal size: a bore can be bored out, a journal ground. @source handbook/teardown.md 4.3 (judgement) */
const bore = { below: 0.02 * mm, above: 1.6 * mm };
const journal = { below: 1.1 * mm, above: 0.02 * mm };
const oilClearance = { low: 0.005 * mm, high: 0.2 * mm };
/** Of the bore. @source handbook/teardown.md 4.3 (judgement) */
const ringGap = 0.05;
/** A piston is smaller than its bore, by less than this (judgement). */
const pistonBelow = 1 * mm;

/** Undefined where nothing is known to judge by. */
export const plausibleFor = (
  { part, quantity }: Pick<TeardownItem, "part" | "quantity">,
  engine: Known,
): Plausible | undefined => {
  if (isOilClearance(part, quantity)) return { ...oilClearance, from: "what an oil clearance can be" };
  if (part === "bore" && quantity === "diameter") return around(nominalBore(engine), bore);
  if (part === "piston" && quantity === "diameter")
    return around(nominalBore(engine), { below: pistonBelow, above: bore.above });
  if (part === "ring" && quantity === "end gap") {
    const nominal = nominalBore(engine);
    return nominal === undefined
      ? undefined
      : { low: 0, high: ringGap * nominal.high, from: "a twentieth of the bore" };
  }
  if ((part === "main" || part === "pin") && quantity === "diameter")
    return around(standardOf(engine, part), journal);
  if ((part === "main bearing" || part === "rod bearing") && quantity === "bore")
    return around(standardOf(engine, part === "main bearing" ? "main" : "pin"), {
      below: journal.below,
      above: journal.above + oilClearance.high,
    });
  return undefined;
};

const isOilClearance = (part: MeasuredPart, quantity: string): boolean =>
  (part === "main bearing" || part === "rod bearing") &&
  (quantity === "thread clearance" || quantity === "clearance");

interface Nominal {
  readonly low: number;
  readonly high: number;
  readonly from: string;
}

const around = (
  nominal: Nominal | undefined,
  by: { readonly below: number; readonly above: number },
): Plausible | undefined =>
  nominal === undefined
    ? undefined
    : { low: nominal.low - by.below, high: nominal.high + by.above, from: nominal.from };

const nominalBore = (engine: Known): Nominal | undefined => {
  const limit = newLimit(engine, "bore");
  if (limit?.low !== undefined) return { low: limit.low, high: limit.low, from: "the new limit" };
  const { bore: size } = engine.geometry;
  return size === undefined ? undefined : { low: size, high: size, from: "the bore in engine.json" };
};

const standardOf = (engine: Known, part: "main" | "pin"): Nominal | undefined => {
  const limit = newLimit(engine, part);
  const [low, high] = [limit?.low ?? limit?.high, limit?.high ?? limit?.low];
  return low === undefined || high === undefined ? undefined : { low, high, from: "the new limit" };
};

const newLimit = ({ clearances }: Known, part: MeasuredPart): LimitPair | undefined =>
  clearances.find((one) => one.part === part && one.quantity === "diameter" && one.new !== undefined)?.new;
