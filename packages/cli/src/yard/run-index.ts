// Which engine stands where in a file: runs of its rows, engine by engine in the order in which they come first. 20 bytes a run
// and 8 an engine, in lists that grow without being moved; where the rows of an engine stand together that is one run an engine.

import { engineNumbers } from "./engine-numbers.ts";
import { grown } from "./grown.ts";
import { likeName } from "./like-name.ts";

/** Rows of one name that follow each other. */
export interface RunPlace {
  /** In bytes. */
  readonly offset: number;
  readonly length: number;
  /** The line of the file on which they begin, from 1. */
  readonly line: number;
}

export interface RunIndex {
  /** Adds a row behind those before it. */
  add(engine: string, row: RunPlace): void;
  /** Adds a row that holds nothing to the run before it. */
  addBlank(row: RunPlace): void;
  engines(): number;
  runs(): number;
  /** The runs of an engine, in the order of the file; names that differ by capitals and blanks only stand together, each in runs of
   *  its own. @param engine - its number, from 0 */
  runsOf(engine: number): readonly RunPlace[];
}

const words = (length: number): Uint32Array => new Uint32Array(length);

export const runIndex = (): RunIndex => {
  const offsets = grown((length) => new Float64Array(length));
  const [lengths, lines, nexts, firsts, lasts] = [
    grown(words),
    grown(words),
    grown(words),
    grown(words),
    grown(words),
  ];
  const numberOf = engineNumbers();
  let [runs, engines, current, name] = [0, 0, -1, ""];
  const extend = (run: number, { length }: RunPlace): void => {
    lengths.set(run, lengths.at(run) + length);
  };
  const begin = (engine: number, row: RunPlace): void => {
    offsets.set(runs, row.offset);
    lengths.set(runs, row.length);
    lines.set(runs, row.line);
    if (engine === engines) {
      engines += 1;
      firsts.set(engine, runs);
    } else nexts.set(lasts.at(engine), runs);
    lasts.set(engine, runs);
    nexts.set(runs, 0);
    runs += 1;
  };
  /** One that another shard answers for, or that is not kept for another reason, breaks a run. */
  const follows = ({ offset }: RunPlace): boolean =>
    runs > 0 && offsets.at(runs - 1) + lengths.at(runs - 1) === offset;
  return {
    add: (engine, row) => {
      const isSame = current !== -1 && engine === name;
      if (!isSame) {
        current = numberOf(likeName(engine));
        name = engine;
      }
      if (isSame && follows(row) && lasts.at(current) === runs - 1) extend(runs - 1, row);
      else begin(current, row);
    },
    addBlank: (row) => {
      if (follows(row)) extend(runs - 1, row);
    },
    engines: () => engines,
    runs: () => runs,
    runsOf: (engine) => {
      const places: RunPlace[] = [];
      for (let run = firsts.at(engine); ; run = nexts.at(run)) {
        places.push({ offset: offsets.at(run), length: lengths.at(run), line: lines.at(run) });
        if (run === lasts.at(engine)) return places;
      }
    },
  };
};
