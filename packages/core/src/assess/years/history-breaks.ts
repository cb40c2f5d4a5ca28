// Where the history of a cylinder begins anew: at work on it.

import type { HistoryService } from "../../history/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";

/** Work that starts a new history. A test on the day of the work counts as after it; of several that day the first is
 *  before. */
export const workBreaks = (
  { engine, services }: EngineRecord,
  counted: readonly { readonly test: Test }[],
): HistoryService[] => {
  const place = (labels: readonly string[]): number[] =>
    labels.map((label) => engine.cylinders.indexOf(label));
  return services
    .filter(({ newBaseline }) => newBaseline.length > 0)
    .map(({ date, what, cylinders, newBaseline }) => {
      const earlier = counted.filter(({ test }) => test.date < date).length;
      const sameDay = counted.filter(({ test }) => test.date === date).length;
      return {
        afterTests: earlier + (sameDay > 1 ? 1 : 0),
        touched: place([...new Set([...cylinders, ...newBaseline])]),
        newBaseline: place(newBaseline),
        why: `${what} ${date}`,
      };
    });
};
