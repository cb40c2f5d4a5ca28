// enter: one test, from the command line or asked cylinder by cylinder.

import {
  type Dialect,
  type Engine,
  dialectOf,
  engineHeaders,
  readEngine,
  readTests,
  withConditionColumns,
} from "@sealtrend/core/parts";
import { type Answer, type Args, type Command, Stop } from "../command.ts";
import type { Io } from "../io.ts";
import { type Logbook, engineFiles, openLogbook, pickEngine, stopOnErrors } from "../logbook/open-logbook.ts";
import { readFileIfThere } from "../logbook/read-file.ts";
import { shown } from "../logbook/words.ts";
import { nodeWorld } from "../logbook/world.ts";
import { type Change, type Written, write } from "../logbook/write.ts";
import { typedLine } from "../options/quote.ts";
import { clean } from "../render/clean.ts";
import { askNew } from "./entry/ask-new.ts";
import { askSlips } from "./entry/ask-slips.ts";
import { askUnit } from "./entry/ask-unit.ts";
import { completeEntry } from "./entry/complete-entry.ts";
import { entryAnswer } from "./entry/entry-answer.ts";
import { conditionOptions, placeOptions, rowOptions } from "./entry/entry-options.ts";
import { type Placed, columnsFilled, placeRows } from "./entry/entry-place.ts";
import { entryRows } from "./entry/entry-rows.ts";
import { slipsIn } from "./entry/entry-slips.ts";
import { type Target, entryTarget } from "./entry/entry-target.ts";
import { testMeant, withTestGauge } from "./entry/test-gauge.ts";
import { cylinderLabels, newEngine } from "./new-engine.ts";
import type { Session } from "./kept/entry-session.ts";
import { waitingAside } from "./kept/offer-kept.ts";
import { refuseDemo } from "./refuse-demo.ts";
import { theEngine } from "./the-engine.ts";
import { checkTexts } from "./typed/typed-text.ts";
import { usage } from "./usage.ts";

export const enter: Command = {
  name: "enter",
  summary: "save one test and see at once what it says",
  examples: [
    'sealtrend enter tractor --dry "126 125 111 127" --unit psi --altitude 350m --engine-temp warm',
    'sealtrend enter tractor --leak-down "74/80 72/80 61/80 75/80" --unit psi --heard "none none exhaust none"',
    'sealtrend enter baler --new --cylinders 2 --ignition spark --dry "118 121" --unit psi',
  ],
  positionals: [theEngine],
  options: [...rowOptions, ...conditionOptions, ...placeOptions],
  run: async (args, io) => {
    try {
      return await enterTest(args, io);
    } catch (error) {
      throw withReadings(error, args);
    }
  },
};

/** Where the logbook stands in the way, not the command line, the readings are given back. */
const withReadings = (error: unknown, args: Args): unknown => {
  const given = rowOptions.some(({ name }) => args.list(name).length > 0);
  if (!(error instanceof Stop) || error.exit === 2 || error.after !== "" || !given) return error;
  return new Stop(error.exit, error.faults, notSaved(args));
};

const notSaved = (args: Args): string => `not saved: ${clean(unsavedText(args), 10_000)}\n`;

const enterTest = async (line: Args, io: Io): Promise<Answer> => {
  const world = nodeWorld(io);
  const logbook = await openLogbook(world, "write", line.text("logbook"));
  refuseDemo(logbook);
  const typed = await askNew(line, io, logbook);
  const { id, engine, isNew } = engineFor(typed, logbook);
  const header = engineHeaders(engine.cylinders)["tests.csv"] ?? "";
  const path = `${logbook.root}/${id}/tests.csv`;
  const now = isNew ? undefined : readFileIfThere(world, path)?.text;
  const dialect = writableDialect(now === undefined || now.trim() === "" ? header : now);
  const earlier = now === undefined ? [] : readTests(now, path, engine, logbook.gauges).tests;
  const place = { root: logbook.root, command: "enter", engine: id } as const;
  const { gauges } = logbook;
  const known = { world, place, engine, isNew, dialect, earlier, gauges, target: targetOf(typed, io) };
  const given = await completeEntry(typed, io, known);
  const target = targetOf(given.args, io);
  // who was asked for the gauge has left it open
  const { args: named, asides } =
    given.kind === "asked"
      ? { args: given.args, asides: [] }
      : withTestGauge(given.args, target, { earlier, gauges });
  const test = testMeant(target, earlier);
  const contextOf = (line: Args) => ({
    engine,
    gauges,
    dialect,
    ...(test === undefined ? {} : { test }),
    gauge: gauges.find(({ id: name }) => name === line.text("gauge")),
  });
  const args = await askUnit(named, io, { ...contextOf(named), ...given });
  const { rows: read, faults } = entryRows(args, contextOf(args));
  if (faults.length > 0) throw new Stop(2, faults, given.kind === "typed" ? "" : notSaved(args));
  const slips = slipsIn(read, engine, earlier);
  const rows = io.interactive
    ? await askSlips(io, read, { ...given, slips: slips.filter(given.leaves) })
    : read;
  const file = shown(world.cwd, path);
  const entry = { file, rows, target: { ...target, meter: args.text("meter") ?? "" }, engine, gauges };
  const { written, placed } = await saveTest(args, given.session, { logbook, id, isNew, header, entry });
  return entryAnswer(args, io, {
    logbook,
    id,
    placed,
    slips: io.interactive ? [] : slips,
    written,
    rows,
    file,
    asides: [...given.asides, ...asides],
  });
};

interface ToSave {
  readonly logbook: Logbook;
  readonly id: string;
  readonly isNew: boolean;
  readonly header: string;
  readonly entry: Parameters<typeof placeRows>[1];
}

/** Where the rows go is worked out anew from the file as it stands under the lock. */
const saveTest = async (
  args: Args,
  session: Session,
  { logbook: { world, root }, id, isNew, header, entry }: ToSave,
): Promise<{ readonly written: Written; readonly placed: Placed }> => {
  let placed: Placed = { test: "", rows: [], values: [] };
  const makeRows = (text: string): readonly string[] => {
    placed = placeRows(text.trim() === "" ? `${header}\n` : text, entry);
    return placed.rows;
  };
  const changes: readonly Change[] = isNew
    ? newEngine(world, root, id, newFields(args), { "tests.csv": makeRows("") }).changes
    : [
        {
          kind: "append",
          path: `${id}/tests.csv`,
          header,
          needs: (text) => columnsFilled(text, entry),
          rows: (current) => makeRows(current?.text ?? ""),
        },
      ];
  const command = typedLine(commandWords(args, id));
  const unsaved = clean(unsavedText(args), 10_000);
  const written = await session.save(() => write(world, { root, command, changes, unsaved }));
  return { written, placed };
};

const targetOf = (args: Args, io: Io): Target => {
  checkTexts(args, ["gauge", "by", "note"]);
  return entryTarget(args, io);
};

interface Meant {
  readonly id: string;
  readonly engine: Engine;
  readonly isNew: boolean;
}

const engineFor = (args: Args, logbook: Logbook): Meant => {
  if (args.flag("new")) {
    const id = newName(args);
    return { id, engine: newEngine(logbook.world, logbook.root, id, newFields(args)).engine, isNew: true };
  }
  const only = ["cylinders", "ignition"].find((name) => args.text(name) !== undefined);
  if (only !== undefined)
    throw usage(
      "new-missing",
      `--${only} without --new`,
      "--new with it, for an engine that is new",
      "add --new, or leave it out",
    );
  const id = pickedOr(logbook, args);
  return { id, engine: engineOf(logbook, id), isNew: false };
};

/** Where there is no such engine, an entry that was left of one that was to be new is told. */
const pickedOr = (logbook: Logbook, { positionals: [named] }: Args): string => {
  try {
    return pickEngine(logbook, named);
  } catch (error) {
    if (!(error instanceof Stop) || named === undefined) throw error;
    const { world, root } = logbook;
    const waits = waitingAside(world, { root, command: "enter", engine: named });
    throw new Stop(error.exit, error.faults, waits.map((text) => `${text}\n`).join(""));
  }
};

const newName = (args: Args): string => {
  const [name] = args.positionals;
  const line = 'sealtrend enter pump --new --cylinders 4 --dry "150 148 149 151" --unit psi';
  if (name === undefined)
    throw usage("engine-open", "the new engine has no name", "a name such as pump", line);
  if (args.text("cylinders") === undefined)
    throw usage(
      "cylinders-missing",
      `how many cylinders has ${name}?`,
      "--cylinders with --new",
      "add --cylinders 4",
    );
  return name;
};

const newFields = (args: Args) => ({
  cylinders: cylinderLabels(args.text("cylinders") ?? ""),
  ignition: args.text("ignition") ?? "unknown",
});

const engineOf = (logbook: Logbook, id: string): Engine => {
  const { engine } = engineFiles(logbook, id);
  const read = readEngine(engine.text, engine.file, id);
  stopOnErrors(read.problems);
  if (read.engine === undefined) throw new TypeError(`enter: ${id} has no engine and no fault`);
  return read.engine;
};

/** The dialect of the file, with the columns of conditions that it lacks but can be given. */
const writableDialect = (text: string): Dialect => {
  const dialect = dialectOf(text, "tests.csv");
  return { ...dialect, columns: withConditionColumns(dialect.columns) };
};

const commandWords = (args: Args, id: string): string[] => [
  "enter",
  id,
  ...rowOptions.flatMap(({ name }) => args.list(name).flatMap((line) => [`--${name}`, line])),
];

/** The readings as they can be typed again, should they not be saved. */
const unsavedText = (args: Args): string =>
  [
    ...rowOptions.flatMap(({ name }) => args.list(name).map((line) => `--${name} "${line}"`)),
    ...[...conditionOptions, ...placeOptions].flatMap(({ name, value }) => {
      if (value === undefined) return args.flag(name) ? [`--${name}`] : [];
      const text = args.text(name);
      return text === undefined ? [] : [`--${name} "${text}"`];
    }),
  ].join(" ");
