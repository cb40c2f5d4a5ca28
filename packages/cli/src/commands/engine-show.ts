// engine show: every field that is known of an engine, and what is not known and would help.

import type { Command } from "../command.ts";
import { enginesDocument } from "../documents/engines-document.ts";
import { missingFields } from "../documents/missing-fields.ts";
import { engineOverview } from "../logbook/engine-overview.ts";
import { openLogbook, pickEngine, stopOnErrors } from "../logbook/open-logbook.ts";
import { nodeWorld } from "../logbook/world.ts";
import { engineScreen } from "../render/engines.ts";
import { saidAside } from "./pick.ts";
import { theEngine } from "./the-engine.ts";

export const engineShow: Command = {
  name: "engine show",
  summary: "what is known of an engine, and what would help",
  examples: ["sealtrend engine show tractor"],
  positionals: [theEngine],
  options: [],
  run: async (args, io) => {
    const logbook = await openLogbook(nodeWorld(io), "read", args.text("logbook"));
    const overview = engineOverview(logbook, pickEngine(logbook, args.positionals[0]), args.text("as-of"));
    stopOnErrors(overview.engineFaults);
    const missing = overview.engine === undefined ? [] : missingFields(overview.engine, overview.fields);
    return {
      exit: 0,
      text: `${engineScreen(overview, missing, io.width).join("\n")}\n`,
      json: enginesDocument(logbook.root, [{ overview, missing }]),
      ...saidAside(logbook),
    };
  },
};
