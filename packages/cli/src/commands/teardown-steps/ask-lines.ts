// `teardown` on a terminal: a line is asked after the other, each answered at once with what it comes to. `back` takes the
// last one back, `?` shows the shapes, `done` or an empty line ends and saves.

import type { Engine, TypedMeasurement, TypingContext } from "@sealtrend/core";
import { Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import { faultText } from "../../render/faults.ts";
import { orderLines } from "../../render/teardown/teardown-shapes.ts";
import { prose } from "../../render/prose.ts";
import { usageFault } from "../usage.ts";
import { askedShapes } from "./asked-shapes.ts";
import { type Entry, takeBack, takeLine, typedBack } from "./typed-entry.ts";

interface Asked {
  readonly engine: Engine;
  readonly note?: string;
  readonly start: TypingContext;
  readonly say: (lines: readonly string[]) => void;
  readonly echo: (measurements: readonly TypedMeasurement[], entry: Entry) => void;
}

/** @throws Stop 2 where the input ends: what was typed is given back */
export const askLines = async (io: Io, { engine, start, note, say, echo }: Asked): Promise<Entry> => {
  const { width } = io;
  say([
    ...prose(
      `${engine.id}, teardown ${String(start.teardown)}: one line a part; ? shows the shapes, back takes the last line back; done, or an empty line, ends and saves.`,
      width,
    ),
    ...orderLines(width),
  ]);
  let entry: Entry = { context: start, taken: [] };
  for (;;) {
    const answer = await io.ask("> ", `nothing was saved\n${givenBack(entry)}`);
    if (answer === undefined) throw left(entry);
    const typed = answer.trim();
    if (/^(?:|done|end|quit|exit)$/i.test(typed)) return entry;
    const shapes = askedShapes(typed, width);
    if (shapes !== undefined) say(shapes);
    else if (typed === "back") {
      const taken = takeBack(entry);
      say(taken === undefined ? ["nothing to take back"] : prose(`taken back: ${taken.text}`, width));
      entry = taken?.entry ?? entry;
    } else {
      const at = { line: entry.taken.length + 1, engine, ...(note === undefined ? {} : { note }) };
      const took = takeLine(answer, entry, at);
      if (took.kind === "fault") say(faultText(took.problems, width).trimEnd().split("\n"));
      if (took.kind === "context") say(prose(took.text, width));
      if (took.kind === "measured") echo(took.measurements, took.entry);
      entry = took.entry;
    }
  }
};

const left = (entry: Entry): Stop => {
  const fault = usageFault(
    "left",
    "nothing was saved",
    "done, or an empty line, after the last part",
    "run the command again; the lines below can be put in a file and read with --from FILE",
  );
  return new Stop(2, [fault], givenBack(entry));
};

/** What was typed, so that it is not lost. */
const givenBack = (entry: Entry): string =>
  entry.taken.length === 0 ? "" : `typed so far:\n${typedBack(entry)}`;
