// service: what was done to the engine, and which cylinders begin a new history with it.

import {
  type Engine,
  type Service,
  readEngineRecord,
  readServices,
  serviceColumns,
  startsAnew,
  workNames,
} from "@sealtrend/core/parts";
import type { Args, Command, Option } from "../command.ts";
import { serviceDocument } from "../documents/service-document.ts";
import type { Io } from "../io.ts";
import { type Logbook, engineFiles } from "../logbook/open-logbook.ts";
import { savedLine } from "../render/saved-line.ts";
import { serviceLines } from "../render/service.ts";
import { askMissing } from "./ask-missing.ts";
import { datedRowOptions, datedRowValues, inMeter, labelsTyped } from "./dated-row.ts";
import { askMore } from "./entry/ask-more.ts";
import { readBack, saveRow } from "./save-row.ts";
import { theEngine } from "./the-engine.ts";
import { checkTexts } from "./typed/typed-text.ts";
import { checkWork } from "./work-meant.ts";
import { typedWords } from "./typed/typed-words.ts";
import { writableEngine } from "./writable-engine.ts";

const options: readonly Option[] = [
  { name: "what", value: "WORK", help: "what was done", words: workNames },
  {
    name: "cylinders",
    value: "LABELS",
    help: "which it touched (default all)",
    words: ["all", "none"],
    orElse: 'labels such as "1 2"',
  },
  {
    name: "new-baseline",
    value: "LABELS",
    help: "which begin a new history (default those touched, where head or rings were open; else none)",
    words: ["all", "none"],
    orElse: "labels",
  },
  ...datedRowOptions("who did it", 'anything else; for storage how long: "7 months"'),
];

export const service: Command = {
  name: "service",
  summary: "record what was done to the engine, so that readings before and after it are compared fairly",
  examples: [
    'sealtrend service boat --what "valve job" --cylinders all --meter 640',
    'sealtrend service tractor --what "head gasket" --cylinders "1 2" --by shop --date 2026-04-11',
  ],
  enters: true,
  positionals: [theEngine],
  options,
  run: async (typed, io) => {
    const { logbook, id, engine } = await writableEngine(typed, io);
    const args = await asked(typed, io, engine);
    checkWork(args, id);
    checkTexts(args, ["by", "note"]);
    const values = valuesOf(args, io);
    const { file, undo, said } = await saveRow({
      logbook,
      engine,
      table: "services.csv",
      values,
      read: (text, name) => readServices(text, name, engine).problems,
      command: typedWords(args, "service", id, options),
    });
    const done = readBack(values, serviceColumns, (text) => readServices(text, "", engine).services[0]);
    const lines = [
      savedLine(`saved  ${id} ${done.date}, ${done.what}`, undo, io.width),
      "",
      ...serviceLines(done, engine, { sameDay: sameDay(logbook, id, done), width: io.width }),
    ];
    return {
      exit: 0,
      text: `${lines.join("\n")}\n`,
      json: serviceDocument(done, engine, file),
      ...said,
    };
  },
};

/** The tests of the day of the work, where the work begins a new history. */
const sameDay = (logbook: Logbook, id: string, { date, newBaseline }: Service): readonly string[] => {
  if (newBaseline.length === 0) return [];
  const { record } = readEngineRecord(engineFiles(logbook, id), logbook.gauges, logbook.facts);
  return (record?.tests ?? []).filter((test) => test.date === date).map((test) => test.id);
};

const asked = async (typed: Args, io: Io, engine: Engine): Promise<Args> => {
  const open = typed.text("what") === undefined;
  const mend = `sealtrend service ${engine.id} --what "valve job" --cylinders all`;
  const args = await askMissing(typed, io, [
    {
      option: "what",
      question: `what was done (${workNames.join(", ")}): `,
      found: `what was done to ${engine.id}? One of: ${workNames.join(", ")}`,
      mend,
    },
  ]);
  const replaced = known(args) === "meter replaced";
  const told = replaced
    ? await askMissing(args, io, [
        {
          option: "meter",
          question: `what the new meter reads${inMeter(engine)}: `,
          found: "what does the new meter read?",
          mend: `sealtrend service ${engine.id} --what "meter replaced" --meter 0`,
        },
      ])
    : args;
  if (!open) return told;
  return await askMore(told, io, [
    ...(engine.cylinders.length === 1 || replaced
      ? []
      : [
          {
            option: "cylinders",
            question: `which cylinders: all, none, or labels of ${engine.cylinders.join(" ")}`,
          },
        ]),
    { option: "meter", question: `meter${inMeter(engine)}` },
    { option: "note", question: "anything else" },
  ]);
};

const known = (args: Args): Service["what"] | undefined =>
  workNames.find((name) => name === args.text("what")?.trim().toLowerCase());

/** The row by column name. Touched cylinders are written out where a new history hangs on them. */
const valuesOf = (args: Args, io: Io): Readonly<Record<string, string>> => {
  const what = known(args);
  const touched = args.text("cylinders") ?? (what !== undefined && startsAnew(what) ? "all" : undefined);
  return {
    ...datedRowValues(args, io, "the work"),
    what: what ?? args.text("what") ?? "",
    cylinders: labelsTyped(touched),
    new_baseline: labelsTyped(args.text("new-baseline")),
  };
};
