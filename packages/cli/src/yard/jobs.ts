// The work on a file in pieces of 32 kB: some whole engines each, in the order in which they come first.

import type { RunIndex, RunPlace } from "./run-index.ts";

export interface Job {
  /** The runs of its engines, one engine after the other. */
  readonly runs: readonly RunPlace[];
}

/** Few enough that what a job holds is gone before memory is tidied twice, and no part of it is carried along. */
const usualBytes = 1 << 15;
/** As large as a logbook's file may be. */
export const mostBytesOfAnEngine = 1 << 24;

/** The jobs of a file. The run that ends the file closes its job, for only the last row of a text may lack its line end; an
 *  engine that is too large stands alone.
 *  @param size - of the file, in bytes */
export function* jobsOf(index: RunIndex, size: number): Generator<Job> {
  let [runs, bytes]: [RunPlace[], number] = [[], 0];
  for (let engine = 0; engine < index.engines(); engine += 1) {
    const own = index.runsOf(engine);
    const more = own.reduce((sum, { length }) => sum + length, 0);
    if (runs.length > 0 && bytes + more > usualBytes) {
      yield { runs };
      [runs, bytes] = [[], 0];
    }
    runs.push(...own);
    bytes += more;
    if (!own.some(({ offset, length }) => offset + length >= size)) continue;
    yield { runs };
    [runs, bytes] = [[], 0];
  }
  if (runs.length > 0) yield { runs };
}
