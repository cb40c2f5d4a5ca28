// What trust in a test is made of.

import type { TrustReasonCode } from "./trust-words.ts";

/** How far a test can be trusted: as it stands, with doubt, or not at all. */
export type TrustCode = "trusted" | "doubtful" | "void";

/** One reason why a test is doubtful or void, with what to do about it. */
export interface TrustReason {
  readonly code: TrustReasonCode;
  readonly weight: "void" | "doubtful";
  readonly text: string;
  /** What to do about it. */
  readonly mend: string;
}

/** How far one test can be trusted, why not further, and what was not recorded. */
export interface Trust {
  readonly code: TrustCode;
  /** What a void test tells nothing of: `leak-down` where the wrong stroke spoilt that and the cranking readings stand.
   *  Absent where the test is not void. */
  readonly voids?: "all" | "leak-down";
  readonly reasons: readonly TrustReason[];
  /** What was not recorded, each with what it would settle. */
  readonly missing: readonly string[];
}

/** A piston that stood wrong in the leak-down says nothing against readings that were cranked. */
export const spoilsCranking = ({ weight, code }: TrustReason): boolean =>
  weight === "void" && code !== "wrong-stroke";

/** A reason with its words (trust-words.ts). */
export const trustReason = (
  weight: TrustReason["weight"],
  code: TrustReasonCode,
  words: Pick<TrustReason, "text" | "mend">,
): TrustReason => ({ code, weight, ...words });
