// A rule sheet of the user's own, from its file. Only here is the parser of formulas loaded.

import { resolve } from "node:path";
import { type RuleSheet, readRuleSheet } from "@sealtrend/core";
import { Stop } from "../command.ts";
import { faultText } from "../render/faults.ts";
import { readFile } from "../logbook/read-file.ts";
import { shown } from "../logbook/words.ts";
import type { World } from "../logbook/world.ts";

export interface RulesRead {
  readonly sheet: RuleSheet;
  /** Said on stderr. */
  readonly aside: string;
}

/** @param path - as typed  @throws Stop 1 with every fault of the sheet, 3 when it cannot be read */
export const readRulesFile = async (world: World, path: string, width: number): Promise<RulesRead> => {
  const file = readFile(world, resolve(world.cwd, path));
  const outcome = await readRuleSheet(file.text, shown(world.cwd, file.path));
  if (!outcome.ok) throw new Stop(1, outcome.problems);
  return { sheet: outcome.value, aside: faultText([...file.cautions, ...outcome.cautions], width) };
};
