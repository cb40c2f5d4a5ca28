// Cases that another program computed, typed at the command: columns that begin with -- are its options.

import { run } from "sealtrend";
import { fakeIo } from "../cli/fake-io.ts";
import { type ReferenceRow, referenceRows } from "../published/reference-rows.ts";

export interface OutsideCase {
  /** The whole command line, for the message of a failure. */
  readonly line: string;
  /** What the other program found, by column. */
  readonly expected: ReferenceRow;
  /** The exit code and the document of the command. */
  readonly exit: number;
  readonly document: Record<string, unknown>;
}

const optionsOf = (row: ReferenceRow): readonly string[] =>
  Object.entries(row).flatMap(([name, text]) => (name.startsWith("--") && text !== "" ? [name, text] : []));

/** Runs `command` on every row of data/reference/NAME.csv. */
export const outsideCases = (name: string, command: string): Promise<readonly OutsideCase[]> =>
  Promise.all(
    referenceRows(name).map(async (expected) => {
      const words = [command, ...optionsOf(expected)];
      const io = fakeIo();
      const exit = await run([...words, "--json"], io);
      const document = JSON.parse(io.stdout()) as Record<string, unknown>;
      return { line: words.join(" "), expected, exit, document };
    }),
  );

/** The cases in which a number is further from the other program's than `relative` of it; empty: all agree. */
export const disagreements = (
  cases: readonly OutsideCase[],
  column: string,
  relative: number,
  found: (document: Record<string, unknown>) => unknown = (document) => document[column],
): readonly string[] =>
  cases.flatMap(({ line, expected, document }) => {
    const ours = Number(found(document));
    const theirs = Number(expected[column]);
    return Math.abs(ours - theirs) <= relative * Math.abs(theirs)
      ? []
      : [`${line}: ${column} ${String(ours)}, ${String(theirs)} outside`];
  });
