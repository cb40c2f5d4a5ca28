// A command in one line: `sealtrend enter ENGINE [options]`.

import type { Command } from "../command.ts";

export const usageLine = ({ name, positionals }: Command): string =>
  [
    "sealtrend",
    name,
    ...positionals.map(({ name: word, need }) =>
      need === "must" ? word : `[${word}${need === "any" ? "..." : ""}]`,
    ),
    "[options]",
  ].join(" ");
