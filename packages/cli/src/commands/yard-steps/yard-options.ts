// What `yard` takes, and what was typed of it, checked.

import { type YardOrder, datesMeant, isIsoDate, yardOrders } from "@sealtrend/core/parts";
import type { Args, Option } from "../../command.ts";
import type { Io } from "../../io.ts";
import type { Shard } from "../../yard/shard.ts";
import { usage } from "../usage.ts";

export const yardOptions: readonly Option[] = [
  {
    name: "sort",
    value: "worst",
    help: "what comes first (a table goes by worst, all else as it comes)",
    choices: yardOrders,
    means: {
      worst:
        "not to be run, work needed; then holds nothing, past a limit, lagging, suspect, even; then how far below, course, due",
      engine: "by name",
      last: "the longest untested",
      due: "whose next test is due first",
    },
  },
  {
    name: "top",
    value: "12",
    help: "so many of that order (default of a table a screenful)",
    words: ["all"],
    orElse: "a number",
  },
  {
    name: "due",
    value: "DATE",
    help: "only engines whose next test is due by then",
    words: ["today"],
    orElse: "a day",
  },
  { name: "decide", help: "make a decision for each engine of a CSV too, which takes longer" },
  {
    name: "format",
    value: "table",
    help: "the form of the answer",
    choices: ["table", "csv", "jsonl"],
    means: { jsonl: "a JSON document an engine, each on a line: what --json gives here" },
  },
  {
    name: "shard",
    value: "2/8",
    help: "only the second of eight shares, by the names of the engines; four at once, each line as it is done: seq\u00a04\u00a0|\u00a0parallel\u00a0sealtrend\u00a0yard\u00a0fleet.csv\u00a0--shard\u00a0{}/4\u00a0--json",
  },
  { name: "workers", value: "2", help: "threads that read one CSV (default 1)" },
];

export interface YardAsked {
  readonly format: "table" | "csv" | "jsonl";
  /** Absent: in the order in which they come. */
  readonly order?: YardOrder;
  readonly top: number;
  /** A table that nobody said the length of fits on a screen. */
  readonly length: "one-screen" | "all";
  /** ISO. */
  readonly due?: string;
  readonly shard?: Shard;
  readonly workers: number;
  readonly decide: boolean;
  /** What was typed and does not count. */
  readonly asides: readonly string[];
}

const tableTop = 12;
const mostWorkers = 64;
const mostShards = 1_000_000;

/** @throws Stop 2 */
export const yardAsked = (args: Args, io: Pick<Io, "today">): YardAsked => {
  const named = args.text("format");
  const format = formats.find((one) => one === named) ?? (args.flag("json") ? "jsonl" : "table");
  const sorted = args.text("sort");
  const isKept = format === "table" || args.text("top") !== undefined;
  const order = yardOrders.find((one) => one === sorted) ?? (isKept ? "worst" : undefined);
  const due = dueOf(args.text("due"), io);
  const shard = shardOf(args.text("shard"));
  return {
    format,
    ...(order === undefined ? {} : { order }),
    top: topOf(args.text("top"), format),
    length: args.text("top") === undefined && !args.flag("why") ? "one-screen" : "all",
    ...(due === undefined ? {} : { due }),
    ...(shard === undefined ? {} : { shard }),
    workers: wholeOf("workers", args.text("workers") ?? "1", mostWorkers),
    decide: args.flag("decide"),
    asides: args.flag("json") && format !== "jsonl" ? [`--format ${format} counts, not --json`] : [],
  };
};

const formats = ["table", "csv", "jsonl"] as const;

const topOf = (typed: string | undefined, format: YardAsked["format"]): number => {
  if (typed === undefined) return format === "table" ? tableTop : Infinity;
  return typed === "all" ? Infinity : wholeOf("top", typed, Number.MAX_SAFE_INTEGER);
};

const wholeOf = (name: "top" | "workers", typed: string, most: number): number => {
  const number = /^[1-9]\d*$/.test(typed) ? Number(typed) : 0;
  if (number >= 1 && number <= most) return number;
  const expected =
    name === "top" ? "a whole number from 1 on, or all" : `a whole number from 1 to ${String(most)}`;
  throw usage("number-bad", `--${name} "${typed}"`, expected, `--${name} ${name === "top" ? "12" : "2"}`);
};

const dueOf = (typed: string | undefined, { today }: Pick<Io, "today">): string | undefined => {
  if (typed === undefined || isIsoDate(typed)) return typed;
  if (typed === "today") return today;
  const ways = datesMeant(typed);
  const mend =
    ways.length === 0 ? `--due ${today}, or --due today` : ways.map((day) => `--due ${day}`).join(" or ");
  throw usage("date-bad", `--due "${typed}" names no day`, "a day as year-month-day, or today", mend);
};

const shardOf = (typed: string | undefined): Shard | undefined => {
  if (typed === undefined) return undefined;
  const [, number = "0", of = "0"] = /^([1-9]\d*)\/([1-9]\d*)$/.exec(typed) ?? [];
  const shard = { number: Number(number), of: Number(of) };
  if (shard.number >= 1 && shard.number <= shard.of && shard.of <= mostShards) return shard;
  throw usage(
    "number-bad",
    `--shard "${typed}"`,
    "K/N, the K-th of N shares, K from 1 to N",
    "--shard 1/8, and 2/8 to 8/8 beside it",
  );
};
