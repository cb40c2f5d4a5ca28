// The whole of `yard`: finds what is meant, answers engine by engine, writes or keeps each answer, and sums up.

import { resolve } from "node:path";
import { type Answer, type Args } from "../command.ts";
import { yardAsked, type YardAsked } from "../commands/yard-steps/yard-options.ts";
import type { Io } from "../io.ts";
import { type World, nodeWorld } from "../logbook/world.ts";
import { asSaid } from "../logbook/words.ts";
import { saidOnce } from "../render/aside.ts";
import { faultText } from "../render/faults.ts";
import { wrapText } from "../render/table.ts";
import { yardHeadline } from "../render/yard/yard-headline.ts";
import { yardTable } from "../render/yard/yard-table.ts";
import { type Answers, answersOfBooks, answersOfFile } from "./answers.ts";
import { type Collected, collector } from "./collect.ts";
import { progress } from "./progress.ts";
import { yardBooks } from "./yard-logbooks.ts";

export const runYard = async (args: Args, io: Io): Promise<Answer> => {
  const asked = yardAsked(args, io);
  const world = nodeWorld(io);
  const [typed] = args.positionals;
  const path = typed === undefined || typed === "-" ? typed : resolve(io.cwd, typed);
  const isFile = path !== undefined && !isFolder(world, path);
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
    return answerOf(found, { io, asked, decide, source, detail, from: isFile ? "file" : "logbook" });
  } finally {
    source.close();
  }
};

const isFolder = ({ fs }: World, path: string): boolean =>
  path !== "-" && fs.statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;

/** Ends early where nobody reads any more. */
const collected = async (source: Answers, io: Io, world: World, asked: YardAsked): Promise<Collected> => {
  const collecting = collector(io, asked);
  const said = progress(io, () => world.clock());
  let count = 0;
  for await (const answer of source.answers()) {
    collecting.take(answer);
    count += answer.answers.length;
    said(count, source.engines);
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
  readonly from: "file" | "logbook";
}

const answerOf = (
  { totals, kept, matching, problems, untold, rest }: Collected,
  { io, asked, decide, source, detail, from }: Around,
): Answer => {
  const { width, today } = io;
  const headline = yardHeadline(totals);
  const { order = "worst" } = asked;
  const isTable = asked.format === "table";
  const rows = isTable ? (kept?.rows() ?? []) : [];
  const table = isTable
    ? yardTable(rows, { width, today, order, of: matching, decide, detail, length: asked.length })
    : [];
  const due = asked.due === undefined ? [] : dueLines(matching, asked.due);
  const text = isTable
    ? [
        ...wrapText(headline, width),
        ...nextLines(totals, from, width),
        ...due.flatMap((line) => wrapText(line, width)),
        ...table,
      ].join("\n") + "\n"
    : "";
  const more = untold === 0 ? [] : [`${String(untold)} more with a fault; each: --format jsonl`];
  const said = [
    ...source.asides,
    ...source.cautions.map(asSaid),
    ...(isTable ? [] : [headline, ...due]),
    ...more,
  ];
  const aside = saidOnce(said) + faultText(problems, width, "folded", rest);
  const exit = totals.faulty > 0 || problems.length > 0 ? 1 : 0;
  return { exit, text, json: undefined, ...(aside === "" ? {} : { aside }) };
};

/** What to do where there is no engine at all. */
const nextLines = (
  { read, faulty }: Collected["totals"],
  from: "file" | "logbook",
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
