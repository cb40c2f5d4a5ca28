// The options of `amend`: which entry, what is to stand there, and why.

import { conditionKinds } from "@sealtrend/core/parts";
import type { Option } from "../../command.ts";
import { grouped } from "../grouped.ts";
import { conditionOptions } from "../entry/entry-options.ts";

const which = "Which entry";
const facts = "Facts of the test (- takes one out)";

const helpOf = (name: string): string =>
  conditionOptions.find((option) => option.name === name)?.help ?? name;

export const amendOptions: readonly Option[] = [
  grouped(which, "test", "ID", "the test, or latest"),
  grouped(which, "what", "KIND", "the row: dry, wet, leak-down, heard, oil …"),
  grouped(which, "take", "N", "which of the repeats"),
  grouped(which, "of-gauge", "NAME", "the row read by that gauge"),
  grouped(which, "cylinder", "LABEL", "the cylinder"),
  grouped("What stands there", "to", "141", "the reading; x if it was not taken"),
  grouped("What stands there", "because", "TEXT", 'the reason, kept beside the entry: "paper says 141"'),
  grouped(facts, "date", "DATE", "the day of the test; it keeps its name"),
  grouped(facts, "meter", "N", "hours, km or miles on the meter"),
  grouped(facts, "unit", "UNIT", "unit of the readings: psi, kPa, bar, MPa, kgf/cm2, %"),
  grouped(facts, "gauge", "NAME", "which gauge; with --cylinder it picks the row, as --of-gauge does"),
  ...Object.keys(conditionKinds).map((name) =>
    grouped(facts, name, conditionKinds[name]?.example ?? "", helpOf(name)),
  ),
  grouped(facts, "by", "WHO", "me, shop, seller, or a name"),
  grouped(facts, "note", "TEXT", "the note"),
  grouped(facts, "set-aside", "TEXT", 'why the test counts in nothing: "wrong adapter"; - takes it back'),
];
