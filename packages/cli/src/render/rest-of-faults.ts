// Of very many faults the first are told and the rest counted: a file that is wrong throughout is mended from its beginning, and
// nobody reads 300,000 messages.

import type { Fault } from "../command.ts";

/** So many are told at most, here and in a document. */
export const mostTold = 200;

/** Faults that are not told, and how many there are of each code. */
export interface RestOfFaults {
  readonly count: number;
  readonly codes: Readonly<Record<string, number>>;
}

/** Undefined where there are none. @param more - that are counted already, by their codes */
export const restOf = (
  faults: readonly Pick<Fault, "code">[],
  more: ReadonlyMap<string, number> = new Map(),
): RestOfFaults | undefined => {
  const codes = new Map(more);
  for (const { code } of faults) codes.set(code, (codes.get(code) ?? 0) + 1);
  const count = [...codes.values()].reduce((sum, one) => sum + one, 0);
  return count === 0 ? undefined : { count, codes: Object.fromEntries(codes) };
};

/** `299800 more are not shown here: 150000 number-bad, 149800 row-long; mend these first, then run it again`. */
export const restText = ({ count, codes }: RestOfFaults): string => {
  const each = Object.entries(codes)
    .sort(([, a], [, b]) => b - a)
    .map(([code, many]) => `${String(many)}\u00a0${code}`);
  const are = count === 1 ? "1 more is" : `${String(count)} more are`;
  return `${are} not shown here: ${each.join(", ")}; mend these first, then run it again`;
};
