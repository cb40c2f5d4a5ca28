// Calendar dates as day numbers. Dates stay text; nothing here goes through a clock or a time zone.

const shape = /^(\d{4})-(\d{2})-(\d{2})$/;
const dayLength_ms = 86_400_000;

/** Days of a year, for slopes and differences. */
export const daysInYear = 365.25;

/** Whole days since 1970-01-01.
 *  @param date - `YYYY-MM-DD`, a day that exists  @throws RangeError for anything else */
export const dayNumber = (date: string): number => {
  const [, year, month, day] = shape.exec(date) ?? [];
  const since = Date.UTC(Number(year), Number(month) - 1, Number(day));
  if (Number.isNaN(since) || new Date(since).toISOString().slice(0, 10) !== date)
    throw new RangeError(`dayNumber: a date must be YYYY-MM-DD and exist, got ${JSON.stringify(date)}`);
  return since / dayLength_ms;
};

/** The date of a day number, rounded to the nearest day. @throws RangeError beyond the years 0 … 9999 */
export const dateOfDay = (day: number): string => {
  const date = new Date(Math.round(day) * dayLength_ms);
  const text = Number.isNaN(date.getTime()) ? "" : date.toISOString();
  if (!/^\d{4}-/.test(text)) throw new RangeError(`dateOfDay: day ${String(day)} lies outside the calendar`);
  return text.slice(0, 10);
};

/** Years from one date to another, negative when it runs back; a year is 365.25 days. */
export const yearsBetween = (from: string, to: string): number =>
  (dayNumber(to) - dayNumber(from)) / daysInYear;
