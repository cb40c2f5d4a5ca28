// rules: the rules in force, their formulas, limits and sources; on an engine, with its maker's figures and its latest test.

import {
  type EngineRecord,
  type Rule,
  type RuleFinding,
  assessTest,
  rulesFor,
  shippedRules,
} from "@sealtrend/core";
import type { Command } from "../command.ts";
import { rulesDocument } from "../documents/rules-document.ts";
import { nodeWorld } from "../logbook/world.ts";
import { rulesScreen } from "../render/rules.ts";
import { pressureUnit } from "../render/units.ts";
import { pickRecord, pickTest, saidAside } from "./pick.ts";
import { readRulesFile } from "./rule-sheet.ts";

export const rules: Command = {
  name: "rules",
  summary: "the rules in force, with their limits and sources",
  examples: [
    "sealtrend rules",
    "sealtrend rules tractor --why",
    "sealtrend rules tractor --rules my-rules.csv",
  ],
  positionals: [
    { name: "ENGINE", help: "the rules for this engine, and what its latest test says to them", need: "may" },
  ],
  options: [
    { name: "rules", value: "FILE", help: "take the rules of this sheet in place of the usual ones" },
  ],
  run: async (args, io) => {
    const path = args.text("rules");
    const read = path === undefined ? undefined : await readRulesFile(nodeWorld(io), path, io.width);
    const sheet = read?.sheet.rules ?? shippedRules;
    const picked = args.positionals[0] === undefined ? undefined : await pickRecord(args, io);
    const record = picked?.record;
    const compared = sheet.filter(({ applies }) => applies.kind === "comparison");
    const { test, findings } = judged(record, sheet);
    const inForce =
      record === undefined
        ? sheet.filter(({ applies }) => applies.kind !== "comparison")
        : beside(findings, rulesFor(record.engine, sheet));
    const asked = args.text("units");
    const facts = picked?.logbook.facts ?? { demo: false };
    const lines = rulesScreen(
      {
        record,
        test,
        findings,
        inForce,
        compared: args.flag("why") ? compared : [],
        from: read?.sheet.file,
        left: compared.length,
      },
      {
        width: io.width,
        asked: asked === undefined ? undefined : pressureUnit(asked, facts, undefined),
        usual: pressureUnit(asked, facts, undefined),
      },
    );
    const aside = (read?.aside ?? "") + (picked === undefined ? "" : (saidAside(picked.logbook).aside ?? ""));
    return {
      exit: 0,
      text: `${lines.join("\n")}\n`,
      json: rulesDocument({ record, test, findings, inForce, compared, from: read?.sheet.file }),
      ...(aside === "" ? {} : { aside }),
    };
  },
};

/** With a master orifice read that day no percent but the maker's own stands beside it. */
const beside = (findings: readonly RuleFinding[], rules: readonly Rule[]): readonly Rule[] =>
  findings.some(({ id }) => id === "master")
    ? rules.filter(({ family, status }) => family !== "leak-down" || status === "engine record")
    : rules;

/** The findings on the latest test; none where there is no engine or no test. */
const judged = (
  record: EngineRecord | undefined,
  sheet: readonly Rule[],
): { readonly test?: string; readonly findings: readonly RuleFinding[] } => {
  if (record === undefined || record.tests.length === 0) return { findings: [] };
  const test = pickTest(record, undefined);
  return { test: test.id, findings: assessTest(record, test, { rules: sheet, causes: "left-out" }).rules };
};
