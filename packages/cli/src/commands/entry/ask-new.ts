// An engine that is new: on a terminal what makes it is asked where it was not typed, or taken from an entry of it that was left.

import { type Args, Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import type { Logbook } from "../../logbook/open-logbook.ts";
import { newEngineFault } from "../../logbook/engine-id.ts";
import { type KeptEntry, keptEntries } from "../../logbook/unfinished.ts";
import { clean } from "../../render/clean.ts";
import { askPerson } from "../kept/ask-person.ts";
import { sayTo } from "../kept/say-to.ts";
import { cylinderLabels } from "../new-engine.ts";
import { usageFault } from "../usage.ts";
import { placeOptions } from "./entry-options.ts";

/** The command line with the cylinders and the ignition of a new engine. @throws Stop 2 where the person leaves */
export const askNew = async (args: Args, io: Io, { world, root, ids }: Logbook): Promise<Args> => {
  const [name] = args.positionals;
  if (name === undefined || ids.includes(name) || !io.interactive) return args;
  // what is added to a test is of an engine that is there
  if (args.text("test") !== undefined || args.flag("same-test")) return args;
  const place = { root, command: "enter", engine: name } as const;
  const kept = keptEntries(world, place).entries[0];
  const isNew = args.flag("new");
  if (!isNew && kept === undefined) return args;
  if (args.text("cylinders") !== undefined) return args;
  const fault = isNew ? newEngineFault(world, root, name) : undefined;
  if (fault !== undefined) throw new Stop(2, [fault]);
  const made = kept === undefined ? await asked(args, io, name) : new Map([["cylinders", labelsOf(kept)]]);
  return {
    ...args,
    flag: (option) => option === "new" || args.flag(option),
    text: (option) => args.text(option) ?? made.get(option),
  };
};

const labelsOf = ({ entry: { cylinders } }: KeptEntry): string =>
  cylinders.every((label, i) => label === String(i + 1)) ? String(cylinders.length) : cylinders.join(" ");

const asked = async (args: Args, io: Io, name: string): Promise<ReadonlyMap<string, string>> => {
  const say = sayTo(args, io, "asked");
  const cylinders = await answerTo(io, {
    question: `how many cylinders has ${clean(name)} (such as 4, or their labels: L R): `,
    fault: cylindersFault,
    say,
  });
  const words = (ignition.choices ?? []).filter((word) => word !== "unknown");
  const isTaken = (answer: string): boolean =>
    answer === "" || words.includes(answer) || Object.hasOwn(ignition.also ?? {}, answer);
  const fires =
    args.text("ignition") ??
    (await answerTo(io, {
      question: `how does it fire (${words.join(", ")}; Enter\u00a0=\u00a0not\u00a0recorded): `,
      fault: (answer) => (isTaken(answer) ? [] : [`  one of ${words.join(", ")}`]),
      say,
    }));
  const word = ignition.also?.[fires] ?? fires;
  return new Map([["cylinders", cylinders], ...(word === "" ? [] : [["ignition", word] as const])]);
};

const ignition = placeOptions.find(({ name }) => name === "ignition") ?? { name: "ignition", help: "" };

const cylindersFault = (answer: string): readonly string[] => {
  if (answer === "" || answer === "?") return ["  a number such as 4, or the name of each, such as L R"];
  try {
    cylinderLabels(answer);
    return [];
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    return ["  a number such as 4, or the name of each, each once, such as L R"];
  }
};

interface Asking {
  readonly question: string;
  /** Lines; none where the answer is taken. */
  readonly fault: (answer: string) => readonly string[];
  readonly say: (lines: readonly string[]) => void;
}

const answerTo = async (io: Io, { question, fault, say }: Asking): Promise<string> => {
  for (;;) {
    const answer = await askPerson(io, question);
    if (answer === undefined || answer === "q")
      throw new Stop(2, [
        usageFault("left", "nothing was saved", "an answer", "run the command again when you have it"),
      ]);
    const lines = fault(answer);
    if (lines.length === 0) return answer;
    say(lines);
  }
};
