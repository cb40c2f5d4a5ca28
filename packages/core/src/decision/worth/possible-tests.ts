// Which tests the engine can still be put to, as it stands.

import type { OfferedTest } from "../input.ts";
import type { Job } from "../words.ts";

export type Access = "in-place" | "head-off" | "engine-out-closed" | "bottom-open" | "fully-open";

/** @source handbook/decision.md 3 */
export const accessOf = (done: readonly Job[]): Access => {
  const [head, bottom] = [done.includes("headOff"), done.includes("bottomOpen")];
  if (head) return bottom ? "fully-open" : "head-off";
  if (bottom) return "bottom-open";
  return done.includes("engineOut") ? "engine-out-closed" : "in-place";
};

/** Out of the vehicle it cranks with its own starter only and is condemned on no cold leak-down; with the bottom end open
 *  the leak-down asks that it can be turned.  @source handbook/decision.md 3 (common practice, handbook/trade.md J6) */
export const possibleTests: Readonly<Record<Access, readonly OfferedTest["what"][]>> = {
  "in-place": ["cranking", "leak-down"],
  "head-off": ["measurement"],
  "engine-out-closed": ["leak-down"],
  "bottom-open": ["leak-down", "measurement"],
  "fully-open": ["measurement"],
};

/** Whether how well it seals can still be tested. */
export const canBeTested = (done: readonly Job[]): boolean =>
  possibleTests[accessOf(done)].some((what) => what !== "measurement");
