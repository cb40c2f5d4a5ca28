// engine list: a line an engine.

import type { Command } from "../command.ts";
import { enginesDocument } from "../documents/engines-document.ts";
import { missingFields } from "../documents/missing-fields.ts";
import { bareFolders, refusedAsides, refusedFolders } from "../logbook/engine-id.ts";
import { engineOverview } from "../logbook/engine-overview.ts";
import { openLogbook } from "../logbook/open-logbook.ts";
import { asSaid, shown } from "../logbook/words.ts";
import { nodeWorld } from "../logbook/world.ts";
import { saidOnce } from "../render/aside.ts";
import { engineLines, faultCount } from "../render/engines.ts";
import { wrapText } from "../render/table.ts";

export const engineList: Command = {
  name: "engine list",
  summary: "the engines of the logbook, a line each",
  examples: ["sealtrend engine list"],
  positionals: [],
  options: [],
  run: async (args, io) => {
    const logbook = await openLogbook(nodeWorld(io), "read", args.text("logbook"));
    const where = shown(io.cwd, logbook.root);
    const engines = logbook.ids.map((id) => engineOverview(logbook, id, args.text("as-of")));
    const faulty = engines.filter(({ faults }) => faults.length > 0);
    const { world, root } = logbook;
    const refused = refusedAsides(refusedFolders(world, root));
    const isForNames = engines.length === 0 && refused.length > 0;
    const none = isForNames
      ? `No engine in ${where} can be read: none of its folders has a name that an engine may have.`
      : `No engine in ${where} yet. Add one: sealtrend engine add pump --cylinders 4 --ignition spark`;
    const lines = engines.length === 0 ? wrapText(none, io.width) : engineLines(engines, io.width);
    const bare = bareFolders(world, root).map(({ fault }) => asSaid(fault));
    const more = faulty.map(
      ({ id, faults }) => `${id}: ${faultCount(faults.length)} in its files; see each: sealtrend proofread`,
    );
    const aside = saidOnce([...logbook.asides, ...refused, ...bare, ...more]);
    const json = enginesDocument(
      logbook.root,
      engines.map((overview) => ({
        overview,
        missing: overview.engine === undefined ? [] : missingFields(overview.engine, overview.fields),
      })),
    );
    return {
      exit: faulty.length + bare.length > 0 || isForNames ? 1 : 0,
      text: `${lines.join("\n")}\n`,
      json,
      ...(aside === "" ? {} : { aside }),
    };
  },
};
