// proofread: examines every file of the logbook and names every fault.

import type { Command } from "../command.ts";
import { proofreadDocument } from "../documents/proofread-document.ts";
import { engineIds } from "../logbook/engine-id.ts";
import { examine } from "../logbook/examine.ts";
import { findLogbook } from "../logbook/find-logbook.ts";
import { pickEngine } from "../logbook/open-logbook.ts";
import { settle } from "../logbook/settle.ts";
import { nodeWorld } from "../logbook/world.ts";
import { saidOnce } from "../render/aside.ts";
import { proofreadText } from "../render/proofread.ts";

export const proofread: Command = {
  name: "proofread",
  summary: "examine every file and name every fault, with its place and its mend",
  examples: ["sealtrend proofread", "sealtrend proofread tractor --why"],
  positionals: [{ name: "ENGINE", help: "this engine alone (default all)", need: "may" }],
  options: [],
  run: async (args, io) => {
    const world = nodeWorld(io);
    const place = findLogbook(world, "read", args.text("logbook"));
    const { root } = place;
    const settled = await settle(world, root, "read");
    const [named] = args.positionals;
    const ids = engineIds(world, root);
    const only =
      named === undefined
        ? undefined
        : pickEngine({ world, root, place, ids, facts: { demo: false }, gauges: [], asides: [] }, named);
    const examined = examine(world, root, io.now().slice(0, 10), only);
    const errors = examined.faults.some(({ severity }) => severity === "error");
    const said = [...(place.aside === undefined ? [] : [place.aside]), ...settled];
    const detail = args.flag("why") ? "all" : "folded";
    return {
      exit: errors ? 1 : 0,
      text: proofreadText(examined, {
        width: io.width,
        detail,
        logbook: settled.length === 0 ? "as it was" : "put in order",
      }),
      json: proofreadDocument(examined),
      ...(said.length === 0 ? {} : { aside: saidOnce(said) }),
    };
  },
};
