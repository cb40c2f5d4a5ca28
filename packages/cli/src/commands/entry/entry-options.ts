// The options of `enter`, in one table: the kinds of reading, the facts of the day, where it goes.

import type { Option } from "../../command.ts";
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
const fact = (name: string, value: string, help: string, choices?: readonly string[]): Option => ({
  name,
  value,
  help,
  group: day,
  ...(choices === undefined ? {} : { choices }),
});

const leak = '"74/80 72/80 73/80 75/80"';

/** Options that hold a row of readings, by the word of tests.csv. */
export const readingOptions: readonly Option[] = [
  reading("dry", "cranking compression", '"150 148 149 151"'),
  reading("wet", "the same after a little oil", '"150 148 149 151"'),
  reading("first-stroke", "the needle after the first stroke", '"150 148 149 151"'),
  reading("running", "one plug out, the engine idling", '"150 148 149 151"'),
  reading("snap-throttle", "the same, throttle snapped open", '"150 148 149 151"'),
  reading("leak-down", 'leak-down: "74/80 72/80", percent lost, or the cylinder side', leak, "differential"),
  reading("leak-down-oiled", "leak-down after a little oil", leak),
  reading("leak-down-lower", "leak-down with the piston lower in the bore", leak),
];

const factOptions: readonly Option[] = [
  reading("heard", 'where air was heard: "exhaust none crankcase:faint none"', '"exhaust none none none"'),
  reading("oil", 'oil put in, ml a cylinder: "5 x 5 x"', '"5 x 5 x"'),
];

export const rowOptions: readonly Option[] = [...readingOptions, ...factOptions];

export const conditionOptions: readonly Option[] = [
  fact("date", "DATE", "day of the test (default today)"),
  fact("meter", "N", "hours, km or miles on the meter"),
  fact("unit", "UNIT", "unit of the readings (default the gauge's)", [
    "psi",
    "kPa",
    "bar",
    "MPa",
    "kgf/cm2",
    "%",
  ]),
  fact("gauge", "NAME", "which gauge or tester"),
  fact("altitude", "350m", "height of the place"),
  fact("station-pressure", "965hPa", "barometer at the place itself"),
  fact("qnh", "1016hPa", "sea-level pressure of the weather report, or altimeter setting"),
  fact("air", "22C", "air temperature"),
  fact("speed", "230rpm", "cranking speed"),
  fact("volts", "10.4", "battery volts while cranking"),
  fact("strokes", "6", "compression strokes each cylinder got"),
  fact("engine-temp", "warm", "warm, part-warm, cold, or a temperature"),
  fact("throttle", "open", "open or closed"),
  fact("plugs", "all", "plugs out: all, or one at a time"),
  fact("release", "defeated", "compression release: active or defeated"),
  fact("regulated", "80psi", "supply pressure of the leak-down"),
  fact("master", "43psi", "leak-down tester on its master orifice that day"),
  fact("by", "WHO", "me, shop, seller, or a name"),
  fact("note", "TEXT", "anything else"),
];

export const placeOptions: readonly Option[] = [
  { name: "test", value: "ID", help: "add to that test", group: "Where it goes" },
  { name: "same-test", help: "add to the latest test", group: "Where it goes" },
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
