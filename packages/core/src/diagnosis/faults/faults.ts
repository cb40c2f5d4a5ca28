// The tables of the diagnosis as plain values: what is known of faults, in numbers that a mechanic may change. Nothing
// else in the diagnosis knows a cause, a probability or a minute.

/** Of the statement that a cause and a finding belong together. The numbers themselves are all judgement. */
export const faultStatuses = ["published", "common practice", "judgement"] as const;
/** How well a row of the fault tables is founded. */
export type FaultStatus = (typeof faultStatuses)[number];

/** What a cause asks for: top = to be mended with the head off or on, bottom = rings, piston, bore or rod, test = of the
 *  test or cured without opening, nothing = no fault, unlisted = none of these. */
export const causeGroups = ["top", "bottom", "test", "nothing", "unlisted"] as const;
/** Groups of causes, for where no single one stands out. */
export type CauseGroup = (typeof causeGroups)[number];

export interface Cause {
  readonly code: string;
  readonly name: string;
  readonly group: CauseGroup;
  /** Chance of it in one cylinder before anything was measured. Absent for one that is never a fault of a single cylinder
   *  by itself (it comes with the engine, a bank or a pair), and for no fault, which has what the others leave. */
  readonly prior?: number;
  /** Of the number. */
  readonly status: FaultStatus;
  readonly source: string;
}

/** What can be wrong with the engine as a whole. */
export type EngineState =
  /** Meets all cylinders alike, but for a scatter of their levels (a standard deviation). */
  | {
      readonly reach: "all";
      readonly cause: string;
      readonly prior: number;
      readonly scatter: number;
      readonly status: FaultStatus;
      readonly source: string;
    }
  /** Meets each cylinder with this chance. */
  | {
      readonly reach: "some";
      readonly cause: string;
      readonly prior: number;
      readonly share: number;
      readonly status: FaultStatus;
      readonly source: string;
    };

export const findingNames = [
  "level",
  "wet",
  "first-stroke",
  "repeats",
  "leak",
  "path",
  "oiled",
  "lower",
  "onset",
  "running",
  "lash",
  "borescope",
  "gas",
  "second-gauge",
  "warm",
  "conditions",
  "reseat",
  "reindex",
  "release",
] as const;
/** Findings that a table of chances exists for, by name. */
export type FindingName = (typeof findingNames)[number];

/** One class of a graded finding: true values lie evenly between two bounds, or round a middle. */
export type ClassShape =
  | { readonly kind: "between"; readonly low: number; readonly high: number }
  | { readonly kind: "around"; readonly middle: number; readonly deviation: number };

/** P(class | cause), and how the link between the two is known. */
export interface Column {
  /** Aligned with the classes; adds up to 1. */
  readonly chances: readonly number[];
  readonly link: FaultStatus;
  /** Where it comes from, in words; of a published link the titles, which the sheets name by their keys. */
  readonly source: string;
}

export interface Finding {
  readonly name: FindingName;
  readonly classes: readonly string[];
  /** Of a graded finding, aligned with the classes; of one that is a word, empty. Leak: bounds of alpha, densities in ln. */
  readonly shapes: readonly ClassShape[];
  /** Findings of one kind lean on one another and are weighed down together. */
  readonly dependence?: "size" | "oil";
  /** Aligned with the causes. */
  readonly columns: readonly Column[];
}

export const signNames = ["oil use", "coolant loss", "miss", "blow-by"] as const;
/** Signs noted without a number, by name. */
export type SignName = (typeof signNames)[number];

/** A sign of the whole engine. */
export interface Sign {
  readonly name: SignName;
  /** Chance that it shows though no cylinder has a fault. */
  readonly background: number;
  /** Chance that a cause in one cylinder brings it, aligned with the causes. */
  readonly brings: readonly number[];
  readonly status: FaultStatus;
  readonly source: string;
}

/** What changes the chances before the readings are looked at. */
export interface Shift {
  /** One of the circumstances the tool can know of. */
  readonly when: Circumstance;
  /** The code of a cause (of one cylinder), or `all CODE` or `some CODE` for a state of the engine. */
  readonly entry: string;
  readonly by:
    { readonly kind: "factor"; readonly value: number } | { readonly kind: "odds"; readonly value: number };
  readonly status: FaultStatus;
  readonly source: string;
}

export const circumstances = [
  "two-stroke, ports only",
  "two-stroke, exhaust valves",
  "diesel",
  "individual barrels",
  "air-cooled",
  "release possible",
  "release active",
  "one cylinder",
  "stood 6 months or more",
  "service: lash",
  "service: head off",
  "service: timing drive",
  "service: rings or bores",
  "service: plugs or injectors",
  "event: overheated",
  "event: timing drive or over-rev",
  "event: water drawn in",
  "event: knock or lean running",
  "event: flooded",
  "cold",
  "throttle open",
  "throttle closed",
  "speed recorded and enough",
  "speed low",
  "gauge changed since the last test",
  "gauge proved",
] as const;
export type Circumstance = (typeof circumstances)[number];

/** What keeps a test from being proposed. */
export const obstacles = [
  "diesel",
  "oil above half the chamber",
  "no valves",
  "no release",
  "air-cooled",
  "one cylinder",
  "does not run",
  "propeller turns",
  "no leak-down yet",
  "no air at a neighbour",
  "crank cannot be held",
  "oil not allowed",
] as const;
/** What can stand in the way of a test. */
export type Obstacle = (typeof obstacles)[number];

/** A test that can be proposed: what it finds out, what it takes, and where it is never proposed. */
export interface FurtherTest {
  readonly code: string;
  /** What it finds out. */
  readonly findings: readonly FindingName[];
  readonly minutes: number;
  /** 0 none, 1 some, 2 pressurised air or a running engine. */
  readonly risk: 0 | 1 | 2;
  /** Needed for it; empty for none. */
  readonly tool: string;
  readonly action: string;
  /** Never proposed where one of these holds. */
  readonly blocked: readonly Obstacle[];
  readonly status: FaultStatus;
  readonly source: string;
}

export interface FaultSettings {
  /** Of readings of one gauge, one cylinder: relative standard deviation. */
  readonly repeatability: number;
  /** How far findings of one kind say the same (0 nothing, 1 all). */
  readonly sharedWeight: number;
  readonly pairPrior: number;
  readonly bankRetardedPrior: number;
  readonly bankBentPrior: number;
  /** Chance that a cylinder of such a bank is met. */
  readonly bankRetardedShare: number;
  readonly bankBentShare: number;
  /** Relative standard uncertainty of an expected level, by where it comes from. */
  readonly baselineDoubt: number;
  readonly makerDoubt: number;
  readonly estimateDoubt: number;
  /** The most that oil is taken to raise a sound reading where nobody knows how much went in. */
  readonly oilMost: number;
  /** Of ln alpha where it is given without doubt. */
  readonly leakDoubt: number;
  /** Of ln alpha for a tester whose bore is unknown: one step of five. */
  readonly testerDoubt: number;
  readonly pathWeightLeast: number;
  /** How far the odds that are shown may be out, up or down. */
  readonly oddsBand: number;
  /** The most that cranking readings alone can make likely. */
  readonly crankingCap: number;
  readonly twoFaultFactor: number;
  /** Standard deviation of ln repeats, unstable and stable. */
  readonly unstableSpread: number;
  readonly stableSpread: number;
  /** Below this share of what it was a leak has fallen (with oil, or lower in the bore). */
  readonly fallEdge: number;
}

/** P(what the history reports | what truly happened), each row adding up to 1. */
export interface OnsetReports {
  readonly reports: readonly OnsetReport[];
  /** Aligned with the classes of the finding `onset`: sudden, gradual, steady. */
  readonly rows: readonly (readonly number[])[];
}
export const onsetReports = ["sudden", "gradual", "cannot tell", "steady"] as const;
export type OnsetReport = (typeof onsetReports)[number];

/** The tables of the diagnosis: causes, how often, what each shows, and the tests that tell them apart. */
export interface Faults {
  readonly settings: FaultSettings;
  readonly onset: OnsetReports;
  /** Words for a chance, the highest first; the last holds from 0. */
  readonly words: readonly { readonly least: number; readonly word: string }[];
  /** `no-fault` first. */
  readonly causes: readonly Cause[];
  readonly states: readonly EngineState[];
  readonly findings: Readonly<Record<FindingName, Finding>>;
  readonly signs: Readonly<Record<SignName, Sign>>;
  readonly shifts: readonly Shift[];
  readonly tests: readonly FurtherTest[];
}
