// The options of `amend`: which entry, what is to stand there, and why.

import { conditionKinds } from "@sealtrend/core";
import type { Option } from "../../command.ts";
import { conditionOptions } from "../entry/entry-options.ts";

const which = "Which entry";
const facts = "Facts of the test (- takes one out)";

const of = (group: string, name: string, value: string, help: string): Option => ({
  group,
  name,
  value,
  help,
});

const helpOf = (name: string): string =>
  conditionOptions.find((option) => option.name === name)?.help ?? name;

export const amendOptions: readonly Option[] = [
  of(which, "test", "ID", "the test, or latest"),
  of(which, "what", "KIND", "the row: dry, wet, leak-down, heard, oil …"),
  of(which, "take", "N", "which of the repeats"),
  of(which, "of-gauge", "NAME", "the row read by that gauge"),
  of(which, "cylinder", "LABEL", "the cylinder"),
  of("What stands there", "to", "141", "the reading; x if it was not taken"),
  of("What stands there", "because", "TEXT", 'the reason, kept beside the entry: "paper says 141"'),
  of(facts, "date", "DATE", "the day of the test; it keeps its name"),
  of(facts, "meter", "N", "hours, km or miles on the meter"),
  of(facts, "unit", "UNIT", "unit of the readings: psi, kPa, bar, MPa, kgf/cm2, %"),
  of(facts, "gauge", "NAME", "which gauge; with --cylinder it picks the row, as --of-gauge does"),
  ...Object.keys(conditionKinds).map((name) =>
    of(facts, name, conditionKinds[name]?.example ?? "", helpOf(name)),
  ),
  of(facts, "by", "WHO", "me, shop, seller, or a name"),
  of(facts, "note", "TEXT", "the note"),
  of(facts, "set-aside", "TEXT", 'why the test counts in nothing: "wrong adapter"; - takes it back'),
];
