// What commands that add to an engine begin with: the logbook to write to, the engine that is meant.

import { type Engine, readEngine } from "@sealtrend/core";
import type { Args } from "../command.ts";
import type { Io } from "../io.ts";
import { type Logbook, engineFiles, openLogbook, pickEngine, stopOnErrors } from "../logbook/open-logbook.ts";
import { nodeWorld } from "../logbook/world.ts";
import { refuseDemo } from "./refuse-demo.ts";

export interface WritableEngine {
  readonly logbook: Logbook;
  readonly id: string;
  readonly engine: Engine;
}

/** @throws Stop 2 for the demo or where no engine or several could be meant, 1 for faults of engine.json */
export const writableEngine = async (args: Args, io: Io): Promise<WritableEngine> => {
  const logbook = await openLogbook(nodeWorld(io), "write", args.text("logbook"));
  refuseDemo(logbook);
  const id = pickEngine(logbook, args.positionals[0]);
  const file = engineFiles(logbook, id).engine;
  const { engine, problems } = readEngine(file.text, file.file, id);
  stopOnErrors(problems);
  if (engine === undefined) throw new TypeError(`writableEngine: ${id} has no engine and no fault`);
  return { logbook, id, engine };
};
