// Where the history of a cylinder begins anew: at work on it, and for leak-down at another tester.

import type { HistoryService } from "../history/index.ts";
import type { EngineRecord, Test } from "../record/index.ts";
import type { CountedTest } from "./counted-test.ts";

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

/** Another tester stretches the leak numbers, it does not shift them: contrasts begin anew there. Only tests that
 *  count can change the tester. @source handbook/statistics.md L.10 */
export const testerBreaks = ({ engine }: EngineRecord, counted: readonly CountedTest[]): HistoryService[] => {
  const all = engine.cylinders.map((_, i) => i);
  const full = counted.flatMap(({ values, use }, place) =>
    use === "full" ? [{ gauge: values.gauge, place }] : [],
  );
  return full.flatMap(({ gauge, place }, i) => {
    const before = full[i - 1];
    if (before === undefined || before.gauge === gauge) return [];
    return [{ afterTests: place, touched: all, newBaseline: all, why: "another tester", scale: "another" }];
  });
};
