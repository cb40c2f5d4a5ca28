// note: other evidence than readings: oil use, blow-by, what was seen or heard.

import {
  type Engine,
  noteColumns,
  noteKinds,
  noteNames,
  plainNumber,
  readNotes,
  readNumber,
} from "@sealtrend/core/parts";
import type { Args, Command, Option } from "../command.ts";
import { noteDocument } from "../documents/note-document.ts";
import type { Io } from "../io.ts";
import { noteLines, noteWords } from "../render/note.ts";
import { savedLine } from "../render/saved-line.ts";
import { askMissing } from "./ask-missing.ts";
import { datedRowOptions, datedRowValues, inMeter, labelsTyped } from "./dated-row.ts";
import { askMore } from "./entry/ask-more.ts";
import { readBack, saveRow } from "./save-row.ts";
import { theEngine } from "./the-engine.ts";
import { checkTexts } from "./typed/typed-text.ts";
import { typedWords } from "./typed/typed-words.ts";
import { usage } from "./usage.ts";
import { writableEngine } from "./writable-engine.ts";

const options: readonly Option[] = [
  { name: "what", value: "KIND", help: "kind of evidence", words: noteNames },
  {
    name: "value",
    value: "0.4L/1000km",
    help: "a number with its unit, or a word such as none, some, heavy",
    wordsBy: (told) => takesOf(kindNamed(told("what"))).words,
  },
  {
    name: "unit",
    value: "UNIT",
    help: "the unit, where it is not attached to the value",
    wordsBy: (told) => takesOf(kindNamed(told("what"))).units,
  },
  { name: "cylinders", value: "LABELS", help: 'which cylinders it is about: "3", "1 2"' },
  ...datedRowOptions("who saw it", "anything else"),
];

export const note: Command = {
  name: "note",
  summary: "record other evidence: oil use, blow-by, debris, what was seen or heard",
  examples: [
    'sealtrend note boat --what "oil use" --value 0.4L/1000km',
    'sealtrend note tractor --what "valve seen" --value burnt --cylinders 3 --by shop',
  ],
  enters: true,
  positionals: [theEngine],
  options,
  run: async (typed, io) => {
    const { logbook, id, engine } = await writableEngine(typed, io);
    const args = await asked(typed, io, engine);
    checkTexts(args, ["value", "unit", "by", "note"]);
    const values = valuesOf(args, io);
    const { file, before, undo, said } = await saveRow({
      logbook,
      engine,
      table: "notes.csv",
      values,
      read: (text, name) => readNotes(text, name, engine).problems,
      command: typedWords(args, "note", id, options),
    });
    const earlier = before.trim() === "" ? [] : readNotes(before, file, engine).notes;
    const saved = readBack(values, noteColumns, (text) => readNotes(text, "", engine).notes[0]);
    const first = savedLine(`saved  ${id} ${saved.date}, ${noteWords(saved)}`, undo, io.width);
    const lines = [first, ...noteLines(saved, earlier, engine, io.width)];
    return {
      exit: 0,
      text: `${lines.join("\n")}\n`,
      json: noteDocument(saved, engine, file),
      ...said,
    };
  },
};

type Kind = keyof typeof noteKinds;
interface Takes {
  readonly words: readonly string[];
  readonly units: readonly string[];
}
const takesOf = (what: Kind | undefined): Takes =>
  what === undefined ? { words: [], units: [] } : noteKinds[what];

const kindNamed = (typed: string | undefined): Kind | undefined =>
  noteNames.find((name) => name === typed?.trim().toLowerCase());

const known = (args: Args): Kind | undefined => kindNamed(args.text("what"));

const asked = async (typed: Args, io: Io, engine: Engine): Promise<Args> => {
  const open = typed.text("what") === undefined || typed.text("value") === undefined;
  const args = await askMissing(typed, io, [
    {
      option: "what",
      question: `what is noted (${noteNames.join(", ")}): `,
      found: `what is noted of ${engine.id}? One of: ${noteNames.join(", ")}`,
      mend: `sealtrend note ${engine.id} --what "oil use" --value 0.4L/1000km`,
    },
  ]);
  const what = known(args);
  const { words, units } = takesOf(what);
  if (what === undefined) return args;
  const free = words.length === 0 && units.length === 0;
  if (free && (args.text("value") ?? args.text("note")) !== undefined) return args;
  const choice = [...words, ...units.map((unit) => `a number of ${unit}`)].join(", ");
  const example = free
    ? `--note "what was found"`
    : `--value ${units[0] === undefined ? (words[0] ?? "") : `0.4${units[0]}`}`;
  const told = await askMissing(args, io, [
    {
      option: free ? "note" : "value",
      question: free ? `${what}: ` : `${what} (${choice}): `,
      found: free ? `${what}: what is it?` : `${what}: how much? ${choice}`,
      mend: `sealtrend note ${engine.id} --what "${what}" ${example}`,
    },
  ]);
  if (!open || !io.interactive) return told;
  return await askMore(told, io, [
    { option: "meter", question: `meter${inMeter(engine)}` },
    ...(free ? [] : [{ option: "note", question: "anything else" }]),
  ]);
};

/** The row by column name; a unit attached to the value moves to its own cell. @throws Stop 2 */
const valuesOf = (args: Args, io: Io): Readonly<Record<string, string>> => {
  const what = known(args);
  const { value, unit } = measured(args, what);
  return {
    ...datedRowValues(args, io, "the note"),
    what: what ?? args.text("what") ?? "",
    value,
    unit,
    cylinders: labelsTyped(args.text("cylinders")),
  };
};

const measured = (args: Args, what: Kind | undefined): { readonly value: string; readonly unit: string } => {
  const { words, units } = takesOf(what);
  const typed = args.text("value")?.trim() ?? "";
  const word = words.find((one) => one === typed.toLowerCase());
  if (word !== undefined) return { value: word, unit: "" };
  const apart = args.text("unit")?.trim();
  const [, number = typed, attached = ""] =
    units.length === 0 ? [] : (/^([+-]?[\d.,]+)\s*(.*)$/.exec(typed) ?? []);
  if (apart !== undefined && attached !== "" && plain(apart) !== plain(attached))
    throw usage(
      "unit-twice",
      `--value ${typed} and --unit ${apart}`,
      "one unit",
      `leave --unit out, or write --value ${number} --unit ${attached}`,
    );
  const unit = apart ?? attached;
  if (unit === "" && units[0] !== undefined && readNumber(number).ok)
    throw usage(
      "unit-open",
      `${what ?? ""} ${number}: in which unit?`,
      units.join(", "),
      `--value ${number}${units[0]}`,
    );
  return { value: plainNumber(number), unit: units.find((name) => plain(name) === plain(unit)) ?? unit };
};

const plain = (unit: string): string => unit.replace(/\s+/g, "").toLowerCase();
