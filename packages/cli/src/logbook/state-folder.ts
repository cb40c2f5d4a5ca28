// Where the user's system keeps what a program remembers between its runs: never the records, which stay in the logbook.

import { isAbsolute, join } from "node:path";
import type { World } from "./world.ts";

/** `$XDG_STATE_HOME/sealtrend`; a relative value is ignored, as its standard asks. Undefined where no home is known. */
export const stateFolder = ({ env, home, platform }: World): string | undefined => {
  const own = platform === "win32" ? env.LOCALAPPDATA : env.XDG_STATE_HOME;
  const usual = platform === "win32" ? join(home, "AppData", "Local") : join(home, ".local", "state");
  const state = own !== undefined && isAbsolute(own) ? own : usual;
  return isAbsolute(state) ? join(state, "sealtrend") : undefined;
};
