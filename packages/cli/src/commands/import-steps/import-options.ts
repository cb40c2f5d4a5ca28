// The options of `import`: what the sheet does not say, the map, and whether to write.

import { gaugeUnits, mapEntries, mapSource } from "@sealtrend/core/parts";
import type { Command, Option } from "../../command.ts";
import { encodings } from "../../logbook/encoding.ts";
import { wordsOfField } from "../engine-options.ts";
import { readingOptions } from "../entry/entry-options.ts";
import { grouped } from "../grouped.ts";

const sheet = "What the sheet does not say";
const engines = "Engines";

/** What the map file can say too; with one, an option fills what it leaves open. */
const sheetOptions: readonly Option[] = [
  {
    ...grouped(sheet, "unit", "UNIT", "unit of the readings"),
    choices: [...gaugeUnits, "%", "% held"],
    means: { "%": "percent lost", "% held": "percent held" },
  },
  {
    ...grouped(sheet, "what", "KIND", "kind of reading"),
    choices: readingOptions.map(({ name }) => name),
  },
  {
    ...grouped(sheet, "dates", "ORDER", "how its dates are written, where 11/12/2026 could be read two ways"),
    choices: ["dmy", "mdy", "ymd"],
    means: { dmy: "day first", mdy: "month first", ymd: "year first" },
  },
  {
    ...grouped(sheet, "decimal", "MARK", "what stands before the decimals"),
    choices: ["comma", "point"],
  },
  {
    ...grouped(sheet, "separator", "MARK", "what stands between the cells"),
    choices: ["comma", "semicolon", "tab"],
  },
  grouped(sheet, "gauge", "NAME", "the gauge or tester that was used"),
  {
    ...grouped(sheet, "by", "WHO", "who measured"),
    words: ["me", "shop", "seller"],
    orElse: "a name",
  },
  {
    ...grouped(sheet, "regulated", "PRESSURE", "supply pressure of a leak-down, where the sheet has none"),
    example: "80psi",
  },
  grouped(sheet, "date", "DATE", "the day, where all readings are of one"),
  {
    ...grouped(
      sheet,
      "sheet-encoding",
      "NAME",
      "how the file is encoded, where accented letters come out wrong",
    ),
    choices: encodings,
  },
];

export const importOptions: readonly Option[] = [
  { name: "write", help: "do it: without this nothing is written" },
  {
    name: "map",
    value: "FILE",
    example: "old-map.json",
    help: "how the sheet is read: used where the file is there, else laid down there for editing",
  },
  { name: "again", help: "a day recorded with other figures comes in all the same, as a test of its own" },
  ...sheetOptions,
  grouped(engines, "engine", "ENGINE", "the engine, for a sheet of one"),
  {
    ...grouped(engines, "ignition", "spark", "of engines that are new (default unknown)"),
    ...wordsOfField("ignition"),
  },
];

/** The words of the file that --map names. */
export const mapTerms: NonNullable<Command["terms"]> = {
  title: "What the file of --map may hold (JSON, by name)",
  list: [
    ...mapEntries.map(({ name, holds }) => ({ term: name, text: holds })),
    { term: "a source", text: mapSource },
  ],
};
