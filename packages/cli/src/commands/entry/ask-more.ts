// What is good to know but may stay open: asked on a terminal after what could not be done without.

import type { Args } from "../../command.ts";
import type { Io } from "../../io.ts";
import { Stop } from "../../command.ts";
import { usageFault } from "../usage.ts";

export interface Question {
  readonly option: string;
  readonly question: string;
}

/** The command line with the answers added; Enter leaves one open. @throws Stop 2 when the person leaves */
export const askMore = async (args: Args, io: Io, questions: readonly Question[]): Promise<Args> => {
  const answers = new Map<string, string>();
  for (const { option, question } of questions) {
    if (args.text(option) !== undefined) continue;
    const answer = (await io.ask(`${question} (Enter = leave it open): `))?.trim();
    if (answer === undefined || answer === "q")
      throw new Stop(2, [
        usageFault(
          "left",
          "nothing was saved",
          "an answer, or Enter",
          "run the command again when you have it",
        ),
      ]);
    if (answer !== "") answers.set(option, answer);
  }
  return { ...args, text: (name) => args.text(name) ?? answers.get(name) };
};
