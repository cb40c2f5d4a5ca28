// Where nobody is asked there is nothing to keep: the command line itself can be typed again.

import type { Args } from "../../command.ts";
import type { Session } from "./entry-session.ts";

export const idleSession = (args: Args): Session => ({
  args,
  answers: [],
  keep: () => undefined,
  isKept: () => false,
  save: (write) => write(),
  drop: () => undefined,
});
