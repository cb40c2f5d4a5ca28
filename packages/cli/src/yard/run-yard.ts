// The whole of `yard`: finds what is meant, answers engine by engine, writes or keeps each answer, and sums up.

import { resolve } from "node:path";
import type { YardRow } from "@sealtrend/core/parts";
import { type Answer, type Args } from "../command.ts";
import { yardAsked, type YardAsked } from "../commands/yard-steps/yard-options.ts";
import { usage } from "../commands/usage.ts";
import type { Io } from "../io.ts";
import { isFolder } from "../logbook/inside.ts";
import { type World, nodeWorld } from "../logbook/world.ts";
import { asSaid } from "../logbook/words.ts";
import { saidOnce } from "../render/aside.ts";
import { faultHead, faultText } from "../render/faults.ts";
import { wrapText } from "../render/table.ts";
import { yardHeadline } from "../render/yard/yard-headline.ts";
import type { YardFrom } from "../render/yard/yard-next.ts";
import { yardRowsShown, yardTable } from "../render/yard/yard-table.ts";
import { withUnreadBooks } from "../render/yard/yard-unread.ts";
import { type Answers, answersOfBooks, answersOfFile } from "./answers.ts";
import { type Collected, collector } from "./collect.ts";
import type { FaultsTold } from "./faults-of-many.ts";
import { progress } from "./progress.ts";
import { yardBooks } from "./yard-logbooks.ts";

export const runYard = async (args: Args, io: Io): Promise<Answer> => {
  const asked = yardAsked(args, io);
  const world = nodeWorld(io);
  const [typed] = args.positionals;
  const path = typed === undefined || typed === "-" ? typed : resolve(io.cwd, typed);
  if (path === "-" && io.interactive)
    throw usage(
      "yard-unpiped",
      "nothing is piped into standard input (-)",
      "a CSV by a pipe, or the name of its file",
      "sealtrend yard fleet.csv",
    );
  const isFile = path !== undefined && (path === "-" || !isFolder(world, path));
  const decide = asked.decide || !isFile ? "always" : "never";
  const asOf = args.text("as-of");
  const choices = {
    today: io.today,
    decide,
    ...(asOf === undefined ? {} : { asOf }),
    ...(asked.shard === undefined ? {} : { shard: asked.shard }),
  } as const;
  const source = isFile
    ? await answersOfFile(world, io, path, { ...choices, workers: asked.workers })
    : answersOfBooks(await yardBooks(world, path, choices, args.text("logbook")));
  try {
    const found = await collected(source, io, world, asked);
    // what was counted until then is no answer
    if (!io.isRead()) return { exit: 0, text: "", json: undefined };
    const detail = args.flag("why") ? "why" : "short";
    const from = { kind: isFile ? "file" : "logbook", ...(typed === undefined ? {} : { typed }) } as const;
    return answerOf(found, { io, asked, decide, source, detail, from });
  } finally {
    source.close();
  }
};

/** Ends early where nobody reads any more. */
const collected = async (source: Answers, io: Io, world: World, asked: YardAsked): Promise<Collected> => {
  const collecting = collector(io, asked);
  const said = progress(io, () => world.clock());
  let count = 0;
  for await (const answer of source.answers()) {
    collecting.take(answer);
    count += answer.answers.length;
    said(count, Math.max(count, source.engines));
    await aTurn();
    if (!io.isRead()) break;
  }
  return collecting.done();
};

/** A turn of the event loop, so that a pipe that was closed and Ctrl-C are heard of. */
const aTurn = (): Promise<void> => new Promise((then) => setImmediate(then));

interface Around {
  readonly io: Io;
  readonly asked: YardAsked;
  readonly decide: "always" | "never";
  readonly source: Answers;
  readonly detail: "short" | "why";
  readonly from: YardFrom;
}

/** Lines of a screen, and one of it for what is typed next. */
const screenful = 23;

const answerOf = (
  { totals, unreadBooks, asides, rows, matching, problems, untold, rest }: Collected,
  { io, asked, decide, source, detail, from }: Around,
): Answer => {
  const { width, today } = io;
  const headline = withUnreadBooks(yardHeadline(totals), unreadBooks);
  const { order = "worst" } = asked;
  const isTable = asked.format === "table";
  const due = asked.due === undefined ? [] : dueLines(matching, asked.due);
  const { length } = asked;
  const before = [
    ...wrapText(headline, width),
    ...(problems.length > 0 ? [] : beginLines(totals, from.kind, width)),
    ...due.flatMap((line) => wrapText(line, width)),
  ];
  const shape = { width, today, order, of: matching, decide, detail, from } as const;
  const table = (room: number, all: YardAsked["length"]): readonly string[] =>
    yardTable(rows, { ...shape, room, length: all });
  const beside = (told: FaultsTold, faults: string): string => {
    const more = told.untold === 0 ? [] : [`${String(told.untold)} more with a fault; each: --format jsonl`];
    const said = [
      ...asked.asides,
      ...source.asides,
      ...source.cautions.map(asSaid),
      ...asides,
      ...(isTable ? [] : [headline, ...due]),
      ...more,
    ];
    return saidOnce(said) + faults;
  };
  const inFull = (told: FaultsTold): string =>
    beside(told, faultText(told.problems, width, "folded", told.rest));
  const all = inFull({ problems, untold, rest });
  const isShort = isTable && length === "one-screen";
  const first = firstOf({ problems, untold, rest });
  const roomBeside = (aside: string): number => screenful - before.length - linesIn(aside, width);
  const isPressingShown = (aside: string): boolean =>
    yardRowsShown(rows, { ...shape, room: roomBeside(aside), length }) >= pressing(rows);
  const shortened = (): string => {
    const one = inFull(first);
    return isPressingShown(one) ? one : beside(first, headsOf(first, width));
  };
  // what is said beside the answer stands on the same screen
  const fits = !isShort || table(0, "all").length <= roomBeside(all);
  const aside = fits ? all : shortened();
  const text = isTable ? [...before, ...table(roomBeside(aside), length)].join("\n") + "\n" : "";
  const exit = totals.faulty > 0 || problems.length > 0 ? 1 : 0;
  return { exit, text, json: undefined, ...(aside === "" ? {} : { aside }) };
};

/** The first, and how many have more: their kinds are not counted as well where a line is dear. */
const firstOf = ({ problems, untold, rest }: FaultsTold): FaultsTold => {
  const more = untold + Math.max(0, problems.length - 1);
  return { problems: problems.slice(0, 1), untold: more, rest: more === 0 ? rest : new Map() };
};

/** How many at the head of the table are not to be run, or in need of work: a fault gives its lines to them. */
const pressing = (rows: readonly YardRow[]): number => {
  const rest = rows.findIndex(({ decision }) => decision?.use !== "not-run" && decision?.basis !== "needed");
  return rest < 0 ? rows.length : rest;
};

/** Without what was expected and the mend, and where those are told. */
const headsOf = ({ problems }: FaultsTold, width: number): string =>
  problems
    .flatMap((fault) => wrapText(`${faultHead(fault)}; the mend: --top all`, width))
    .map((line) => `${line}\n`)
    .join("");

/** Of a text that is wrapped when it is written. */
const linesIn = (text: string, width: number): number =>
  text
    .split("\n")
    .slice(0, -1)
    .reduce((sum, line) => sum + Math.max(1, wrapText(line, width).length), 0);

/** What to do where there is no engine at all. */
const beginLines = (
  { read, faulty }: Collected["totals"],
  from: YardFrom["kind"],
  width: number,
): readonly string[] => {
  if (read + faulty > 0) return [];
  return wrapText(begins[from], width, "next   ");
};

const begins = {
  file: "a row for each test, with the name of its engine",
  logbook:
    "sealtrend engine add pump --cylinders 4 --ignition spark, or look at the demo: sealtrend demo; the sheets of a folder are read one by one: sealtrend import FILE",
} as const;

const dueLines = (matching: number, day: string): readonly string[] => [
  `${matching === 0 ? "None" : String(matching)} due for a test by ${day}.`,
];
