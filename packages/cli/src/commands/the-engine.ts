// The engine that a command is about, as its first word.

import type { Positional } from "../command.ts";

export const theEngine: Positional = {
  name: "ENGINE",
  help: "the engine; may be left out where there is only one",
  need: "may",
};
