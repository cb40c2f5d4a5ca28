// Pistons that were out: rings that ran are not put back, whatever the readings say of them.

import type { Service } from "../../record/index.ts";
import type { Opening } from "./choices.ts";
import type { Deciding } from "./deciding.ts";

/** New rings that are due because the pistons were out, whatever the readings say. */
export interface RingsDue {
  /** Hours since the rings of all cylinders were last new; absent where no meter tells. */
  readonly hours?: number;
  readonly source: string;
  /** As told to a mechanic. */
  readonly text: string;
}

/** Rings that ran longer than this are replaced once they were disturbed.
 *  @source TM 10-3930-647-14&P, second hand in handbook/teardown.md 5 and trade.md E2 */
const bedded = 50;

const source = "TM 10-3930-647-14&P";

const ringWork: readonly Service["what"][] = ["re-ring", "rebore", "rebuild"];

/** Undefined with the pistons in their bores, and where the meter shows that the rings of every cylinder ran less. Hours that
 *  nobody knows are taken for more, which is said. */
export const ringsDueOf = (
  { record: { engine, services, tests, notes }, today }: Deciding,
  opened: Opening | undefined,
): RingsDue | undefined => {
  if (opened !== "pistons-out" && opened !== "crank-out") return undefined;
  const meters = [...tests, ...services, ...notes].flatMap(({ date, meter }) =>
    date <= today && meter !== undefined ? [meter] : [],
  );
  const now = engine.meter === "h" && meters.length > 0 ? Math.max(...meters) : undefined;
  const renewed = engine.cylinders.map(
    (label) =>
      services.findLast(
        ({ what, date, cylinders }) => ringWork.includes(what) && date <= today && cylinders.includes(label),
      )?.meter,
  );
  const isReplaced = services.some(({ what }) => what === "meter replaced");
  const since = renewed.map((meter) => (meter === undefined || now === undefined ? Infinity : now - meter));
  const longest = isReplaced ? Infinity : Math.max(...since);
  if (longest >= 0 && longest < bedded) return undefined;
  const ran = `rings that ran ${String(bedded)} h or more are not put back but replaced (${source})`;
  return longest < Infinity
    ? { hours: longest, source, text: `the pistons are out: ${ran}; these ran ${longest.toFixed(0)} h` }
    : { source, text: `the pistons are out: ${ran}` };
};
