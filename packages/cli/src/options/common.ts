// The options every command takes.

import type { Option } from "../command.ts";

const group = "Common options";

export const commonOptions: readonly Option[] = [
  {
    group,
    name: "logbook",
    value: "DIR",
    help: "the folder with your engines (default SEALTREND_LOGBOOK, else ./logbook if there, else your user data folder)",
  },
  { group, name: "json", help: "the answer as one JSON document" },
  {
    group,
    name: "units",
    value: "UNIT",
    help: "units of the answer",
    choices: ["psi", "kPa", "bar", "MPa", "kgf/cm2", "us", "metric"],
  },
  { group, name: "no-color", help: "no colour" },
  { group, name: "ascii", help: "plain letters only, no drawing characters" },
  { group, name: "no-input", help: "ask nothing" },
  { group, name: "as-of", value: "DATE", help: "answer as on that day, such as 2026-05-03 (default today)" },
  { group, name: "why", help: "the detail behind the answer" },
  { group, name: "help", alias: "h", help: "this page" },
];
