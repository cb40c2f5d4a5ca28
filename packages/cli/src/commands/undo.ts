// undo: takes back the whole last command that wrote to the logbook.

import { join } from "node:path";
import { readLogbook } from "@sealtrend/core";
import { type Command, Stop } from "../command.ts";
import { type LogbookPlace, findLogbook } from "../logbook/find-logbook.ts";
import { readFileIfThere } from "../logbook/read-file.ts";
import { undo as takeBack } from "../logbook/undo.ts";
import { fileFault, shown } from "../logbook/words.ts";
import { nodeWorld } from "../logbook/world.ts";
import { undoDocument } from "../documents/undo-document.ts";
import { saidOnce } from "../render/aside.ts";
import { undoLine } from "../render/undo.ts";
import { refuseDemo } from "./refuse-demo.ts";

export const undo: Command = {
  name: "undo",
  summary: "take back the whole last command that wrote to the logbook",
  examples: ["sealtrend undo", "sealtrend undo --logbook ./logbook"],
  positionals: [],
  options: [],
  run: async (args, io) => {
    const world = nodeWorld(io);
    const place = findLogbook(world, "write", args.text("logbook"));
    const { root } = place;
    if (place.state === "new") throw nothingThere(place, shown(world.cwd, root));
    // Faults of the files are no reason not to take something back: only whether it is the demo is asked here.
    const own = readFileIfThere(world, join(root, "logbook.json"));
    const { logbook: facts } = readLogbook(own?.text ?? "{}", "logbook.json");
    refuseDemo({ world, root, place, facts, gauges: [], ids: [], asides: [] });
    const undone = await takeBack(world, root);
    const aside = saidOnce(undone.asides);
    return {
      exit: 0,
      text: `${undoLine(undone, io.width)}\n`,
      json: undoDocument(undone, world.cwd),
      ...(aside === "" ? {} : { aside }),
    };
  },
};

const nothingThere = ({ by }: LogbookPlace, file: string): Stop => {
  if (by === "user") return new Stop(1, [fileFault("undo-nothing", { file })]);
  const detail = by === "option" ? "--logbook" : "SEALTREND_LOGBOOK";
  return new Stop(3, [fileFault("logbook-missing", { file, detail })]);
};
