// show: the verdict on one test.

import { assessTest } from "@sealtrend/core";
import type { Command } from "../command.ts";
import { showDocument } from "../documents/show-document.ts";
import { nodeWorld } from "../logbook/world.ts";
import { showScreen } from "../render/show/show.ts";
import { pressureUnit, unitRead } from "../render/units.ts";
import { readFaultTables } from "./fault-tables.ts";
import { pickRecord, pickTest, saidAside } from "./pick.ts";
import { readRulesFile } from "./rule-sheet.ts";

export const show: Command = {
  name: "show",
  summary: "the verdict on one test: which cylinder lags, and what to test next",
  examples: ["sealtrend show tractor", "sealtrend show tractor --test 2025-04-05a --why"],
  positionals: [{ name: "ENGINE", help: "the engine; may be left out where there is only one", need: "may" }],
  options: [
    { name: "test", value: "ID", help: "which test (default the latest)" },
    { name: "rules", value: "FILE", help: "hold it against the rules of this sheet" },
    { name: "faults", value: "DIR", help: "tell causes by the tables in this folder" },
  ],
  run: async (args, io) => {
    const { logbook, record } = await pickRecord(args, io);
    const path = args.text("rules");
    const rules = path === undefined ? undefined : await readRulesFile(nodeWorld(io), path, io.width);
    const dir = args.text("faults");
    const tables = dir === undefined ? undefined : readFaultTables(nodeWorld(io), dir, io.width);
    const assessment = assessTest(record, pickTest(record, args.text("test")), {
      ...(rules === undefined ? {} : { rules: rules.sheet.rules }),
      ...(tables === undefined ? {} : { faults: tables.faults }),
    });
    const unit = pressureUnit(args.text("units"), logbook.facts, unitRead(assessment));
    const lines = showScreen(assessment, {
      unit,
      width: io.width,
      detail: args.flag("why") ? "why" : "short",
      rows: 24,
    });
    const aside = (rules?.aside ?? "") + (tables?.aside ?? "") + (saidAside(logbook).aside ?? "");
    const json = {
      ...showDocument(assessment),
      faults: tables === undefined ? undefined : { from: tables.from },
    };
    return { exit: 0, text: `${lines.join("\n")}\n`, json, ...(aside === "" ? {} : { aside }) };
  },
};
