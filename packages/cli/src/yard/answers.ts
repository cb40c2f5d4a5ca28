// Where the answers of a yard come from: one CSV in jobs, by one thread or several, or logbooks engine by engine.

import type { YardChoices } from "@sealtrend/core/parts";
import type { Fault } from "../command.ts";
import type { Io } from "../io.ts";
import type { World } from "../logbook/world.ts";
import { sparing } from "../sparing.ts";
import { type JobAnswer, type YardReading, answerJob } from "./answer-job.ts";
import { jobsOf } from "./jobs.ts";
import { answersInOrder } from "./pool.ts";
import { scanYard } from "./scan-yard.ts";
import type { Shard } from "./shard.ts";
import { openYard } from "./yard-source.ts";
import { type YardBooks } from "./yard-logbooks.ts";

export interface Answers {
  readonly engines: number;
  readonly asides: readonly string[];
  readonly cautions: readonly Fault[];
  answers(): AsyncIterable<JobAnswer>;
  close(): void;
}

export interface AnswerChoices extends YardChoices {
  readonly asOf?: string;
  readonly shard?: Shard;
  readonly workers: number;
}

/** @param path - of the CSV; `-` for standard input */
export const answersOfFile = async (
  world: World,
  io: Io,
  path: string,
  { shard, workers, ...choices }: AnswerChoices,
): Promise<Answers> => {
  const source = await openYard(world, io, path);
  sparing(source.size);
  try {
    const { header, encoding, index, cautions } = scanYard(source, shard);
    const reading: YardReading = { ...choices, header, encoding };
    const jobs = jobsOf(index, source.size);
    const { fd, file } = source;
    const oneThread = async function* (): AsyncGenerator<JobAnswer> {
      for (const job of jobs) yield await Promise.resolve(answerJob(source, job, reading));
    };
    return {
      engines: index.engines(),
      asides: [],
      cautions,
      answers: () => (workers > 1 ? answersInOrder(jobs, workers, { fd, file, reading }) : oneThread()),
      close: () => source.close(),
    };
  } catch (error) {
    source.close();
    throw error;
  }
};

export const answersOfBooks = ({ engines, unread, problems, asides }: YardBooks): Answers => ({
  engines: engines.length,
  asides,
  cautions: [],
  answers: async function* () {
    if (problems.length + unread.length > 0) yield { answers: [], books: unread, problems, ofHeader: [] };
    for (const engine of engines)
      yield await Promise.resolve({ answers: [engine.answer()], problems: [], ofHeader: [] });
  },
  close: () => undefined,
});
