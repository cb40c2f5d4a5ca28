// Lines of a file or of standard input: each is echoed at once, and all faults are found before anything is written. Behind the
// first fault no line is echoed: a verdict of figures that are not kept would mislead.

import { type Engine, type Problem, type TypedMeasurement, type TypingContext } from "@sealtrend/core/parts";
import { Stop } from "../../command.ts";
import type { Echo } from "./echo-of.ts";
import { type Entry, takeLine } from "./typed-entry.ts";

export interface Source {
  readonly file: string;
  readonly lines: readonly string[];
}

/** Said behind the faults. */
export const nothingSaved = "nothing was saved\n";

/** @param echo - what a line that was taken comes to, with all that was before it
 *  @throws Stop 1 with every fault */
export const readLines = (
  { file, lines }: Source,
  {
    start,
    engine,
    note,
    echo,
    say,
  }: {
    readonly start: TypingContext;
    readonly engine: Engine;
    readonly note?: string;
    readonly echo: (measurements: readonly TypedMeasurement[], entry: Entry) => Echo;
    readonly say: (lines: readonly string[]) => void;
  },
): Entry => {
  const problems: Problem[] = [];
  const entry = lines.reduce<Entry>(
    (so, text, i) => {
      const took = takeLine(text, so, { line: i + 1, engine, ...(note === undefined ? {} : { note }) });
      if (took.kind === "fault")
        problems.push(...took.problems.map((one) => ({ ...one, file, line: i + 1 })));
      if (took.kind === "measured" && problems.length === 0) say(echo(took.measurements, took.entry).lines);
      return took.entry;
    },
    { context: start, taken: [] },
  );
  const errors = problems.filter(({ severity }) => severity === "error");
  if (errors.length > 0) throw new Stop(1, problems, nothingSaved);
  return entry;
};
