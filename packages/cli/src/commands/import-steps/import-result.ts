// What an import comes to, as the screen and the document tell it.

import type {
  GuessedMap,
  ImportMap,
  Imported,
  LeftCount,
  LeftOut,
  LostRemark,
  OpenQuestion,
  UnreadColumn,
} from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import type { EnginePlan } from "./engine-plans.ts";
import { readingsIn } from "./readings-in.ts";

export interface ImportResult {
  /** The sheet as messages name it. */
  readonly file: string;
  /** `open`: a question stands in the way; `would add`: the dry run; `added`: it is written; `nothing new`: all of it is
   *  recorded already, or nothing could be taken. */
  readonly state: "open" | "would add" | "added" | "nothing new";
  /** `write`: faults are told beside the answer. */
  readonly purpose: "look" | "write";
  readonly map: ImportMap;
  readonly mapFile?: { readonly file: string; readonly state: "used" | "laid down" };
  readonly why: GuessedMap["why"];
  readonly open: readonly OpenQuestion[];
  /** Reading cells that came in; absent while a question is open. */
  readonly counts?: Imported["counts"];
  readonly plans: readonly EnginePlan[];
  readonly left: readonly LeftOut[];
  /** How many more places there are of each kind in it. */
  readonly moreLeft: readonly LeftCount[];
  /** Faults in the shape of the file: their lines are not there. */
  readonly shape: readonly Fault[];
  /** Columns that hold something and are not read. */
  readonly unread: readonly UnreadColumn[];
  /** Remarks that come in with no reading. */
  readonly remarks: readonly LostRemark[];
  /** The command line that goes on from here. */
  readonly next: string;
  readonly undo?: "possible" | "not-possible";
}

/** What is a fault and keeps readings out: at its place in the sheet, with its mend; of very many of a kind the first. */
export const keptOutFaults = ({ left, shape, plans }: ImportResult): readonly Fault[] => [
  ...shape,
  ...left.flatMap(({ why, problem }) => (why === "fault" ? [problem] : [])),
  ...plans.flatMap(({ placed }) => placed.keptOut.map(({ fault }) => fault)),
];

/** What has to be mended before the engines can be judged, with all of it in. */
export const faultsToMend = ({ plans }: ImportResult): readonly Fault[] =>
  plans.flatMap(({ placed }) => placed.toMend);

/** Cautions: new readings that look mistyped, which go in as the sheet has them, and what the sheet says otherwise of recorded tests. */
export const slipsOf = ({ plans, state }: ImportResult): readonly Fault[] =>
  plans.flatMap(({ placed, fired = [] }) => [
    ...fired,
    ...placed.slips.map(({ said, amend, isOfUnit }) => {
      const inSheet = isOfUnit ? "say the right unit first" : "mend it in the sheet first";
      const lead = isOfUnit ? "if not" : "if so";
      return { ...said, mend: `${lead}: ${state === "added" ? amend : inSheet}` };
    }),
    // a test that came in beside the one that it is goes out again first
    ...placed.moved.map(({ said, amend }) => ({
      ...said,
      mend: `if only its day was corrected${state === "added" ? ", sealtrend undo takes it back; then" : ""}: ${amend}`,
    })),
    ...placed.told,
  ]);

/** Faults that keep readings out and are not among these, by their codes. */
export const keptOutRest = ({ moreLeft }: ImportResult): ReadonlyMap<string, number> =>
  new Map(moreLeft.flatMap(({ why, code, places }) => (why === "fault" ? [[code, places] as const] : [])));

/** How much does not come in: readings, and the places where the cause stands. */
export const keptOutCount = (
  result: ImportResult,
): { readonly readings: number; readonly places: number } => {
  const faults = [...result.left, ...result.moreLeft].filter(({ why }) => why === "fault");
  const more = [...keptOutRest(result).values()].reduce((sum, places) => sum + places, 0);
  return {
    readings:
      faults.reduce((sum, { readings }) => sum + readings, 0) +
      readingsIn(result.plans.flatMap(({ placed }) => placed.keptOut.map(({ test }) => test))),
    places: keptOutFaults(result).length + more,
  };
};

/** First and last day of some tests. */
export const daysOf = (
  tests: readonly { readonly date: string }[],
): { readonly from: string; readonly to: string } | undefined => {
  const [first, ...others] = tests.map(({ date }) => date);
  if (first === undefined) return undefined;
  return others.reduce(
    ({ from, to }, date) => ({ from: date < from ? date : from, to: date > to ? date : to }),
    { from: first, to: first },
  );
};
