// How long what was found stays true.

import { dateOfDay, dayNumber } from "../../quantity/index.ts";

/** Days that evidence stays true, unless work cured it. @source handbook/decision.md 2 (judgement: 12 months) */
const year = 365;

/** The earliest day whose evidence still holds on a day. */
export const currentSince = (today: string): string => dateOfDay(dayNumber(today) - year);

/** Whether something of that day is neither older than a year nor of the days to come. */
export const isCurrent = (date: string, today: string): boolean =>
  date >= currentSince(today) && date <= today;
