// ISO dates as places on an axis and as column heads. Dates stay text; nothing here goes through a clock.

import { dayNumber } from "@sealtrend/core/parts";

/** The date as a calendar year with fraction: 1 January is a whole number, so year ticks fall where they should.
 *  @throws RangeError for what is no date */
export const yearFraction = (date: string): number => {
  const year = date.slice(0, 4);
  const first = dayNumber(`${year}-01-01`);
  const last = dayNumber(`${year}-12-31`);
  return Number(year) + (dayNumber(date) - first) / (last - first + 1);
};

/** `2026-05` of `2026-05-02`. @throws RangeError for what is no date */
export const shortDate = (date: string): string => {
  dayNumber(date);
  return date.slice(0, 7);
};
