// Calendar dates as day numbers. Dates stay text; nothing here goes through a clock or a time zone.

const shape = /^(\d{4})-(\d{2})-(\d{2})$/;
const dayLength_ms = 86_400_000;

/** Days of a year, for slopes and differences. */
export const daysInYear = 365.25;

/** Whether a text is a day `YYYY-MM-DD` that every calendar has: of 1900 to 2100, the 28th at the latest. Nearly all are, and to
 *  see it takes no pattern. */
export const isPlainDay = (text: string): boolean => {
  if (text.length !== 10 || text.charCodeAt(4) !== 45 || text.charCodeAt(7) !== 45) return false;
  const [year, month, day] = [partOf(text, 0, 4), partOf(text, 5, 7), partOf(text, 8, 10)];
  return year >= 1900 && year <= 2100 && month >= 1 && month <= 12 && day >= 1 && day <= 28;
};

/** NaN where one of them is no digit. */
const partOf = (text: string, from: number, to: number): number => {
  let value = 0;
  for (let at = from; at < to; at += 1) {
    const digit = text.charCodeAt(at) - 48;
    value = digit >= 0 && digit <= 9 ? 10 * value + digit : NaN;
  }
  return value;
};

/** Whole days since 1970-01-01.
 *  @param date - `YYYY-MM-DD`, a day that exists  @throws RangeError for anything else */
export const dayNumber = (date: string): number => {
  if (isPlainDay(date))
    return Date.UTC(partOf(date, 0, 4), partOf(date, 5, 7) - 1, partOf(date, 8, 10)) / dayLength_ms;
  const [, year, month, day] = shape.exec(date) ?? [];
  const since = Date.UTC(Number(year), Number(month) - 1, Number(day));
  const there = new Date(since);
  // a day past the end of its month is another day, a year below 100 another century
  const exists = there.getUTCDate() === Number(day) && there.getUTCFullYear() === Number(year);
  if (!exists || there.getUTCMonth() !== Number(month) - 1)
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
