// The limits of a figure in words: what may stay in, what is wanted as new, and whose they are.

import type { Length, LimitVerdict, TeardownItem } from "@sealtrend/core";
import { clean } from "../clean.ts";
import { type Written, lengthNumber } from "./teardown-length.ts";

/** `0.0010 to 0.0025`, `up to 0.10`, `from 85.98`; a signed figure's limit counts either way: `up to 0.10`. */
export const rangeText = ({ low, high }: Pick<LimitVerdict, "low" | "high">, written: Written): string => {
  if (low === undefined && high === undefined) return "";
  if (low === undefined || (high !== undefined && low + high === 0))
    return `up to ${numberOf(high, written)}`;
  if (high === undefined) return `from ${numberOf(low, written)}`;
  return `${numberOf(low, written)} to ${numberOf(high, written)}`;
};

const numberOf = (value: Length | undefined, written: Written): string =>
  value === undefined ? "" : lengthNumber(value, written);

/** `wear up to 0.10`; both, where there are both: `new up to 0.05, wear up to 0.10`; of a part of another size than the first
 *  `new 87.00 to 87.03, limits for +0.50 mm`. */
export const limitsText = ({ verdicts }: Pick<TeardownItem, "verdicts">, written: Written): string =>
  [
    ...verdicts.map(
      (verdict) =>
        `${verdict.kind} ${rangeText(verdict, written)}${verdict.waits === undefined ? "" : " (misprinted? see check)"}`,
    ),
    ...new Set(verdicts.flatMap(({ limitFor }) => limitFor ?? [])),
  ].join(", ");

/** All values a row has to have places for. */
export const limitValues = ({ verdicts }: Pick<TeardownItem, "verdicts">): readonly Length[] =>
  verdicts.flatMap(({ low, high }) => [low, high].filter((one) => one !== undefined));

/** Whose limits these are, each once. */
export const sourcesOf = (items: readonly TeardownItem[]): readonly string[] =>
  [...new Set(items.flatMap(({ verdicts }) => verdicts.flatMap(({ source }) => source ?? [])))].map(
    (source) => clean(source),
  );
