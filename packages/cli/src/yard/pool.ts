// Several threads at the jobs of one file; answers come in the order of the jobs, whoever is done first.

import { join, dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { Stop } from "../command.ts";
import type { JobAnswer } from "./answer-job.ts";
import type { Job } from "./jobs.ts";
import type { WorkerReply, WorkerTask } from "./worker.ts";

/** The bundle starts itself again in each thread. */
const program = join(dirname(fileURLToPath(import.meta.url)), "program.cjs");
const code = `require(${JSON.stringify(program)}).yardWorker();`;

/** Jobs that a thread holds beside the one that it is at: enough to be never idle, few enough to bound what waits. */
const ahead = 1;

interface Thread {
  readonly worker: Worker;
  /** Those who wait for an answer, in the order in which they asked. */
  readonly waiting: {
    readonly resolve: (reply: WorkerReply) => void;
    readonly reject: (error: Error) => void;
  }[];
}

export async function* answersInOrder(
  jobs: Iterable<Job>,
  count: number,
  task: WorkerTask,
): AsyncGenerator<JobAnswer> {
  const threads = Array.from({ length: count }, () => threadOf(task));
  try {
    const asked: Promise<JobAnswer>[] = [];
    for (const job of jobs) {
      asked.push(answerBy(leastBusy(threads), job));
      if (asked.length > count * (1 + ahead)) yield* first(asked);
    }
    while (asked.length > 0) yield* first(asked);
  } finally {
    await Promise.all(threads.map(({ worker }) => worker.terminate()));
  }
}

async function* first(asked: Promise<JobAnswer>[]): AsyncGenerator<JobAnswer> {
  const next = asked.shift();
  if (next !== undefined) yield await next;
}

const threadOf = (workerData: WorkerTask): Thread => {
  const worker = new Worker(code, { eval: true, workerData });
  const waiting: Thread["waiting"] = [];
  worker.on("message", (reply: WorkerReply) => waiting.shift()?.resolve(reply));
  worker.on("error", (error) => {
    for (const { reject } of waiting.splice(0)) reject(error);
  });
  return { worker, waiting };
};

const leastBusy = (threads: readonly Thread[]): Thread => {
  const [least] = threads.toSorted((a, b) => a.waiting.length - b.waiting.length);
  if (least === undefined) throw new RangeError("answersInOrder: no thread");
  return least;
};

const answerBy = async ({ worker, waiting }: Thread, job: Job): Promise<JobAnswer> => {
  const reply = await new Promise<WorkerReply>((resolve, reject) => {
    waiting.push({ resolve, reject });
    worker.postMessage(job);
  });
  if ("answer" in reply) return reply.answer;
  throw new Stop(reply.exit, reply.faults);
};
