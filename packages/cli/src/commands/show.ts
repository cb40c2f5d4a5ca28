// show: the verdict on one test.

import { assessTest } from "@sealtrend/core";
import type { Command } from "../command.ts";
import { showDocument } from "../documents/show-document.ts";
import { showScreen } from "../render/show/show.ts";
import { pressureUnit, unitRead } from "../render/units.ts";
import { ownSheets } from "./own-sheets.ts";
import { pickRecord, pickTest, saidAside } from "./pick.ts";
import { theEngine } from "./the-engine.ts";

export const show: Command = {
  name: "show",
  summary: "the verdict on one test: which cylinder lags, and what to test next",
  examples: ["sealtrend show tractor", "sealtrend show tractor --test 2025-04-05a --why"],
  positionals: [theEngine],
  options: [
    { name: "test", value: "ID", help: "which test (default the latest)" },
    { name: "rules", value: "FILE", help: "judge by the rules in this sheet" },
    { name: "faults", value: "DIR", help: "rank the causes by the fault tables in this folder" },
  ],
  run: async (args, io) => {
    io.brief?.();
    const { logbook, record } = await pickRecord(args, io);
    const own = await ownSheets(args, io);
    const assessment = assessTest(record, pickTest(record, args.text("test")), own.options);
    const unit = pressureUnit(args.text("units"), logbook.facts, unitRead(assessment));
    const detail = args.flag("why") ? "why" : "short";
    const { width } = io;
    const faults = own.faultsFrom === undefined ? undefined : { from: own.faultsFrom };
    // one of the two is asked for, and each takes a while at the start
    const told = args.flag("json")
      ? { text: "", json: { ...showDocument(assessment), faults } }
      : {
          json: undefined,
          text: `${showScreen(assessment, { unit, width, detail, rows: 24 }).join("\n")}\n`,
        };
    const aside = own.aside + (saidAside(logbook).aside ?? "");
    return { exit: 0, ...told, ...(aside === "" ? {} : { aside }) };
  },
};
