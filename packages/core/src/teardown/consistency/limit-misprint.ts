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

const ends = ["new.low", "new.high", "wear.low", "wear.high"] as const;

/** Each end of each limit that is printed twice. */
export const misprintConflicts = (limits: readonly ClearanceLimit[]): readonly TeardownConflict[] =>
  limits.flatMap(({ part, quantity, unit, also, written, source }) =>
    also === undefined
      ? []
      : ends.flatMap((end): readonly TeardownConflict[] => {
          const [text, second] = [written[end], written[`also.${end}`]];
          if (text === undefined || second === undefined) return [];
          const misprint = misprintOf({ text, unit }, { text: second, unit: also.unit });
          if (misprint === undefined) return [];
          const from = source === undefined ? "" : ` (${source})`;
          const other = lengthText(toSi(Number(second), also.unit), unit);
          return [
            {
              code: "limit-misprint",
              part,
              quantity,
              text: `the limit of ${part} ${quantity} is printed as ${text} ${unit} and as ${second} ${also.unit}, which is ${other}${from}`,
              mend: "one of the two is a misprint: ask which, in another edition or of the maker",
              weight: "conflict",
            },
          ];
        }),
  );
