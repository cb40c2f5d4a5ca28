// Whether a text is a day of the calendar, never by way of a clock or a time zone.

const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** `YYYY-MM-DD`, 1900 to 2100. */
export const isDay = (text: string): boolean => {
  const [year, month, day] = (/^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? []).slice(1).map(Number);
  if (year === undefined || month === undefined || day === undefined) return false;
  const leap = month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = (monthLengths[month - 1] ?? 0) + (leap ? 1 : 0);
  return year >= 1900 && year <= 2100 && day >= 1 && day <= days;
};
