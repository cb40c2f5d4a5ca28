// The bore before it wore: what an unworn spot reads, else the low end of the new limit, else the nominal size.

import { type Length, length } from "../../quantity/index.ts";
import type { Engine } from "../../record/index.ts";
import { mean } from "../../statistics/index.ts";
import { alreadyBored } from "../figures/index.ts";
import type { Oversize } from "../asked-for.ts";
import { byLabel } from "./made.ts";
import type { Reading } from "./reading.ts";
import { isUnworn } from "./round-parts.ts";

export interface Original {
  readonly value: Length;
  readonly from: Oversize["originalFrom"];
  /** Unworn readings that it is the mean of; none where it is a printed size. */
  readonly readings: readonly Reading[];
}

/** Of one bore: its own unworn spot before that of the others. @param label - absent: of the engine
 *  @param size - that it was bored to since, counted from the standard bore */
export const originalBore = (
  readings: readonly Reading[],
  engine: Engine,
  { label, size = length(0) }: { readonly label?: string; readonly size?: Length } = {},
): Original | undefined => {
  const bores = byLabel(readings, "bore", "diameter");
  const own = (label === undefined ? [] : (bores.get(label) ?? [])).filter(isUnworn);
  const unworn = own.length > 0 ? own : [...bores.values()].flat().filter(isUnworn);
  if (unworn.length > 0) {
    const value = length(mean(unworn.map(({ item }) => item.value)));
    return { value, from: "unworn reading", readings: unworn };
  }
  const standard = standardBore(engine);
  return standard === undefined
    ? undefined
    : { ...standard, value: length(standard.value + size), readings: [] };
};

/** As the maker bored it. */
export const standardBore = (
  engine: Engine,
): { readonly value: Length; readonly from: Oversize["originalFrom"] } | undefined => {
  const low = engine.clearances.find(
    ({ part, quantity, new: fresh }) =>
      part === "bore" && quantity === "diameter" && fresh?.low !== undefined,
  )?.new?.low;
  if (low !== undefined) return { value: low, from: "low end of the new limit" };
  const { bore } = engine.geometry;
  return bore === undefined ? undefined : { value: bore, from: "nominal bore" };
};

/** The oversize that an unworn reading looks like; undefined where it looks like none. */
export const boredBefore = (original: Original, engine: Engine): Length | undefined => {
  const standard = standardBore(engine);
  const offered = engine.offered.bore;
  return standard === undefined || offered === undefined || original.from !== "unworn reading"
    ? undefined
    : alreadyBored(original.value, standard.value, offered.sizes);
};
