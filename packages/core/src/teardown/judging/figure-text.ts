// A figure with its limit, in a mechanic's words.

import type { LengthUnit } from "../../record/index.ts";
import { lengthNumber, lengthText, rangeText } from "../length-text.ts";
import { placeNamed } from "../places.ts";
import type { LimitVerdict, TeardownItem } from "../teardown.ts";
import { deciding } from "./limits.ts";

/** `0.12 mm`, by feeler `0.35 to 0.40 mm`. */
export const valueText = ({ value, between, apart, unit, quantity }: TeardownItem): string => {
  if (between !== undefined) return rangeText(between.low, between.high, unit);
  if (apart !== undefined) return `${apart.map((one) => lengthNumber(one, unit)).join("/")} ${unit}`;
  return quantity === "taper" || quantity === "out-of-round"
    ? lengthText(Math.abs(value), unit)
    : lengthText(value, unit);
};

/** `limit 0.10 mm`, `limit 0.0010 to 0.0025 in`, `limit at least 57.98 mm`. */
const limitText = (
  { low, high, kind }: Pick<LimitVerdict, "low" | "high" | "kind">,
  unit: LengthUnit,
): string => {
  const word = kind === "new" ? "new limit" : "limit";
  if (low === undefined) return high === undefined ? "" : `${word} ${lengthText(high, unit)}`;
  if (high === undefined) return `${word} at least ${lengthText(low, unit)}`;
  // a limit that holds either way is told once
  if (low + high === 0) return `${word} ${lengthText(high, unit)}`;
  return `${word} ${rangeText(low, high, unit)}`;
};

/** `bore 3 taper 0.12 mm, limit 0.10 mm`; without a limit the figure alone.
 *  @param verdict - absent: the one that decides */
export const figureText = (item: TeardownItem, verdict = deciding(item)): string => {
  const { at, ...place } = item;
  const isWhere = at !== undefined && !["taper", "out-of-round"].includes(item.quantity);
  const named =
    item.part === "crank" && item.label !== undefined
      ? `${item.quantity} at main ${item.label}`
      : `${placeNamed(isWhere ? item : place)} ${item.quantity}`;
  const figure = `${named} ${valueText(item)}`;
  return verdict === undefined ? figure : `${figure}, ${limitText(verdict, item.unit)}`;
};

/** So many figures at most in one sentence; how many more there are is said. */
export const figuresText = (items: readonly TeardownItem[], most = 2): string => {
  const more = items.length - most;
  const told = items
    .slice(0, most)
    .map((item) => figureText(item))
    .join("; ");
  return more > 0 ? `${told}; and ${String(more)} more` : told;
};
