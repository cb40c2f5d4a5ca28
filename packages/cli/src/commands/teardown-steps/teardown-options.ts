// The options of `teardown`.

import { instrumentWords } from "@sealtrend/core/parts";
import type { Option } from "../../command.ts";
import { grouped } from "../grouped.ts";
import { byWords } from "../dated-row.ts";

const start = "What holds for the first line, until a line says otherwise";

export const teardownOptions: readonly Option[] = [
  {
    name: "from",
    value: "FILE",
    help: "lines from this file (default standard input), a part each; every shape: sealtrend how teardown --why",
  },
  {
    name: "teardown",
    value: "N",
    help: "which one: 1 the first time the engine was apart (default the newest)",
  },
  { name: "again", help: "lines that are recorded already are kept too, as repeats" },
  { name: "new-teardown", help: "begin the next one: the engine is apart again" },
  {
    ...grouped(start, "unit", "UNIT", "unit of figures that stand without one"),
    choices: ["mm", "in", "um", "thou"],
  },
  {
    ...grouped(start, "instrument", "NAME", "what measures"),
    words: instrumentWords,
    orElse: "what you call it",
  },
  grouped(start, "resolution", "0.01mm", "the finest step that is read off it"),
  { ...grouped(start, "by", "WHO", "who measured"), ...byWords },
  grouped(start, "date", "DATE", "the day of measuring (default today)"),
  {
    ...grouped(start, "state", "STATE", "state of the parts (default as found)"),
    choices: ["as found", "cleaned", "new part", "after machining"],
  },
];
