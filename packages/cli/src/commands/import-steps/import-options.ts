// The options of `import`: what the sheet does not say, the map, and whether to write.

import type { Option } from "../../command.ts";
import { wordsOfField } from "../engine-options.ts";
import { grouped } from "../grouped.ts";

const sheet = "What the sheet does not say";
const engines = "Engines";

/** What the map file can say too; with one, an option fills what it leaves open. */
const sheetOptions: readonly Option[] = [
  {
    ...grouped(sheet, "unit", "UNIT", "unit of the readings; % is percent lost"),
    choices: ["psi", "kPa", "bar", "MPa", "kgf/cm2", "%", "% held"],
  },
  {
    ...grouped(sheet, "what", "KIND", "kind of reading"),
    choices: [
      "dry",
      "wet",
      "first-stroke",
      "running",
      "snap-throttle",
      "leak-down",
      "leak-down-oiled",
      "leak-down-lower",
    ],
  },
  {
    ...grouped(sheet, "dates", "ORDER", "how to read 11/12/2026: day, month or year first"),
    choices: ["dmy", "mdy", "ymd"],
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
  grouped(sheet, "by", "WHO", "who measured: me, shop, seller, or a name"),
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
    choices: ["utf-8", "utf-16le", "utf-16be", "windows-1252"],
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
  { name: "again", help: "keep what is recorded on its day with other figures too, as a test of its own" },
  ...sheetOptions,
  grouped(engines, "engine", "ID", "the engine, for a sheet of one"),
  {
    ...grouped(engines, "ignition", "spark", "of engines that are new (default unknown)"),
    ...wordsOfField("ignition"),
  },
];
