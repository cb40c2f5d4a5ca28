// The options that were given, as words to type again.

import type { Args, Option } from "../../command.ts";
import { typedLine } from "../../options/quote.ts";

/** `sealtrend note boat --what "oil use" --value 0.4L/1000km`: shown by undo, and printed back if nothing was saved. */
export const typedWords = (args: Args, command: string, id: string, options: readonly Option[]): string => {
  const given = options.flatMap(({ name, takes }) =>
    (takes === "list" ? args.list(name) : [args.text(name)]).flatMap((value) =>
      value === undefined ? [] : [`--${name}`, value],
    ),
  );
  return typedLine([...command.split(" "), id, ...given]);
};
