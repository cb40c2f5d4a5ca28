// What comes back from a decision about one engine.

import type {
  Decision,
  DecisionInput,
  EvidenceId,
  EvidenceLine,
  Job,
  Turn,
  WornPlace,
} from "../../decision/index.ts";
import type { TestAssessment } from "../assessment.ts";
import type { HistoryAssessment } from "../years/assess-history.ts";
import type { Opening } from "./choices.ts";
import type { LowEverywhere } from "./low-everywhere.ts";
import type { MeasureNow } from "./measure-now.ts";
import type { NextAction } from "./own-step.ts";
import type { NextBy } from "./next-by.ts";
import type { NextTestDue } from "./next-test.ts";
import type { NotItself } from "./not-itself.ts";
import type { NotSeen } from "./not-seen.ts";
import type { OddTest } from "./odd-test.ts";
import type { Reach } from "./reach.ts";
import type { RingsDue } from "./rings-due.ts";
import type { UnplacedLeak } from "./rows-leak.ts";
import type { TestAgain } from "./test-again.ts";
import type { TopWork } from "./top-work.ts";
import type { WearChannel } from "./wear.ts";

/** A row of the ladder that was found to hold. */
export interface FoundRow {
  readonly row: EvidenceId;
  readonly line: EvidenceLine;
  /** Label; absent for the engine as a whole. */
  readonly cylinder?: string;
  /** What was found, in a mechanic's words. */
  readonly text: string;
  /** Where: `test 2026-05-03a`, `note 2026-04-20`, `history 2014 to 2026`. */
  readonly from: string;
  /** For wear there where above 0, against where below; all judgement. */
  readonly points: Readonly<Record<WornPlace, number>>;
  /** Of the condition, not of the points. */
  readonly status: "published" | "common practice" | "judgement";
  readonly source: string;
  /** `set-aside`: a guard keeps it out until it was run warm, or gauge, throttle and battery were proved. */
  readonly use: "counted" | "set-aside";
}

/** The years that a decision looks ahead, and who said so. */
export interface Horizon {
  /** The years that the chance and the money are for. */
  readonly years: number;
  readonly kind: "years" | "for-good";
  /** `usual`: nobody said; five years stand in and have to be said aloud. */
  readonly from: "typed" | "engine.json" | "usual";
}

/** Which prices were given, and which of them a comparison in money still needs. */
export interface PricesKnown {
  /** A word for printing; absent where nobody said. */
  readonly currency?: string;
  /** `some`: too few to compare in money. */
  readonly known: "all" | "some" | "none";
  /** Paths that a comparison in money needs and nobody gave, such as `work.reRing`. */
  readonly missing: readonly string[];
}

/** Two instruments that contradict each other; they are not averaged. */
export interface Conflict {
  readonly code: "leak-down-leaks" | "leak-down-healthy";
  readonly text: string;
  /** The cranking readings are level with each other and yet lower than in the year that they began. */
  readonly fall?: { readonly change: number; readonly since: string };
}

/** A fault that brought the engine apart, or that someone noted: no reading of sealing speaks of it. */
export interface OtherFault {
  readonly date: string;
  readonly text: string;
}

/** What no reading of this logbook can see. */
export type CannotSee =
  | "the other fault"
  | "ring tension"
  | "ring grooves"
  | "bearings"
  | "wear of all cylinders alike"
  | "sudden faults";

/** A decision with all it was made from: the word, why, what would turn it, and what to do next and by when. */
export interface DecisionAssessment {
  /** The test gone by, assessed; absent where no test counts. */
  readonly test?: TestAssessment;
  /** Id of the last test, where that does not count and the one above is the last that does. */
  readonly notCounted?: string;
  /** Whether it still speaks of the engine as it is: `too-old` = over a year, or all cylinders were renewed since. */
  readonly speaks: "today" | "too-old" | "none";
  readonly history: HistoryAssessment;
  readonly today: string;
  readonly decision: Decision;
  /** Where the word itself turns as one input moves, and to which: level or a test, long before the balance tips. */
  readonly turns: readonly Turn[];
  /** What the decision was made from. */
  readonly input: DecisionInput;
  /** Guard G3: the test to read again. */
  readonly oddTest?: OddTest;
  /** Cylinders that leak too much, and where is not known; none where the leak-down no longer speaks. */
  readonly unplacedLeaks: readonly UnplacedLeak[];
  /** Guard G4: why it was not itself. */
  readonly notItself?: NotItself;
  /** Guard G5: how low, and what was not proved. */
  readonly lowEverywhere?: LowEverywhere;
  /** Pistons or crank out: why new rings go in with closing it. */
  readonly ringsDue?: RingsDue;
  readonly opened?: Opening;
  /** Jobs done already; none = in place. */
  readonly done: readonly Job[];
  readonly horizon: Horizon;
  readonly prices: PricesKnown;
  /** In the order of the ladder. */
  readonly evidence: readonly FoundRow[];
  /** Every line of evidence that nobody looked at, or not within a year. */
  readonly notSeen: readonly NotSeen[];
  /** What to measure in the next twenty minutes; empty in place. */
  readonly measureNow: readonly MeasureNow[];
  /** The channels that the chance is reckoned from; empty where it is unknown. */
  readonly wear: readonly WearChannel[];
  /** Why the chance is unknown, as a sentence; absent where it is known. */
  readonly chanceUnknown?: string;
  /** The odd test that the chance leaves out, because no line can be drawn on with it. */
  readonly chanceWithout?: string;
  /** How far ahead the question asks beside how far back the record goes; absent where no line answers. */
  readonly reach?: Reach;
  /** Where the shares of top and rings come from. */
  readonly sharesFrom: "diagnosis" | "usual-one-low" | "usual-evenly-low" | "usual-healthy";
  readonly conflicts: readonly Conflict[];
  readonly otherFaults: readonly OtherFault[];
  /** Damage that no row weighs and that has to be settled first, with where it was found. */
  readonly damage: readonly string[];
  readonly cannotSee: readonly CannotSee[];
  /** ISO date of the next test, today where it is due or overdue, and the meter reading that bounds it as well where hours
   *  do. */
  readonly nextTest: NextTestDue;
  /** By when the next step is to be made. */
  readonly nextBy: NextBy;
  /** The one step to make next; absent where it is the work itself, or the usual test at its date. */
  readonly nextAction?: NextAction;
  /** Price, chance of a change and what holds without it, where a test comes first. */
  readonly testAgain?: TestAgain;
  /** Which work, where the top end is opened. */
  readonly topWork?: TopWork;
}
