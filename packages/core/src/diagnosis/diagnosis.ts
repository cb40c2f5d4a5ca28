// What a diagnosis says.

import type { CauseGroup, FindingName, FurtherTest, SignName } from "./faults/faults.ts";

/** One likely cause with its chance, 0 to 1, and what speaks for and against it. */
export interface RankedCause {
  readonly code: string;
  /** Places of the cylinders it is about. */
  readonly cylinders: readonly number[];
  readonly group: CauseGroup;
  readonly probability: number;
  /** As shown: capped where only cranking readings speak. */
  readonly shown: number;
  /** Of what is shown, with odds a third and three times as high. */
  readonly low: number;
  readonly high: number;
  readonly word: string;
  readonly for: readonly Reason[];
  readonly against: readonly Reason[];
}

/** A finding that speaks for a cause or against it: how much likelier it is with the cause than without. */
export interface Reason {
  readonly finding: FindingName | SignName;
  /** Place of the cylinder it was found on; absent for a sign of the engine. */
  readonly cylinder?: number;
  /** The class or report it came to, the likeliest. */
  readonly word: string;
  readonly ratio: number;
  readonly link: string;
  readonly source: string;
}

export interface ProposedTest {
  readonly test: FurtherTest;
  /** Expected information about which group of causes it is. */
  readonly bits: number;
  readonly bitsPerHour: number;
  /** Minutes, with 10 for each step of risk and 20 for a tool not owned. */
  readonly effort: number;
}

/** The likely causes of what was found on the cylinder that most needs an explanation, and the tests that would part
 *  them. */
export interface Diagnosis {
  /** Place of the cylinder that most needs an explanation. */
  readonly target: number;
  /** Of the target, the likeliest first, `no-fault` and `none-of-these` among them. */
  readonly causes: readonly RankedCause[];
  /** Of the target, adding up to 1. */
  readonly groups: Readonly<Record<CauseGroup, number>>;
  /** No single cause stands out: speak of groups. */
  readonly leads: "cause" | "group";
  /** Only cranking readings speak: no cause is shown above the cap. */
  readonly capped: boolean;
  /** States of the engine, the likeliest first; `none` is what they leave. */
  readonly states: readonly { readonly id: string; readonly cause: string; readonly probability: number }[];
  readonly pairs: readonly { readonly cylinders: readonly [number, number]; readonly probability: number }[];
  /** P(cause | everything) of every cylinder, aligned with the causes of the tables. */
  readonly cylinders: readonly (readonly number[])[];
  /** The level that a sound cylinder reads that day [Pa gauge]; absent without dry readings. */
  readonly level?: number;
  /** What oil multiplies a sound reading by; absent without readings with oil. */
  readonly oilFactor?: number;
  /** Nothing tells what a sound engine would read: an even loss cannot be seen. */
  readonly evenLoss: "can be seen" | "cannot be seen";
  /** Findings that the leading cause does not fit; their ratio is to the cause that fits best. */
  readonly misfits: readonly Reason[];
  /** Two faults in the target explain it nearly as well as the best single one. */
  readonly twoFaults?: { readonly causes: readonly [string, string]; readonly odds: number };
  /** The quickest first; ties by risk, minutes, order of the table. */
  readonly tests: readonly ProposedTest[];
  /** Reading the target again, though it was repeated or only its leak-down was read; absent where `tests` holds it. */
  readonly again?: ProposedTest;
  /** Nothing left to test would change what to do. */
  readonly enough: boolean;
}
