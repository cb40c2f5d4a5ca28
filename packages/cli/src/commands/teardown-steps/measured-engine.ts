// The engine and its measurements.csv: all that `teardown` needs of the logbook, whatever is wrong in its other files.

import { join } from "node:path";
import {
  type Engine,
  type Measurement,
  type Problem,
  readEngine,
  readMeasurements,
} from "@sealtrend/core/parts";
import type { Args, Fault } from "../../command.ts";
import { type Logbook, engineFiles, pickEngine, stopOnErrors, textOf } from "../../logbook/open-logbook.ts";
import { asSaid } from "../../logbook/words.ts";

export interface MeasuredEngine {
  readonly logbook: Logbook;
  readonly id: string;
  readonly engine: Engine;
  /** Rows without a fault. */
  readonly measurements: readonly Measurement[];
  /** Faults of the other rows. */
  readonly problems: readonly Problem[];
  /** Said on stderr. */
  readonly asides: readonly string[];
}

/** @throws Stop 2 where no engine or several could be meant, 1 for faults of engine.json */
export const measuredEngine = (args: Args, logbook: Logbook): MeasuredEngine => {
  const id = pickEngine(logbook, args.positionals[0]);
  const { engine: file } = engineFiles(logbook, id);
  const { engine, problems } = readEngine(file.text, file.file, id);
  stopOnErrors(problems);
  if (engine === undefined) throw new TypeError(`measuredEngine: ${id} has no engine and no fault`);
  const cautions: Fault[] = [];
  const text = textOf(logbook.world, join(logbook.root, id, "measurements.csv"), cautions);
  const read =
    text === undefined || text.text.trim() === ""
      ? { measurements: [], problems: [] }
      : readMeasurements(text.text, text.file, engine);
  const asOf = args.text("as-of");
  return {
    logbook,
    id,
    engine,
    measurements: read.measurements.filter(({ date }) => asOf === undefined || date <= asOf),
    problems: read.problems.filter(({ severity }) => severity === "error"),
    asides: cautions.map(asSaid),
  };
};
