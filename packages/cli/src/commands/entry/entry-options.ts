// The options of `enter`, in one table: the kinds of reading, the facts of the day, where it goes.

import { conditionKinds, gaugeUnits, heardPlaces } from "@sealtrend/core/parts";
import type { Args, Option } from "../../command.ts";
import { wordsOfField } from "../engine-options.ts";

const readings = "Readings, in the order of the cylinder numbers; x where one was not taken";
const day = "The day";

const reading = (name: string, help: string, example: string, alias?: string): Option => ({
  name,
  value: "LIST",
  example,
  help,
  takes: "list",
  group: readings,
  ...(alias === undefined ? {} : { alias }),
});
const fact = (name: string, value: string, help: string, more: Partial<Option> = {}): Option => ({
  name,
  value,
  help,
  group: day,
  ...more,
});
/** A fact that is a word of a short list. */
const word = (name: string, value: string, help: string, orElse?: string): Option => {
  const words = conditionKinds[name]?.words ?? [];
  return fact(name, value, help, orElse === undefined ? { words } : { words, orElse });
};

const leak = '"74/80 72/80 73/80 75/80"';

/** Options that hold a row of readings, by the word of tests.csv. */
export const readingOptions: readonly Option[] = [
  reading("dry", "cranking compression", '"150 148 149 151"'),
  reading("wet", "the same after a little oil", '"150 148 149 151"'),
  reading("first-stroke", "the needle after the first stroke", '"150 148 149 151"'),
  reading("running", "one plug out, the engine idling", '"150 148 149 151"'),
  reading("snap-throttle", "the same, throttle snapped open", '"150 148 149 151"'),
  reading(
    "leak-down",
    'both dials as in "74/80 72/80", percent lost, or the cylinder side alone',
    leak,
    "differential",
  ),
  reading("leak-down-oiled", "leak-down after a little oil", leak),
  reading("leak-down-lower", "leak-down with the piston lower in the bore", leak),
];

/** The kinds of reading that were given. */
export const kindsGiven = (args: Args): readonly string[] =>
  readingOptions.map(({ name }) => name).filter((name) => args.list(name).length > 0);

const factOptions: readonly Option[] = [
  {
    ...reading(
      "heard",
      'where air was heard, a word for each cylinder such as "exhaust none crankcase:faint none"',
      '"exhaust none none none"',
    ),
    words: heardPlaces,
  },
  reading("oil", 'oil put in, ml a cylinder: "5 x 5 x"', '"5 x 5 x"'),
];

export const rowOptions: readonly Option[] = [...readingOptions, ...factOptions];

export const conditionOptions: readonly Option[] = [
  fact("date", "DATE", "day of the test (default today)"),
  fact("meter", "N", "hours, km or miles on the meter"),
  fact("unit", "UNIT", "unit of the readings (default the gauge's)", { choices: [...gaugeUnits, "%"] }),
  fact("gauge", "NAME", "which gauge or tester"),
  fact("altitude", "350m", "height of the place"),
  fact("station-pressure", "965hPa", "barometer at the place itself"),
  fact("qnh", "1016hPa", "sea-level pressure of the weather report, or altimeter setting"),
  fact("air", "22C", "air temperature"),
  fact("speed", "230rpm", "cranking speed"),
  fact("volts", "10.4", "battery volts while cranking"),
  fact("strokes", "6", "compression strokes each cylinder got"),
  word("engine-temp", "warm", "how warm the engine is", "a temperature"),
  word("throttle", "open", "how the throttle is held"),
  word("plugs", "all", "how many plugs are out at a time"),
  word("release", "defeated", "compression release"),
  fact("regulated", "80psi", "supply pressure of the leak-down"),
  fact("master", "43psi", "what the leak-down tester read on its master orifice that day"),
  fact("by", "WHO", "who read the gauge", { words: ["me", "shop", "seller"], orElse: "a name" }),
  fact("note", "TEXT", "anything else"),
];

export const placeOptions: readonly Option[] = [
  { name: "test", value: "ID", help: "add to that test (its name, or latest)", group: "Where it goes" },
  { name: "same-test", help: "add to the latest test, as --test latest does", group: "Where it goes" },
  { name: "new", help: "the engine is new: make it (with --cylinders)", group: "Where it goes" },
  { name: "cylinders", value: "4", help: "with --new: how many, or their labels", group: "Where it goes" },
  {
    name: "ignition",
    value: "spark",
    help: "with --new: how it fires (diesel, petrol and gas are understood)",
    group: "Where it goes",
    ...wordsOfField("ignition"),
  },
];
