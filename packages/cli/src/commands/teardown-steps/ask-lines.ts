// `teardown` on a terminal: a line is asked after the other, each answered at once with what it comes to, and kept from the first on.
// `b` takes the last one back, `?` shows the shapes, `q` leaves, `done` or an empty line ends and saves; an empty line in the
// middle of a paste ends nothing. A line that looks like a slip is asked for once more, and taken when it is typed again; lines of
// other places may come before that, but nothing is saved until it is answered.

import type { Engine, Problem, TypedMeasurement, TypingContext } from "@sealtrend/core/parts";
import type { Io } from "../../io.ts";
import type { Unfinished } from "../../logbook/unfinished-text.ts";
import { clean } from "../../render/clean.ts";
import { faultText } from "../../render/faults.ts";
import { orderLines } from "../../render/teardown/teardown-shapes.ts";
import { prose } from "../../render/prose.ts";
import { counted } from "../../render/words.ts";
import { askPerson } from "../kept/ask-person.ts";
import type { Session } from "../kept/entry-session.ts";
import { leftEarly, leftText } from "../kept/left-early.ts";
import { askedShapes } from "./asked-shapes.ts";
import type { Echo } from "./echo-of.ts";
import { type Entry, takeBack, takeLine, typedBack } from "./typed-entry.ts";

interface Asked {
  readonly engine: Engine;
  readonly note?: string;
  readonly start: TypingContext;
  readonly session: Session;
  readonly say: (lines: readonly string[]) => void;
  /** What a line comes to. */
  readonly echo: (measurements: readonly TypedMeasurement[], entry: Entry) => Echo;
}

/** A line that was taken and looks like a slip. */
interface Doubtful {
  readonly text: string;
  readonly place: string;
  /** Its index among the lines taken. */
  readonly at: number;
}

interface Standing {
  readonly entry: Entry;
  /** The newest last: that is the one asked for. */
  readonly doubts: readonly Doubtful[];
}

/** @throws Stop 2 where the person leaves or the input ends: what was typed is given back, and kept */
export const askLines = async (io: Io, asked: Asked): Promise<Entry> => {
  const { engine, start, session, say } = asked;
  const { width } = io;
  const place = { command: "teardown", engine: engine.id } as const;
  say([
    ...prose(
      `${engine.id}, teardown ${String(start.teardown)}: one line a part; ? shows the shapes, b takes the last line back, q leaves, what you typed is kept; done, or an empty line, ends and saves.`,
      width,
    ),
    ...orderLines(width, start.length === undefined ? "unit first" : "unit known"),
  ]);
  let { entry, doubts } = resumed(asked, width);
  const confirmed = new Set<string>();
  for (;;) {
    const doubtful = doubts.at(-1);
    const isOpen = doubtful !== undefined;
    if (doubtful !== undefined && doubtful.at < entry.taken.length - 1)
      say(prose(`still open: ${clean(doubtful.text)}`, width, "  "));
    const gone = { typed: givenBack(entry), isKept: session.isKept() };
    const answer = await askPerson(io, isOpen ? "that line again, right or as it was: " : "> ", {
      ifLeft: leftText(place, gone, width),
      takes: isOpen ? "typed now" : "typed ahead",
    });
    if (answer === undefined || /^(?:q|quit|exit)$/i.test(answer))
      throw leftEarly(place, {
        ...gone,
        expected: "done, or an empty line, after the last part",
        ...(gone.typed === "" ? {} : { mend: again }),
      });
    const isEnd = /^(?:done|end)$/i.test(answer);
    if (isEnd && !isOpen) return entry;
    if ((isEnd || answer === "") && isOpen) {
      say(prose("type it again, or b to take it back", width, "  "));
      continue;
    }
    if (answer === "") {
      if (await io.waits()) continue;
      return entry;
    }
    const shapes = askedShapes(answer, width);
    if (shapes !== undefined) {
      say(shapes);
      continue;
    }
    if (/^b(?:ack)?$/i.test(answer)) {
      const taken = takeBack(entry);
      say(taken === undefined ? ["nothing to take back"] : prose(`taken back: ${taken.text}`, width));
      entry = taken?.entry ?? entry;
      doubts = doubts.filter(({ at }) => at < entry.taken.length);
    } else if (doubts.some(({ text }) => isSame(answer, text))) {
      say(prose("taken as it is", width, "  "));
      confirmed.add(plain(answer));
      doubts = doubts.filter(({ text }) => !isSame(answer, text));
    } else {
      const took = take(answer, entry, asked);
      if (took.kind === "fault") say(faultLines(took.problems, width));
      if (took.kind === "context") say(prose(took.text, width));
      entry = took.entry;
      if (took.kind === "measured") {
        const place = placeOf(took.measurements);
        const instead = doubts.findLast((one) => one.place === place);
        if (instead !== undefined) ({ entry, doubts } = without({ entry, doubts }, instead));
        const { lines, isSlip } = asked.echo(took.measurements, entry);
        say(lines);
        if (isSlip && !confirmed.has(plain(answer)))
          doubts = [...doubts, { text: answer, place, at: entry.taken.length - 1 }];
      }
    }
    session.keep(keptLines(entry));
  }
};

const again = "run the command again; the lines below can be put in a file and read with --from FILE";

/** A line of the same place stands in for the doubtful one. */
const without = ({ entry, doubts }: Standing, { at: gone }: Doubtful): Standing => ({
  entry: { ...entry, taken: entry.taken.filter((_, i) => i !== gone) },
  doubts: doubts.flatMap((one) =>
    one.at === gone ? [] : [one.at > gone ? { ...one, at: one.at - 1 } : one],
  ),
});

const take = (text: string, entry: Entry, { engine, note }: Asked): ReturnType<typeof takeLine> =>
  takeLine(text, entry, {
    line: entry.taken.length + 1,
    engine,
    ...(note === undefined ? {} : { note }),
  });

/** What one unit would mend in all figures of a line is told of its first. */
const faultLines = (problems: readonly Problem[], width: number): readonly string[] => {
  const [first, ...others] = problems.filter(({ code }) => code === "typed-unit");
  const told = problems.filter((one) => !others.includes(one));
  const more = others.length === 0 ? [] : [`    so ${counted(others.length, "more figure")} of this line`];
  return [...faultText(told, width).trimEnd().split("\n"), ...(first === undefined ? [] : more)];
};

const placeOf = ([first]: readonly TypedMeasurement[]): string =>
  first === undefined ? "" : [first.part, first.label ?? "", first.quantity].join("\n");

const plain = (text: string): string => text.trim().replace(/\s+/g, " ").toLowerCase();
const isSame = (a: string, b: string): boolean => plain(a) === plain(b);

const lineKey = "line";

const keptLines = ({ taken }: Entry): Unfinished["answers"] =>
  taken.map(({ text }) => [lineKey, text] as const);

/** The lines of an entry that is gone on with; one that the engine no longer takes is told and left out, and one that looks like
 *  a slip is asked for again. */
const resumed = (asked: Asked, width: number): Standing => {
  const { session, start, say } = asked;
  let entry: Entry = { context: start, taken: [] };
  const doubts: Doubtful[] = [];
  for (const [key, text] of session.answers) {
    if (key !== lineKey) continue;
    const took = take(text, entry, asked);
    entry = took.entry;
    if (took.kind === "fault") say(faultLines(took.problems, width));
    if (took.kind !== "measured" || !asked.echo(took.measurements, entry).isSlip) continue;
    doubts.push({ text, place: placeOf(took.measurements), at: entry.taken.length - 1 });
  }
  if (entry.taken.length > 0) say(prose(`goes on ${linesTold(keptLines(entry))}`, width));
  return { entry, doubts };
};

/** How far a kept entry had come. */
export const linesTold = (answers: Unfinished["answers"]): string => {
  const [, last = ""] = answers.at(-1) ?? [];
  return `after ${counted(answers.length, "line")}, the last: ${clean(last)}`;
};

/** What was typed, so that it is not lost. */
const givenBack = (entry: Entry): string =>
  entry.taken.length === 0 ? "" : `typed so far:\n${typedBack(entry)}`;
