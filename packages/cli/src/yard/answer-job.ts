// The second pass: reads the engines of one job by their places, and makes the row of one after the other.

import {
  type Problem,
  type YardChoices,
  type YardHeader,
  type YardRow,
  type YardRun,
  byKey,
  readYardEngine,
  yardRow,
} from "@sealtrend/core/parts";
import { type Fault, Stop } from "../command.ts";
import { fromWindows1252 } from "../logbook/encoding.ts";
import { recordAsOf } from "../logbook/record-as-of.ts";
import { fileFault } from "../logbook/words.ts";
import { alikeNames } from "./like-name.ts";
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

/** A logbook that could not be read, by the name of its folder. */
export interface UnreadBook {
  readonly logbook: string;
  readonly problems: readonly (Problem | Fault)[];
}

/** The engines of one job, and faults that belong to none of them. */
export interface JobAnswer {
  readonly answers: readonly YardAnswer[];
  readonly books?: readonly UnreadBook[];
  readonly problems: readonly (Problem | Fault)[];
  /** Worth a word, and no fault. */
  readonly asides?: readonly string[];
  /** What is wrong with the header of the file: other jobs may find the same. */
  readonly ofHeader: readonly Problem[];
}

export interface YardReading extends YardChoices {
  readonly header: YardHeader;
  readonly encoding: "utf-8" | "windows-1252";
  /** Only what stood at the end of that day; absent: all. */
  readonly asOf?: string;
}

export const answerJob = (source: YardFile, { runs }: Job, reading: YardReading): JobAnswer => {
  const size = runs.reduce((sum, { length }) => sum + length, 0);
  if (size > mostBytesOfAnEngine) return tooLarge(source, runs, reading);
  const answers: YardAnswer[] = [];
  const problems: Problem[] = [];
  const header: Problem[] = [];
  const byName = byKey(readRuns(source, runs, size, reading), (run) => run.engine);
  for (const [engine, own] of byName) {
    const { ofHeader, ...answer } = answerOf(engine, own, reading);
    if (engine === "") problems.push(...answer.problems);
    else answers.push(answer);
    header.push(...ofHeader.filter(({ column }) => !header.some((one) => one.column === column)));
  }
  const asides = alikeNames(byName);
  return { answers, problems, asides, ofHeader: header };
};

const answerOf = (engine: string, runs: readonly YardRun[], { header, asOf, today, decide }: YardReading) => {
  const { record, problems, ofHeader } = readYardEngine(header, engine, runs);
  const row = record === undefined ? undefined : yardRow(recordAsOf(record, asOf), { today, decide });
  return { engine, ...(row === undefined ? {} : { row }), problems, ofHeader };
};

interface Read extends YardRun {
  readonly engine: string;
}

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
  return runs.map(({ length, line }) => {
    const bytes = all.subarray(start, start + length);
    start += length;
    return { engine: nameOf(bytes, reading), line, text: textOf(bytes, reading) };
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

/** No more than the first row of each run is read of it; names that are only alike are each looked at by themselves. */
const tooLarge = (source: YardFile, runs: readonly RunPlace[], reading: YardReading): JobAnswer => {
  const byName = byKey(runs, (run) => firstName(source, run, reading));
  if (byName.size > 1) {
    const all = [...byName.values()].map((own) => answerJob(source, { runs: own }, reading));
    return {
      answers: all.flatMap(({ answers }) => answers),
      problems: all.flatMap(({ problems }) => problems),
      asides: alikeNames(byName),
      ofHeader: all.flatMap(({ ofHeader }) => ofHeader),
    };
  }
  const [engine = ""] = byName.keys();
  const { found: _, ...fault } = fileFault("file-too-large", { file: source.file });
  const found = `engine ${engine} holds more than ${String(mostBytesOfAnEngine >> 20)} MiB of rows`;
  const line = runs[0]?.line ?? 1;
  return {
    answers: [{ engine, problems: [{ ...fault, found, line, column: 1 }] }],
    problems: [],
    ofHeader: [],
  };
};

const firstName = (source: YardFile, { offset, length }: RunPlace, reading: YardReading): string => {
  const row = Buffer.alloc(Math.min(length, 1 << 16));
  readFully(source, row, offset);
  return nameOf(row, reading);
};
