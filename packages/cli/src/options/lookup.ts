// What a typed option means: `--dry`, `-o`, or an alias of either kind.

import type { Option } from "../command.ts";

export type Kind = "flag" | "one" | "list";

export const kindOf = (option: Option): Kind =>
  option.value === undefined ? "flag" : (option.takes ?? "one");

/** By the text typed, dashes included; a Map, so that `--__proto__` finds nothing. */
export type Lookup = ReadonlyMap<string, Option>;

/** An option, or a short one, as it is typed. */
export const dashed = (name: string): string => (name.length === 1 ? `-${name}` : `--${name}`);

/** Where two options share a name the first stands. */
export const lookupOf = (options: readonly Option[]): Lookup => {
  const lookup = new Map<string, Option>();
  for (const option of options)
    for (const name of [option.name, option.alias])
      if (name !== undefined && !lookup.has(dashed(name))) lookup.set(dashed(name), option);
  return lookup;
};
