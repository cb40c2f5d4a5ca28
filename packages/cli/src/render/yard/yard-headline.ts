// All engines of a yard in a few sentences.

import type { YardTotals } from "@sealtrend/core/parts";
import { wholeSentence } from "../words.ts";

const numberText = (n: number): string => n.toLocaleString("en-US");
const engines = (n: number): string => `${numberText(n)} engine${n === 1 ? "" : "s"}`;

/** How many are not to be run, need work or a test, how many lag or are suspect, and how many would by luck. */
export const yardHeadline = (totals: YardTotals): string => {
  const { read, faulty, lagging, suspect } = totals;
  const all = read + faulty;
  if (all === 0) return "No engine.";
  const whole =
    faulty === 0 ? "" : `, ${numberText(read)} read, ${numberText(faulty)} with a fault (see below)`;
  if (read === 0) return `${engines(all)}${whole}.`;
  const found = `${lagging === 0 ? "None" : numberText(lagging)} lagging, ${suspect === 0 ? "none" : numberText(suspect)} suspect.`;
  return `${engines(all)}${whole}. ${toDo(totals)} ${found} By luck alone ${luckText(totals)} would be lagging or suspect.`;
};

const toDo = ({ notRun, workNeeded, due }: YardTotals): string => {
  const parts = [
    ...(notRun === 0 ? [] : [`${numberText(notRun)} not to be run`]),
    ...(workNeeded === 0 ? [] : [`${numberText(workNeeded)} in need of work`]),
    `${due === 0 ? "none" : numberText(due)} due for a test`,
  ].join(", ");
  return wholeSentence(parts);
};

/** Sound engines all, tested as these were. */
const luckText = ({ byLuck, byLuckIs }: YardTotals): string => {
  const whole = Math.round(byLuck);
  if (byLuck < 0.05) return "none";
  if (whole === 0) return `less than one (${byLuck.toFixed(1)})`;
  return `${byLuckIs === "about" ? "about" : "at most about"} ${numberText(whole)}`;
};
