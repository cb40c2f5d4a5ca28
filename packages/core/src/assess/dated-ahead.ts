// What is dated after today, which a slip of the pen does: it is read all the same, and told.

import type { EngineRecord } from "../record/index.ts";

/** `test 2031-05-01a`, `valve job of 2031-06-02`: tests, services, notes, then measurements. @param today - ISO */
export const datedAhead = (
  { tests, services, notes, measurements }: EngineRecord,
  today: string,
): readonly string[] => [
  ...tests.filter(({ date }) => date > today).map(({ id }) => `test ${id}`),
  ...[...services, ...notes].filter(({ date }) => date > today).map(({ date, what }) => `${what} of ${date}`),
  ...measurements
    .filter(({ date }) => date > today)
    .map(({ date, part, quantity }) => `${part} ${quantity} of ${date}`),
];
