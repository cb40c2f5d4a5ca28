// gauge list: the gauges of the logbook, a line each.

import type { Command } from "../command.ts";
import { gaugesDocument } from "../documents/gauges-document.ts";
import { openLogbook } from "../logbook/open-logbook.ts";
import { shown } from "../logbook/words.ts";
import { nodeWorld } from "../logbook/world.ts";
import { gaugeLines } from "../render/gauges/gauges.ts";
import { wrapText } from "../render/table.ts";
import { saidAside } from "./pick.ts";

export const gaugeList: Command = {
  name: "gauge list",
  summary: "the gauges of the logbook, a line each",
  examples: ["sealtrend gauge list"],
  positionals: [],
  options: [],
  run: async (args, io) => {
    const logbook = await openLogbook(nodeWorld(io), "read", args.text("logbook"));
    const { gauges, root } = logbook;
    const none = `No gauge in ${shown(io.cwd, root)} yet. Add one: sealtrend gauge add red --kind compression --unit psi`;
    const lines = gauges.length === 0 ? wrapText(none, io.width) : gaugeLines(gauges, io.width);
    const json = gaugesDocument(root, gauges);
    return { exit: 0, text: `${lines.join("\n")}\n`, json, ...saidAside(logbook) };
  },
};
