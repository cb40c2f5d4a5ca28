// What `engine set` changed of the limits for parts, in words: one line each.

import type { ClearanceLimit } from "@sealtrend/core/parts";
import { clearanceText } from "./engine-limits.ts";

/** Lines of one answer; the rest is counted. */
const most = 8;

/** The changes in the order of the file: `rod bearing clearance new 0.0010 to 0.0025 in`, `bore taper worn to 0.10 mm, was …`,
 *  `taken out: …`. */
export const limitChanges = (
  before: readonly ClearanceLimit[],
  after: readonly ClearanceLimit[],
): readonly string[] => {
  const old = new Map(before.map((limit) => [keyOf(limit), clearanceText(limit)]));
  const kept = new Set(after.map(keyOf));
  return [
    ...after.flatMap((limit) => {
      const [was, now] = [old.get(keyOf(limit)), clearanceText(limit)];
      if (was === now) return [];
      return [was === undefined ? now : `${now}, was ${was.slice(nameOf(limit).length + 1)}`];
    }),
    ...before.filter((limit) => !kept.has(keyOf(limit))).map((limit) => `taken out: ${clearanceText(limit)}`),
  ];
};

const nameOf = ({ part, quantity }: ClearanceLimit): string => `${part} ${quantity}`;

const keyOf = ({ part, quantity, label, at }: ClearanceLimit): string =>
  JSON.stringify([part, quantity, label, at]);

/** What was set, in a line, and a line for each where there are several. */
export const changesTold = (
  changes: readonly string[],
): { readonly said: string; readonly lines: readonly string[] } => {
  const [first] = changes;
  if (first === undefined) return { said: "the same limits, otherwise written", lines: [] };
  if (changes.length === 1) return { said: first, lines: [] };
  const shown = changes.slice(0, most);
  const left = changes.length - shown.length;
  const more = left === 0 ? [] : [`and ${String(left)} more (sealtrend engine show)`];
  return { said: `${String(changes.length)} limits`, lines: [...shown, ...more] };
};
