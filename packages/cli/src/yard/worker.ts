// One worker: answers the jobs that it is sent, one after the other. It shares the open file with the thread that sends them.

import { readSync } from "node:fs";
import { parentPort, workerData } from "node:worker_threads";
import { type Fault, Stop } from "../command.ts";
import { type JobAnswer, type YardReading, answerJob } from "./answer-job.ts";
import type { Job } from "./jobs.ts";

/** What a worker is made with, beside its code. */
export interface WorkerTask {
  readonly fd: number;
  readonly file: string;
  readonly reading: YardReading;
}

/** What comes back for a job: its answer, or what stops the command. */
export type WorkerReply =
  { readonly answer: JobAnswer } | { readonly exit: Stop["exit"]; readonly faults: readonly Fault[] };

/** Runs in the worker until it is ended from outside. */
export const answerJobs = (): void => {
  const { fd, file, reading } = workerData as WorkerTask;
  parentPort?.on("message", (job: Job) => parentPort?.postMessage(replyTo(job, { fd, file, reading })));
};

const replyTo = (job: Job, { fd, file, reading }: WorkerTask): WorkerReply => {
  try {
    return { answer: answerJob({ fs: { readSync }, fd, file }, job, reading) };
  } catch (error) {
    if (error instanceof Stop) return { exit: error.exit, faults: error.faults };
    throw error;
  }
};
