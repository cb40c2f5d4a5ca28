// What an import comes to, as the screen and the document tell it.

import type {
  GuessedMap,
  ImportMap,
  Imported,
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

/** Everything that is a fault and keeps readings out: at its place in the sheet, with its mend. */
export const keptOutFaults = ({ left, shape, plans }: ImportResult): readonly Fault[] => [
  ...shape,
  ...left.flatMap(({ why, problem }) => (why === "fault" ? [problem] : [])),
  ...plans.flatMap(({ placed }) => placed.keptOut.map(({ fault }) => fault)),
];

/** What has to be mended before the engines can be judged, with all of it in. */
export const faultsToMend = ({ plans }: ImportResult): readonly Fault[] =>
  plans.flatMap(({ placed }) => placed.toMend);

/** New readings that look mistyped, as cautions: they go in as the sheet has them. */
export const slipsOf = ({ plans, state }: ImportResult): readonly Fault[] =>
  plans.flatMap(({ placed }) =>
    placed.slips.map(({ said, amend, isOfUnit }) => {
      const inSheet = isOfUnit ? "say the right unit first" : "mend it in the sheet first";
      const lead = isOfUnit ? "if not" : "if so";
      return { ...said, mend: `${lead}: ${state === "added" ? amend : inSheet}` };
    }),
  );

/** How much does not come in: readings, and the places where the cause stands. */
export const keptOutCount = (
  result: ImportResult,
): { readonly readings: number; readonly places: number } => ({
  readings:
    result.left.reduce((sum, { why, readings }) => sum + (why === "fault" ? readings : 0), 0) +
    readingsIn(result.plans.flatMap(({ placed }) => placed.keptOut.map(({ test }) => test))),
  places: keptOutFaults(result).length,
});

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
