// What a next step is made from, and one that the decision asks for by itself.

import type { Decision } from "../../decision/index.ts";
import type { HowPage } from "../shown-tests.ts";
import type { Damage } from "./damage.ts";
import type { Deciding } from "./deciding.ts";
import type { DoubtsFound } from "./doubts.ts";
import type { MeasureNow } from "./measure-now.ts";
import type { MeasuredNow } from "./measured-now.ts";
import type { Row } from "./row.ts";

/** One thing to do next, as told to a mechanic. */
export interface NextAction {
  /** Of the tables of the diagnosis, or of the decision. */
  readonly code: string;
  /** As told to a mechanic. */
  readonly text: string;
  /** Absent where it hangs on what is found. */
  readonly minutes?: number;
  /** The page of the procedures that tells how. */
  readonly how?: HowPage;
  /** Whether the test gone by asks for it, as its own screen says, or the decision. */
  readonly by: "test" | "decision";
}

export interface NextActionFacts {
  readonly deciding: Deciding;
  readonly decision: Decision;
  readonly found: DoubtsFound;
  readonly rows: readonly Row[];
  readonly damage: readonly Damage[];
  readonly speaks: "today" | "too-old" | "none";
  /** The usual test. */
  readonly due: "due" | "to-come";
  readonly measureNow: readonly MeasureNow[];
  /** The engine as it was measured so far. */
  readonly measured: MeasuredNow | undefined;
}

export type Step = (facts: NextActionFacts) => NextAction | undefined;

export const own = (
  code: string,
  text: string,
  more: Pick<NextAction, "minutes" | "how"> = {},
): NextAction => ({
  code,
  text,
  ...more,
  by: "decision",
});

/** Minutes are common practice, no source. */
export const minutes = { cranking: 12, leakDown: 25, look: 15, warm: 45, day: 20 } as const;
