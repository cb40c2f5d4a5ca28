// Where a talk goes: on a terminal it is part of the answer; beside a document, or where nobody is asked, it is about the answer.

import type { Args } from "../../command.ts";
import type { Io } from "../../io.ts";

export const sayTo =
  (args: Args, io: Io, kind: "asked" | "told") =>
  (lines: readonly string[]): void => {
    const text = lines.map((line) => `${line}\n`).join("");
    if (kind === "asked" && !args.flag("json")) io.out(text);
    else io.err(text);
  };
