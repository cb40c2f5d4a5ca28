// The line of `yard --json` for a logbook, of a folder of them, that could not be read.

import { toldEntries } from "../render/faults.ts";
import type { UnreadBook } from "../yard/answer-job.ts";

export const yardBookDocument = ({ logbook, problems }: UnreadBook) => ({
  schema: "sealtrend/yard@1",
  logbook,
  why: "it could not be read: its engines are not counted",
  ...toldEntries(problems),
});
