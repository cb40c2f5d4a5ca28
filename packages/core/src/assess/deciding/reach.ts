// How far the question goes beyond the record that answers it.

import type { Decision } from "../../decision/index.ts";
import { yearsBetween } from "../../quantity/index.ts";
import type { WearChannel } from "./wear.ts";

/** How far a question looks ahead beside how far the record goes back, in years. */
export interface Reach {
  /** First and last test of the line that the chance is reckoned from. ISO. */
  readonly from: string;
  readonly to: string;
  readonly recordYears: number;
  /** Years ahead that are asked for: of ownership, or left to the rings of an engine that is kept for good. */
  readonly questionYears: number;
  /** More than twice as far ahead as the record goes back: a straight line drawn on trust. */
  readonly far: "yes" | "no";
  /** As told to a mechanic. */
  readonly text: string;
}

/** Judgement: no published bound was found for a straight line of wear. */
const farBeyond = 2;

/** Undefined where no line answers. */
export const reachOf = (
  wear: readonly WearChannel[],
  { kind, years }: { readonly kind: "years" | "for-good"; readonly years: number },
  { keep }: Pick<Decision, "keep">,
): Reach | undefined => {
  const [first, ...rest] = wear;
  if (first === undefined || (kind === "for-good" && keep === undefined)) return undefined;
  const { from, to } = rest.reduce((a, b) => (b.probability > a.probability ? b : a), first);
  const recordYears = yearsBetween(from, to);
  const questionYears = kind === "for-good" ? (keep?.yearsLeft ?? years) : years;
  return {
    from,
    to,
    recordYears,
    questionYears,
    far: questionYears > farBeyond * recordYears ? "yes" : "no",
    text: `the record spans ${plain(recordYears)} years, the question ${plain(questionYears)}`,
  };
};

const plain = (years: number): string => String(Number(years.toFixed(years < 10 ? 1 : 0)));
