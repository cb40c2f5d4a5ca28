// Sheets of the user's own that a test is assessed by, as --rules and --faults name them.

import type { AssessOptions } from "@sealtrend/core";
import type { Args } from "../command.ts";
import type { Io } from "../io.ts";
import { nodeWorld } from "../logbook/world.ts";
import { readFaultTables } from "./fault-tables.ts";
import { readRulesFile } from "./rule-sheet.ts";

export interface OwnSheets {
  readonly options: Pick<AssessOptions, "rules" | "faults">;
  /** The fault tables that are the user's own; absent where none were named. */
  readonly faultsFrom?: readonly string[];
  /** Said on stderr. */
  readonly aside: string;
}

/** @throws Stop as the readers of either do */
export const ownSheets = async (args: Args, io: Io): Promise<OwnSheets> => {
  const path = args.text("rules");
  const rules = path === undefined ? undefined : await readRulesFile(nodeWorld(io), path, io.width);
  const dir = args.text("faults");
  const tables = dir === undefined ? undefined : readFaultTables(nodeWorld(io), dir, io.width);
  return {
    options: {
      ...(rules === undefined ? {} : { rules: rules.sheet.rules }),
      ...(tables === undefined ? {} : { faults: tables.faults }),
    },
    ...(tables === undefined ? {} : { faultsFrom: tables.from }),
    aside: (rules?.aside ?? "") + (tables?.aside ?? ""),
  };
};
