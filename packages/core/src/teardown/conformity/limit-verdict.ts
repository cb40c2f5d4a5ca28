// One figure against one kind of limit, with what would settle it.

import type { LimitPair } from "../../record/index.ts";
import type { LimitVerdict } from "../teardown.ts";
import { type Figure, isNeverInside, probabilityOf, verdictOf } from "./conforming.ts";
import { instrumentName } from "./instrument-for.ts";
import { type FigureOf, settlementOf } from "./settlement.ts";

/** Limits of one kind with their source. */
export interface KindOfLimit {
  readonly kind: "new" | "wear";
  readonly limits: LimitPair;
  readonly source?: string;
}

/** The verdict on one figure; a settlement where it is too close, and said at once where this instrument can never show
 *  `inside`. @throws RangeError without a limit */
export const limitVerdict = (
  figure: Figure,
  { kind, limits, source }: KindOfLimit,
  of: FigureOf,
): LimitVerdict => {
  const probability = probabilityOf(figure, limits);
  const verdict = verdictOf(probability);
  const settlement = verdict === "too-close-to-tell" ? settlementOf(figure, limits, of) : undefined;
  // more readings of the same instrument, or another leaf of it, may do what one does not
  const isSettled = settlement?.by !== undefined && settlement.by.instrument === of.instrument?.kind.name;
  const never = isNeverInside(figure.uncertainty, limits) && verdict !== "inside" && !isSettled;
  return {
    kind,
    ...(limits.low === undefined ? {} : { low: limits.low }),
    ...(limits.high === undefined ? {} : { high: limits.high }),
    ...(source === undefined ? {} : { source }),
    probability,
    verdict,
    ...(never ? { neverInside: true, ...neverBy(of) } : {}),
    ...(settlement === undefined ? {} : { settlement }),
  };
};

const neverBy = ({ instrument, unit }: FigureOf): Pick<LimitVerdict, "neverBy"> =>
  instrument === undefined ? {} : { neverBy: instrumentName(instrument, unit) };
