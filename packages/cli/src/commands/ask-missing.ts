// Options that a command cannot do without: asked on a terminal, named as missing elsewhere.

import { type Args, Stop } from "../command.ts";
import type { Io } from "../io.ts";
import { usageFault } from "./usage.ts";

export interface Needed {
  readonly option: "cylinders" | "ignition" | "kind" | "meter" | "note" | "value" | "what";
  readonly question: string;
  /** What is missing, as a fault says it, and the line to type. */
  readonly found: string;
  readonly mend: string;
}

/** The command line with the answers added. @throws Stop 2 for what is missing where nobody can be asked */
export const askMissing = async (args: Args, io: Io, needed: readonly Needed[]): Promise<Args> => {
  const open = needed.filter(({ option }) => args.text(option) === undefined);
  if (open.length > 0 && !io.interactive)
    throw new Stop(
      2,
      open.map(({ option, found, mend }) =>
        usageFault(`${option}-missing` as const, found, `--${option}`, mend),
      ),
    );
  const answers = new Map<string, string>();
  for (const { option, question } of open) answers.set(option, await askLine(io, question));
  return { ...args, text: (name) => args.text(name) ?? answers.get(name) };
};

/** One line of a person, asked again while it is empty. @throws Stop 2 when the person leaves */
export const askLine = async (io: Io, question: string): Promise<string> => {
  for (;;) {
    const answer = (await io.ask(question))?.trim();
    if (answer === undefined || answer === "q")
      throw new Stop(2, [
        usageFault("left", "nothing was saved", "an answer", "run the command again when you have it"),
      ]);
    if (answer !== "") return answer;
  }
};
