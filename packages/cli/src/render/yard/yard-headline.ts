// All engines of a yard in a sentence or two.

import type { YardTotals } from "@sealtrend/core/parts";

const engines = (n: number): string => `${n.toLocaleString("en-US")} engine${n === 1 ? "" : "s"}`;

/** How many lag, how many are suspect, and how many would be by luck. */
export const yardHeadline = ({ read, faulty, lagging, suspect, byLuck }: YardTotals): string => {
  const all = read + faulty;
  if (all === 0) return "No engine.";
  const whole =
    faulty === 0
      ? ""
      : `, ${read.toLocaleString("en-US")} read, ${faulty.toLocaleString("en-US")} with a fault (listed below)`;
  const found =
    read === 0
      ? ""
      : ` ${sayAll(read, lagging)} lagging, ${suspect === 0 ? "none" : suspect.toLocaleString("en-US")} suspect.`;
  const luck = read === 0 ? "" : ` By luck alone ${luckText(byLuck)} would be suspect.`;
  return `${engines(all)}${whole}.${found}${luck}`;
};

const sayAll = (read: number, lagging: number): string =>
  lagging === 0 && read > 0 ? "None" : lagging.toLocaleString("en-US");

/** Sound engines all, tested as these were. */
const luckText = (byLuck: number): string => {
  const whole = Math.round(byLuck);
  if (byLuck < 0.05) return "none";
  return whole === 0 ? `less than one (${byLuck.toFixed(1)})` : `about ${whole.toLocaleString("en-US")}`;
};
