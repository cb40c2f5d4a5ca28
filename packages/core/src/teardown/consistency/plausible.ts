// Where a figure can be at all, from what is known of the engine, and from what was measured on it. Wide on purpose: outside it is a
// slip, not wear.

import type { Engine, LimitPair, MeasuredPart } from "../../record/index.ts";
import type { TeardownItem } from "../teardown.ts";
import { ofAnyEngine } from "./any-engine.ts";
import { bandsOf, most } from "./own-figures.ts";

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
/** A piston is smaller than its bore, by less than this or this share of it (judgement). */
const pistonBelow = { least: 1 * mm, share: 0.02 };
/** Of the bore: what a journal may be, and of the stroke what a bore may be (judgement). */
const journalOfBore = { low: 0.1, high: 1.5 };
const boreOfStroke = { low: 0.2, high: 5 };
/** How far bores of one engine lie apart that say what its bore is (judgement). */
const boresAgree = { least: 2 * mm, share: 0.03 };

/** All that tells where the figure can be, what is surest first; none where nothing does.
 *  @param others - figures of the same engine that can be, without it */
export const plausibleFor = (
  item: TeardownItem,
  engine: Known,
  others: readonly TeardownItem[] = [],
): readonly Plausible[] => {
  const { part, quantity } = item;
  const any = ofAnyEngine(part, quantity);
  return [
    ...byEngine(item, engine, others),
    ...bandsOf(item, others),
    ...(any === undefined ? [] : [{ ...any, from: `what a ${part} ${quantity} can be` }]),
  ];
};

const byEngine = (
  { part, quantity }: Pick<TeardownItem, "part" | "quantity">,
  engine: Known,
  others: readonly TeardownItem[],
): readonly Plausible[] => {
  if (isOilClearance(part, quantity)) return [{ ...oilClearance, from: "what an oil clearance can be" }];
  if (part === "bore" && quantity === "diameter")
    return [...around(nominalBore(engine), bore), ...byStroke(engine)];
  const cylinder = nominalBore(engine) ?? measuredBore(others);
  if (part === "piston" && quantity === "diameter")
    return around(cylinder, {
      below: Math.max(pistonBelow.least, pistonBelow.share * (cylinder?.low ?? 0)),
      above: bore.above,
    });
  if (part === "ring" && quantity === "end gap")
    return cylinder === undefined
      ? []
      : [{ low: 0, high: ringGap * cylinder.high, from: "a twentieth of the bore" }];
  const kind = journalKind(part, quantity);
  if (kind === undefined) return [];
  return [
    ...around(standardOf(engine, kind), {
      below: journal.below,
      above: journal.above + (part === kind ? 0 : oilClearance.high),
    }),
    ...(cylinder === undefined ? [] : [shareOf(cylinder, journalOfBore)]),
  ];
};

/** Which journals a journal or a bearing goes by. */
const journalKind = (part: MeasuredPart, quantity: string): "main" | "pin" | undefined => {
  if ((part === "main" || part === "pin") && quantity === "diameter") return part;
  if (quantity !== "bore") return undefined;
  return part === "main bearing" ? "main" : part === "rod bearing" ? "pin" : undefined;
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
): readonly Plausible[] =>
  nominal === undefined
    ? []
    : [{ low: nominal.low - by.below, high: nominal.high + by.above, from: nominal.from }];

const shareOf = (
  { low, high, from }: Nominal,
  share: { readonly low: number; readonly high: number },
): Plausible => ({ low: low * share.low, high: high * share.high, from });

const nominalBore = (engine: Known): Nominal | undefined => {
  const limit = newLimit(engine, "bore");
  if (limit?.low !== undefined) return { low: limit.low, high: limit.low, from: "the new limit" };
  const { bore: size } = engine.geometry;
  return size === undefined ? undefined : { low: size, high: size, from: "the bore in engine.json" };
};

/** Where most of the bores that were measured agree. */
const measuredBore = (others: readonly TeardownItem[]): Nominal | undefined => {
  const bores = others.filter(({ part, quantity }) => part === "bore" && quantity === "diameter");
  const middle = most(
    bores.map(({ value }) => value),
    boresAgree,
  );
  // as worn as a bore can be: the piston is of what it was
  return middle === undefined
    ? undefined
    : { low: middle - bore.above, high: middle, from: "the bores as measured" };
};

const byStroke = ({ geometry: { stroke } }: Known): readonly Plausible[] =>
  stroke === undefined
    ? []
    : [shareOf({ low: stroke, high: stroke, from: "the stroke in engine.json" }, boreOfStroke)];

const standardOf = (engine: Known, part: "main" | "pin"): Nominal | undefined => {
  const limit = newLimit(engine, part);
  const [low, high] = [limit?.low ?? limit?.high, limit?.high ?? limit?.low];
  return low === undefined || high === undefined ? undefined : { low, high, from: "the new limit" };
};

const newLimit = ({ clearances }: Known, part: MeasuredPart): LimitPair | undefined =>
  clearances.find((one) => one.part === part && one.quantity === "diameter" && one.new !== undefined)?.new;
