// teardown: what was measured on an engine taken apart, typed a line a part, and what it comes to.

import type { TypedMeasurement } from "@sealtrend/core/parts";
import { type Answer, type Args, type Command, Stop } from "../command.ts";
import type { Io } from "../io.ts";
import { prose } from "../render/prose.ts";
import { counted } from "../render/words.ts";
import { openLogbook } from "../logbook/open-logbook.ts";
import { nodeWorld } from "../logbook/world.ts";
import { refuseDemo } from "./refuse-demo.ts";
import { idleSession } from "./kept/idle-session.ts";
import { openSession, waitingAside } from "./kept/offer-kept.ts";
import { sayTo } from "./kept/say-to.ts";
import { askLines, linesTold } from "./teardown-steps/ask-lines.ts";
import { carriedContext } from "./teardown-steps/carried-context.ts";
import { type Echo, echoOf } from "./teardown-steps/echo-of.ts";
import { givenLines } from "./teardown-steps/given-lines.ts";
import { type MeasuredEngine, measuredEngine } from "./teardown-steps/measured-engine.ts";
import { readLines } from "./teardown-steps/read-lines.ts";
import { freshLines } from "./teardown-steps/recorded-already.ts";
import { saveMeasurements } from "./teardown-steps/save-measurements.ts";
import { startContext } from "./teardown-steps/start-context.ts";
import { teardownAnswer } from "./teardown-steps/teardown-answer.ts";
import { teardownOptions } from "./teardown-steps/teardown-options.ts";
import { type Entry, typedMeasurements } from "./teardown-steps/typed-entry.ts";
import { recordedTeardown, teardownFor } from "./teardown-steps/which-teardown.ts";
import { theEngine } from "./the-engine.ts";
import { typedDay } from "./typed/typed-day.ts";
import { typedWords } from "./typed/typed-words.ts";
import { usage } from "./usage.ts";

export const teardown: Command = {
  name: "teardown",
  summary:
    "judge what was measured on an engine taken apart: inside its limits, outside, or too close to tell, and what work follows",
  examples: [
    "sealtrend teardown tractor --from rods.txt --unit in --instrument thread",
    "sealtrend teardown tractor",
    "sealtrend teardown tractor --no-input --why",
  ],
  enters: true,
  positionals: [theEngine],
  options: teardownOptions,
  run: async (typed, io) => {
    const given = await givenLines(typed, io);
    const open = async (purpose: "read" | "write"): Promise<MeasuredEngine> =>
      measuredEngine(typed, await openLogbook(nodeWorld(io), purpose, typed.text("logbook")));
    if (given.kind !== "lines") {
      const place = await open("read");
      const isDemo = place.logbook.facts.demo;
      const unread = given.kind === "none" ? given.asides : [];
      if (given.kind === "none" || isDemo)
        return recorded(typed, io, place, isDemo ? [...unread, demoSaid] : unread);
    }
    const place = await open("write");
    refuseDemo(place.logbook);
    const say = sayTo(typed, io, given.kind === "lines" ? "told" : "asked");
    const kept = { root: place.logbook.root, command: "teardown", engine: place.id } as const;
    const { world } = place.logbook;
    const session =
      given.kind === "lines"
        ? idleSession(typed)
        : await openSession(typed, io, {
            ...{ world, place: kept, say, tells: linesTold },
            cylinders: place.engine.cylinders,
            options: teardownOptions.filter(({ name }) => name !== "from"),
          });
    const { args } = session;
    const day = typedDay(args, io, "the measuring") ?? io.today;
    const which = teardownFor(args, place.measurements, day);
    const carried = carriedContext(args, place.measurements, which.teardown);
    const start = startContext(args, {
      ...{ day, teardown: which.teardown },
      ...{ engine: place.engine, carried: carried.context },
    });
    const skips = given.kind === "lines" && !args.flag("again");
    say(carried.said.flatMap((line) => prose(line, io.width)));
    const echo = (measurements: readonly TypedMeasurement[], entry: Entry): Echo =>
      echoOf(measurements, entry, { ...place, skips, width: io.width, units: args.text("units") });
    const note = args.flag("again") ? { note: "measured again" } : {};
    const known = { engine: place.engine, start, ...note, echo, say };
    const all = given.kind === "lines" ? readLines(given, known) : await askLines(io, { ...known, session });
    const { entry, recorded: left } = skips
      ? freshLines(all, place.measurements)
      : { entry: all, recorded: 0 };
    const figures = typedMeasurements(entry);
    const read = given.kind === "lines" ? given.asides : [];
    const twice = left === 0 ? [] : [recordedSaid(left, figures.length === 0 ? "nothing else" : "others")];
    const waiting = given.kind === "lines" ? waitingAside(world, kept) : [];
    const asides = [...which.asides, ...read, ...daysAhead(figures, io.today), ...twice, ...waiting];
    const last = figures.at(-1);
    if (last === undefined) {
      session.drop();
      if (given.kind === "lines" && left === 0) throw noFigure(given.file);
      return recorded(args, io, place, asides);
    }
    const saved = await session.save(() =>
      saveMeasurements({
        logbook: place.logbook,
        engine: place.engine,
        entry,
        command: commandLine(args, place.id),
        ...(given.kind === "lines" ? { source: given.file } : {}),
      }),
    );
    return teardownAnswer(args, io, {
      place: measuredEngine(args, place.logbook),
      teardown: last.teardown,
      asides,
      saved,
    });
  },
};

/** On a terminal who types a line again means it; a file is entered twice by a slip. */
const recordedSaid = (figures: number, besides: "nothing else" | "others"): string => {
  const them = figures === 1 ? "this one figure is" : `these ${counted(figures, "figure")} are`;
  const saved = besides === "nothing else" ? "nothing was saved" : "only the others were saved";
  return `${them} recorded already; ${saved} (--again adds ${figures === 1 ? "it as a repeat" : "them as repeats"})`;
};

const demoSaid = "the demo is invented: nothing is entered there; this judges what it holds";

/** What is recorded, judged. */
const recorded = (args: Args, io: Io, place: MeasuredEngine, asides: readonly string[]): Answer => {
  if (place.problems.length > 0) throw new Stop(1, place.problems);
  const number = recordedTeardown(args, place.measurements, place.id);
  const idle = args.flag("new-teardown") ? ["--new-teardown does nothing without a line to enter"] : [];
  return teardownAnswer(args, io, { place, teardown: number, asides: [...asides, ...idle] });
};

/** A day to come, which a slip of the pen in a line makes: it is saved all the same. */
const daysAhead = (typed: readonly TypedMeasurement[], today: string): readonly string[] => {
  const days = [...new Set(typed.map(({ date }) => date).filter((date) => date > today))];
  if (days.length === 0) return [];
  return [`dated after today (${today}): ${days.join(", ")}; if that is a slip: sealtrend undo`];
};

const noFigure = (file: string) =>
  usage(
    "lines-none",
    `${file} holds no figure`,
    "a line a part, such as: bore 3: 86.62 86.58 86.56 86.55 86.53 86.52 mm",
    "every shape of a line: sealtrend how teardown --why",
    1,
  );

/** What undo shows. */
const commandLine = (args: Args, id: string): string => {
  const words = typedWords(
    args,
    "teardown",
    id,
    teardownOptions.filter(({ value }) => value !== undefined),
  );
  const flags = ["new-teardown", "again"].filter((name) => args.flag(name)).map((name) => `--${name}`);
  return [words, ...flags].join(" ");
};
