// decide: what to do about the engine, with the evidence for and against, and what would change it.

import {
  type DecisionAssessment,
  type DecisionChoices,
  type EngineRecord,
  type Deciding,
  assessDecision,
  gatherForDecision,
  openings,
} from "@sealtrend/core/parts";
import type { Args, Command } from "../command.ts";
import { decideDocument } from "../documents/decide-document.ts";
import { decideScreen } from "../render/decide/decide.ts";
import { pressureUnit, unitRead } from "../render/units.ts";
import { decideOptions } from "./decide-steps/decide-options.ts";
import { typedAge } from "./decide-steps/typed-age.ts";
import { openedFurther } from "./decide-steps/opened-further.ts";
import { ownershipOf } from "./decide-steps/typed-ownership.ts";
import { typedPrices } from "./decide-steps/typed-prices.ts";
import { ownSheets } from "./own-sheets.ts";
import { pickRecord, pickTest, saidAside } from "./pick.ts";
import { theEngine } from "./the-engine.ts";

export const decide: Command = {
  name: "decide",
  summary: "the decision: leave it, watch it, test again, or work, and what would change it",
  examples: [
    "sealtrend decide tractor",
    "sealtrend decide tractor --opened pistons-in --engine-out --own 5y",
    "sealtrend decide mill --price work.reRing=620 --why",
  ],
  positionals: [theEngine],
  options: decideOptions,
  run: async (args, io) => {
    const { logbook, record } = await pickRecord(args, io);
    const prices = typedPrices(args);
    const ownership = await ownershipOf(args, io, record.engine);
    const own = await ownSheets(args, io);
    const choices: DecisionChoices = {
      ...choicesOf(args, record),
      today: io.today,
      prices,
      ...(ownership === undefined ? {} : { ownership }),
      ...typedAge(args, io.today),
      ...own.options,
    };
    const deciding = gatherForDecision(record, choices);
    const assessment = assessDecision(record, choices, deciding);
    const forGood = keptForGood(deciding, choices, assessment);
    const read = assessment.test === undefined ? undefined : unitRead(assessment.test);
    const unit = pressureUnit(args.text("units"), logbook.facts, read);
    const kept = forGood === undefined ? {} : { forGood };
    const detail = args.flag("why") ? "why" : "short";
    const lines = decideScreen(assessment, { unit, width: io.width, detail, ...kept });
    const further = openedFurther(record, choices.opened, io.today);
    const aside = own.aside + further + (saidAside(logbook).aside ?? "");
    const rules = args.text("rules");
    const json = {
      ...decideDocument(assessment, { unit: "kPa", ...kept }),
      rules: rules === undefined ? undefined : { from: rules },
      faults: own.faultsFrom === undefined ? undefined : { from: own.faultsFrom },
    };
    return { exit: 0, text: `${lines.join("\n")}\n`, json, ...(aside === "" ? {} : { aside }) };
  },
};

/** How far it is open, and the test to go by. */
const choicesOf = (
  args: Args,
  record: EngineRecord,
): Pick<DecisionChoices, "test" | "opened" | "engineOut"> => {
  const typed = args.text("opened");
  const opened = openings.find((one) => one === typed);
  const named = args.text("test");
  return {
    ...(named === undefined ? {} : { test: pickTest(record, named).id }),
    ...(opened === undefined ? {} : { opened }),
    ...(args.flag("engine-out") ? { engineOut: true } : {}),
  };
};

/** The same engine kept for good, where it is open and its age is known: a question of its own. */
const keptForGood = (
  deciding: Deciding,
  choices: DecisionChoices,
  { horizon, done }: DecisionAssessment,
): DecisionAssessment | undefined => {
  const { record } = deciding;
  const age = choices.renewed ?? record.engine.renewed;
  const asked = horizon.kind === "years" && done.length > 0 && age !== undefined;
  if (!asked) return undefined;
  return assessDecision(record, { ...choices, ownership: { kind: "for-good" } }, deciding);
};
