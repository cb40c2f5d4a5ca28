// A small table of commands, and what one command line came to: what the command received, or the faults.

import { run, type Args, type Command, type Option } from "sealtrend";
import { fakeIo } from "../fake-io.ts";

const readings: readonly Option[] = [
  {
    name: "dry",
    value: '"152 150 149"',
    takes: "list",
    help: "the dry test, a reading a cylinder",
    group: "Readings",
  },
  {
    name: "leak-down",
    alias: "differential",
    value: '"74/80 72/80"',
    takes: "list",
    help: "the leak-down",
    group: "Readings",
  },
  { name: "heard", value: "LIST", takes: "list", help: "where air was heard", group: "Readings" },
];

const enterOptions: readonly Option[] = [
  ...readings,
  { name: "temp", value: "22C", help: "temperature of the air", group: "Conditions" },
  { name: "throttle", value: "open", choices: ["open", "closed"], help: "the throttle", group: "Conditions" },
  { name: "note", value: "TEXT", help: "what else was seen" },
  { name: "same-test", help: "add to the last test of this engine, whatever its date and whoever made it" },
];

export interface Received {
  readonly command: string;
  readonly positionals: readonly string[];
  readonly options: Readonly<Record<string, string | readonly string[] | true>>;
}

const common = ["logbook", "units", "as-of"];
const commonFlags = ["json", "no-color", "ascii", "no-input", "why"];

const received = (command: Omit<Command, "run">, args: Args): Received => {
  const texts = [
    ...common,
    ...command.options.filter((o) => o.value !== undefined && o.takes !== "list").map((o) => o.name),
  ];
  const lists = command.options.filter((o) => o.takes === "list").map((o) => o.name);
  const flags = [...commonFlags, ...command.options.filter((o) => o.value === undefined).map((o) => o.name)];
  const all = [
    ...texts.map((name) => [name, args.text(name)] as const),
    ...lists.map((name) => [name, args.list(name)] as const),
    ...flags.map((name) => [name, args.flag(name)] as const),
  ];
  const given = all.filter(([, value]) => value !== undefined && value !== false && String(value) !== "");
  return {
    command: command.name,
    positionals: args.positionals,
    options: Object.fromEntries(given) as Received["options"],
  };
};

const echo = (command: Omit<Command, "run">): Command => ({
  ...command,
  run: (args) =>
    Promise.resolve({
      exit: 0,
      text: `${JSON.stringify(received(command, args))}\n`,
      json: received(command, args),
    }),
});

const engine = { name: "ENGINE", help: "the engine's folder in the logbook", need: "may" } as const;

export const sampleCommands: readonly Command[] = [
  echo({
    name: "demo",
    summary: "look at an invented logbook",
    examples: ["sealtrend demo"],
    positionals: [],
    options: [],
  }),
  echo({
    name: "enter",
    summary: "record one test and see what it says",
    examples: [
      'enter tractor --dry "126 125 111 127" --gauge black --altitude 350m',
      "enter tractor --same-test",
    ],
    positionals: [engine],
    options: enterOptions,
  }),
  echo({
    name: "engine add",
    summary: "define an engine",
    examples: ["engine add pump --cylinders 4"],
    positionals: [{ ...engine, need: "must" }],
    options: [{ name: "cylinders", value: "4", help: "how many" }],
  }),
  echo({
    name: "engine list",
    summary: "every engine",
    examples: ["engine list"],
    positionals: [],
    options: [],
  }),
  echo({
    name: "show",
    summary: "the verdict on one test",
    examples: ["show tractor"],
    positionals: [engine],
    options: [],
  }),
  echo({
    name: "page",
    summary: "one printable page",
    examples: ["page pump -o pump.html"],
    positionals: [engine],
    options: [{ name: "output", alias: "o", value: "FILE", help: "the file to write" }],
  }),
];

export interface Typed {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
  /** What the command received, where one ran. */
  readonly received: Received | undefined;
  /** `code: found` of each fault. */
  readonly faults: readonly string[];
}

interface Document extends Partial<Received> {
  readonly problems?: readonly { readonly code: string; readonly found: string }[];
}

/** Types the line twice: once for a person, once for a script, whose document tells faults from answers. */
export const type = async (...words: readonly string[]): Promise<Typed> => {
  const person = fakeIo();
  const exit = await run(words, person, sampleCommands);
  const script = fakeIo();
  const open = words.includes("--") ? words.slice(0, words.indexOf("--")) : words;
  await run(open.includes("--json") ? words : ["--json", ...words], script, sampleCommands);
  const text = script.stdout();
  const {
    command,
    positionals = [],
    options = {},
    problems = [],
  } = (text.startsWith("{") ? JSON.parse(text) : {}) as Document;
  const { json: _, ...others } = options;
  return {
    exit,
    out: person.stdout(),
    err: person.stderr(),
    received: command === undefined ? undefined : { command, positionals, options: others },
    faults: problems.map(({ code, found }) => `${code}: ${found}`),
  };
};
