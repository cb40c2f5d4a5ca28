// What a command may ask of its command line.

import { asWritten } from "../as-theirs.ts";
import type { Args, Command, Option } from "../command.ts";
import { kindOf, type Kind } from "./lookup.ts";
import type { Parsed } from "./parse.ts";

/** Asking for an option the command does not declare, or as another kind, is a slip of ours.
 *  @throws TypeError from text, list and flag */
export const argsOf = (
  { values, flags, positionals }: Parsed,
  options: readonly Option[],
  places: Command["positionals"],
): Args => {
  const paths = new Set(options.filter(({ value = "" }) => isPath.test(value)).map(({ name }) => name));
  const kinds = new Map(options.map((option) => [option.name, kindOf(option)]));
  const also = new Map(options.map((option) => [option.name, option.also] as const));
  const must = (name: string, kind: Kind): void => {
    const declared = kinds.get(name);
    if (declared !== kind)
      throw new TypeError(`args: --${name} is declared as ${declared ?? "nothing"}, asked as ${kind}`);
  };
  return {
    positionals: positionals.map((word, i) => {
      const place = places[i] ?? places.at(-1);
      return place?.need === "any" || isPath.test(place?.name ?? "") ? asWritten(word) : word;
    }),
    text: (name) => {
      must(name, "one");
      const value = values.get(name)?.[0];
      if (value === undefined) return undefined;
      return paths.has(name) ? asWritten(value) : (also.get(name)?.[value] ?? value);
    },
    list: (name) => {
      must(name, "list");
      return values.get(name) ?? [];
    },
    flag: (name) => {
      must(name, "flag");
      return (flags.get(name) ?? 0) > 0;
    },
  };
};

/** What stands for the name of a file or folder: that is opened, letter by letter as it was typed. */
const isPath = /FILE|DIR|PAGE/;
