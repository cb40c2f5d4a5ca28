// The options of the command line that began an entry: kept with it, checked when it is read back, and joined with those typed now.

import type { Args, Option } from "../../command.ts";
import type { Unfinished } from "../../logbook/unfinished-text.ts";

/** @param options - those that are kept */
export const optionsTyped = (
  args: Args,
  options: readonly Option[],
): Pick<Unfinished, "options" | "flags"> => ({
  options: Object.fromEntries(
    options.flatMap(({ name, value }): (readonly [string, string])[] => {
      const text = value === undefined ? undefined : args.text(name);
      return text === undefined ? [] : [[name, text]];
    }),
  ),
  flags: options.flatMap(({ name, value }) => (value === undefined && args.flag(name) ? [name] : [])),
});

/** Whether all of them could have been typed. */
export const fitsOptions = (
  { options: kept, flags }: Pick<Unfinished, "options" | "flags">,
  options: readonly Option[],
): boolean =>
  flags.every((name) => options.some((one) => one.name === name && one.value === undefined)) &&
  Object.entries(kept).every(([name, text]) =>
    options.some(
      (one) => one.name === name && one.value !== undefined && (one.choices?.includes(text) ?? text !== ""),
    ),
  );

/** Options of which one excludes the others: which test, or which day. */
const targets = ["test", "same-test", "date"];

/** What is typed now wins. The day stays that on which the entry was begun. @param options - those that are kept */
export const withKept = (
  typed: Args,
  { options: kept, flags, day }: Unfinished,
  options: readonly Option[],
): Args => {
  const isAimed = options.some(
    ({ name, value }) =>
      targets.includes(name) && (value === undefined ? typed.flag(name) : typed.text(name) !== undefined),
  );
  const holds = (name: string): boolean => !(isAimed && targets.includes(name));
  const isDated = isAimed || targets.some((name) => Object.hasOwn(kept, name) || flags.includes(name));
  const values = new Map(Object.entries(isDated ? kept : { ...kept, date: day }));
  return {
    ...typed,
    text: (name) => typed.text(name) ?? (holds(name) ? values.get(name) : undefined),
    flag: (name) => typed.flag(name) || (holds(name) && flags.includes(name)),
  };
};
