// The second pass: reads the engines of one job by their places, has the core parse them together, and makes their rows.

import {
  type Problem,
  type YardChoices,
  type YardEngine,
  type YardHeader,
  type YardRow,
  type YardRun,
  readYardRows,
  yardRow,
} from "@sealtrend/core/parts";
import { type Fault, Stop } from "../command.ts";
import { fromWindows1252 } from "../logbook/encoding.ts";
import { recordAsOf } from "../logbook/record-as-of.ts";
import { fileFault } from "../logbook/words.ts";
import { type Job, mostBytesOfAnEngine } from "./jobs.ts";
import { cellBounds, cellText } from "./row-scan.ts";
import type { RunPlace } from "./run-index.ts";
import type { YardFile } from "./scan-yard.ts";

/** One engine answered: its row, or the faults that keep it from one. */
export interface YardAnswer {
  readonly engine: string;
  readonly row?: YardRow;
  readonly problems: readonly (Problem | Fault)[];
}

/** The engines of one job, and faults that belong to none of them. */
export interface JobAnswer {
  readonly answers: readonly YardAnswer[];
  readonly problems: readonly (Problem | Fault)[];
}

export interface YardReading extends YardChoices {
  readonly header: YardHeader;
  readonly encoding: "utf-8" | "windows-1252";
  /** Only what stood at the end of that day; absent: all. */
  readonly asOf?: string;
}

interface Read {
  readonly run: YardRun;
  readonly bytes: Buffer;
}

export const answerJob = (source: YardFile, { runs }: Job, reading: YardReading): JobAnswer => {
  const size = runs.reduce((sum, { length }) => sum + length, 0);
  if (size > mostBytesOfAnEngine) return tooLarge(source, runs, reading);
  return answered(readRuns(source, runs, size, reading), reading);
};

/** Where one engine keeps the others from being read, each is read alone. */
const answered = (read: readonly Read[], reading: YardReading): JobAnswer => {
  const text = textOf(Buffer.concat(read.map(({ bytes }) => bytes)), reading);
  const found = readYardRows(
    reading.header,
    text,
    read.map(({ run }) => run),
  );
  const names = [...new Set(read.map(({ run }) => run.engine))].filter((name) => name !== "");
  const isWhole = names.every((name) => found.engines.some(({ id }) => id === name));
  if (!isWhole && names.length > 1) return oneByOne(read, reading);
  return { answers: found.engines.map((engine) => answerOf(engine, reading)), problems: found.problems };
};

const oneByOne = (read: readonly Read[], reading: YardReading): JobAnswer => {
  const names = [...new Set(read.map(({ run }) => run.engine))];
  const all = names.map((name) =>
    answered(
      read.filter(({ run }) => run.engine === name),
      reading,
    ),
  );
  return {
    answers: all.flatMap(({ answers }) => answers),
    problems: all.flatMap(({ problems }) => problems),
  };
};

const answerOf = (
  { id, record, problems }: YardEngine,
  { asOf, today, decide }: YardReading,
): YardAnswer => ({
  engine: id,
  ...(record === undefined ? {} : { row: yardRow(recordAsOf(record, asOf), { today, decide }) }),
  problems,
});

const readRuns = (
  source: YardFile,
  runs: readonly RunPlace[],
  size: number,
  reading: YardReading,
): readonly Read[] => {
  const all = Buffer.allocUnsafe(size);
  let [filled, from] = [0, 0];
  runs.forEach(({ offset, length }, i) => {
    filled += length;
    const next = runs[i + 1];
    if (next?.offset === offset + length) return;
    readFully(source, all.subarray(from, filled), offset + length - (filled - from));
    from = filled;
  });
  let start = 0;
  return runs.map(({ length, line, lines }) => {
    const bytes = all.subarray(start, start + length);
    start += length;
    return { run: { engine: nameOf(bytes, reading), line, lines }, bytes };
  });
};

/** @throws Stop 3 where the file has become shorter meanwhile */
const readFully = ({ fs, fd, file }: YardFile, into: Buffer, offset: number): void => {
  for (let at = 0; at < into.length;) {
    const count = fs.readSync(fd, into, at, into.length - at, offset + at);
    if (count === 0) throw new Stop(3, [fileFault("file-changed", { file })]);
    at += count;
  }
};

const textOf = (bytes: Buffer, { encoding }: Pick<YardReading, "encoding">): string =>
  encoding === "utf-8" ? bytes.toString("utf8") : fromWindows1252(bytes);

/** As the first row of the run has it. */
const nameOf = (bytes: Buffer, { header, encoding }: YardReading): string => {
  const delimiter = header.delimiter.charCodeAt(0);
  const row = { from: 0, to: bytes.length, delimiter, column: header.engineColumn };
  return cellText(textOf(bytes.subarray(...cellBounds(bytes, row)), { encoding }));
};

/** No more than its first row is read of it. */
const tooLarge = (source: YardFile, runs: readonly RunPlace[], reading: YardReading): JobAnswer => {
  const [first] = runs;
  if (first === undefined) return { answers: [], problems: [] };
  const row = Buffer.alloc(Math.min(first.length, 1 << 16));
  readFully(source, row, first.offset);
  const engine = nameOf(row, reading);
  const { found: _, ...fault } = fileFault("file-too-large", { file: source.file });
  const found = `engine ${engine} holds more than ${String(mostBytesOfAnEngine >> 20)} MiB of rows`;
  return {
    answers: [{ engine, problems: [{ ...fault, found, line: first.line, column: 1 }] }],
    problems: [],
  };
};
