// A cylinder that cranks low though its leak-down is no worse than that of its fellows: the air is not lost past rings or
// valves, it never came in, or the chamber or the hose differs.

import type { Standing } from "../spread/index.ts";
import type { LeakValue } from "./leak/assess-leak-down.ts";
import type { LeakAndCranking } from "./leak/leak-and-cranking.ts";

/** Whether its low reading does not look like a leak. By the sizes of engine and tester where they are known, else by the
 *  bare comparison of the parts lost. @param dry - standing of its dry reading */
export const isLowWithoutLeak = (
  label: string,
  dry: Standing | undefined,
  { leakDown, cranking }: { readonly leakDown?: LeakValue; readonly cranking?: LeakAndCranking },
): boolean => {
  if (dry === undefined || dry === "even") return false;
  // a leak that stands out is one, even where it is too small for all of the low reading
  if (leakDown?.standing === "lagging" || leakDown?.standing === "suspect") return false;
  const explained = cranking?.cylinders.find((one) => one.label === label);
  return explained === undefined
    ? leakDown?.standing === "even" && !leakDown.flagged
    : explained.kind === "does-not-explain";
};
