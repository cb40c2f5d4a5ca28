// Small words of `import`: counts in digits, for there are many; spans of years.

import { daysOf } from "../../commands/import-steps/import-result.ts";

/** `1 reading`, `214 readings`. */
export const several = (n: number, noun: string): string => `${String(n)} ${noun}${n === 1 ? "" : "s"}`;

/** `2004 to 2026`, or the day where all are of one; empty for none. */
export const spanText = (tests: readonly { readonly date: string }[]): string => {
  const days = daysOf(tests);
  if (days === undefined) return "";
  const { from, to } = days;
  if (from === to) return `of ${from}`;
  const [first, last] = [from.slice(0, 4), to.slice(0, 4)];
  return first === last ? `${from} to ${to}` : `${first} to ${last}`;
};

/** The first few of many names, and how many there are more. */
export const fewOf = (names: readonly string[], most: number): string =>
  names.length <= most
    ? names.join(", ")
    : `${names.slice(0, most).join(", ")} and ${String(names.length - most)} more`;
