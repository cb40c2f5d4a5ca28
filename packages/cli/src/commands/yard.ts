// yard: many engines at once, a row each. All of its work is loaded only when it is asked for.

import type { Command } from "../command.ts";
import { yardOptions } from "./yard-steps/yard-options.ts";

export const yard: Command = {
  name: "yard",
  summary: "many engines at once, worst first: a logbook, a folder of them, or one CSV",
  examples: [
    "sealtrend yard",
    "sealtrend yard --due today --sort due",
    "sealtrend yard fleet.csv --top 20",
    "sealtrend yard fleet.csv --format jsonl",
  ],
  positionals: [
    {
      name: "FILE|DIR|-",
      help: "a CSV with the columns of tests.csv and one named engine (ignition too, if known); a logbook; a folder of logbooks; or - for standard input (default your logbook)",
      need: "may",
    },
  ],
  options: yardOptions,
  run: async (args, io) => {
    const { runYard } = await import("../yard/run-yard.ts");
    return runYard(args, io);
  },
};
