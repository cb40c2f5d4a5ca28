// The options of `amend`: which entry, what is to stand there, and why.

import { conditionKinds, gaugeUnits, rowKinds } from "@sealtrend/core/parts";
import type { Option } from "../../command.ts";
import { grouped } from "../grouped.ts";
import { conditionOptions } from "../entry/entry-options.ts";

const which = "Which entry";
const facts = "Facts of the test (- takes one out)";

/** As `enter` has them. */
const sameFacts = (...names: readonly string[]): readonly Option[] =>
  conditionOptions.filter(({ name }) => names.includes(name)).map((option) => ({ ...option, group: facts }));

export const amendOptions: readonly Option[] = [
  grouped(which, "test", "ID", "the test, or latest"),
  { ...grouped(which, "what", "KIND", "the row"), words: rowKinds },
  grouped(which, "take", "N", "which of the repeats"),
  grouped(which, "of-gauge", "NAME", "the row read by that gauge; - by one not named"),
  grouped(which, "cylinder", "LABEL", "the cylinder"),
  grouped("What stands there", "to", "141", "the reading; x if it was not taken"),
  grouped("What stands there", "because", "TEXT", 'the reason, kept beside the entry: "paper says 141"'),
  grouped(facts, "date", "DATE", "the day of the test; it keeps its name"),
  grouped(facts, "meter", "N", "hours, km or miles on the meter"),
  { ...grouped(facts, "unit", "UNIT", "unit of the readings"), words: [...gaugeUnits, "%"] },
  grouped(facts, "gauge", "NAME", "which gauge; with --cylinder it picks the row, as --of-gauge does"),
  ...sameFacts(...Object.keys(conditionKinds), "by"),
  grouped(facts, "note", "TEXT", "the note"),
  grouped(
    facts,
    "set-aside",
    "TEXT",
    'leave the test out of all that is told, and why: "wrong adapter"; - takes it in again',
  ),
];
