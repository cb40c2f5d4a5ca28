// manual: the manual page, for `man`.

import type { Command } from "../command.ts";
import { manualPage } from "../render/manual.ts";

/** @param table - every command, this one too, once all are known */
export const manualOf = (table: () => readonly Command[]): Command => ({
  name: "manual",
  summary: "the manual page for man: every command and option in one place",
  examples: ["sealtrend manual > sealtrend.1"],
  positionals: [],
  options: [],
  run: () => {
    const text = manualPage(table());
    return Promise.resolve({ exit: 0, text, json: { schema: "sealtrend/manual@1", page: text } });
  },
});
