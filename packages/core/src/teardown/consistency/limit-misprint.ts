// One limit printed in two units that does not agree with itself: a misprint, and which of the two is right has to be asked.

import { toSi } from "../../quantity/index.ts";
import type { ClearanceLimit, LengthUnit } from "../../record/index.ts";
import type { TeardownConflict } from "../teardown.ts";
import { lengthText } from "../length-text.ts";

export interface Printed {
  /** As printed, trailing zeros and all. */
  readonly text: string;
  readonly unit: LengthUnit;
}

export interface Misprint {
  /** How far the two are apart, and how far rounding can bring them. [m] */
  readonly apart: number;
  readonly allowed: number;
}

/** |a − b| > half a unit of the last digit of a + the same of b, all in one unit.
 *  @returns undefined where rounding explains the difference
 *  @source arithmetic of rounding; cases: handbook/teardown.md 4.4, makers' manuals named there */
export const misprintOf = (one: Printed, other: Printed): Misprint | undefined => {
  const [a, b] = [one, other].map(({ text, unit }) => toSi(Number(text), unit));
  if (a === undefined || b === undefined || !Number.isFinite(a) || !Number.isFinite(b)) return undefined;
  const apart = Math.abs(a - b);
  const allowed = halfDigit(one) + halfDigit(other);
  return apart > allowed * (1 + 1e-9) ? { apart, allowed } : undefined;
};

const halfDigit = ({ text, unit }: Printed): number =>
  toSi(0.5 * 10 ** -(text.split(/[.,]/)[1] ?? "").replace(/e.*$/i, "").length, unit);

const ends = [
  ["new", "low"],
  ["new", "high"],
  ["wear", "low"],
  ["wear", "high"],
] as const;

interface MisprintedEnd {
  readonly kind: "new" | "wear";
  readonly text: string;
  readonly second: string;
}

/** The ends of one limit that do not agree with their second printing. */
const misprintedEnds = ({ unit, also, written }: ClearanceLimit): readonly MisprintedEnd[] =>
  also === undefined
    ? []
    : ends.flatMap(([kind, end]): readonly MisprintedEnd[] => {
        const [text, second] = [written[`${kind}.${end}`], written[`also.${kind}.${end}`]];
        if (text === undefined || second === undefined) return [];
        return misprintOf({ text, unit }, { text: second, unit: also.unit }) === undefined
          ? []
          : [{ kind, text, second }];
      });

/** Whether one of its two kinds is misprinted: nothing is judged by that. */
export const isMisprinted = (limit: ClearanceLimit, kind: "new" | "wear"): boolean =>
  misprintedEnds(limit).some((end) => end.kind === kind);

/** Each end of each limit that is printed twice. */
export const misprintConflicts = (limits: readonly ClearanceLimit[]): readonly TeardownConflict[] =>
  limits.flatMap((limit) => {
    const { part, quantity, unit, also, source } = limit;
    return misprintedEnds(limit).map(({ kind, text, second }): TeardownConflict => {
      const from = source === undefined ? "" : ` (${source})`;
      const printed = also?.unit ?? unit;
      const other = lengthText(toSi(Number(second), printed), unit);
      return {
        code: "limit-misprint",
        part,
        quantity,
        text: `the limit of ${part} ${quantity} is printed as ${text} ${unit} and as ${second} ${printed}, which is ${other}${from}`,
        mend: "one of the two is a misprint: ask which, in another edition or of the maker",
        limit: kind,
        weight: "conflict",
      };
    });
  });
