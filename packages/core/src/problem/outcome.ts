// What a calculation on somebody's data gives back: a value, or the list of what stood in the way.

import type { Problem } from "./problem.ts";

/** A value with what is worth a caution, or the problems that stood in the way. Nothing is thrown for wrong data. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T; readonly cautions: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A good outcome, with whatever is worth saying about it. */
export const good = <T>(value: T, cautions: readonly Problem[] = []): Outcome<T> => ({
  ok: true,
  value,
  cautions,
});

/** A failed outcome; at least one problem. @throws TypeError when the list is empty */
export const bad = (
  problems: readonly Problem[],
): { readonly ok: false; readonly problems: readonly Problem[] } => {
  if (problems.length === 0) throw new TypeError("bad: a failed outcome needs at least one problem");
  return { ok: false, problems };
};
