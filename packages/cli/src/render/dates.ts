// ISO dates as places on an axis. Dates stay text; nothing here goes through a local clock or time zone.

const shape = /^(\d{4})-(\d{2})-(\d{2})$/;
const dayLength = 86_400_000;

const daysInYear = 365.25;

/** Whole days since 1970-01-01.
 *  @param date - `YYYY-MM-DD`, a day that exists  @throws RangeError for anything else */
export const dayNumber = (date: string): number => {
  const [, year, month, day] = shape.exec(date) ?? [];
  const since = Date.UTC(Number(year), Number(month) - 1, Number(day));
  if (Number.isNaN(since) || new Date(since).toISOString().slice(0, 10) !== date)
    throw new RangeError(`dayNumber: a date must be YYYY-MM-DD and exist, got ${JSON.stringify(date)}`);
  return since / dayLength;
};

/** The date as a calendar year with fraction: 1 January is a whole number, so year ticks fall where they should.
 *  @throws RangeError for what is no date */
export const yearFraction = (date: string): number => {
  const year = date.slice(0, 4);
  const first = dayNumber(`${year}-01-01`);
  const last = dayNumber(`${year}-12-31`);
  return Number(year) + (dayNumber(date) - first) / (last - first + 1);
};

/** Years from one date to another, negative when it runs back; a year is 365.25 days. */
export const yearsBetween = (from: string, to: string): number =>
  (dayNumber(to) - dayNumber(from)) / daysInYear;

/** `2026-05` of `2026-05-02`. @throws RangeError for what is no date */
export const shortDate = (date: string): string => {
  dayNumber(date);
  return date.slice(0, 7);
};
