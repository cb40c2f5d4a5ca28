// How long what was found stays true.

import { dateOfDay, dayNumber } from "../../quantity/index.ts";

/** Days that evidence stays true, unless work cured it. @source handbook/decision.md 2 (judgement: 12 months) */
const year = 365;

/** Whether something of that day is neither older than a year nor of the days to come. */
export const isCurrent = (date: string, today: string): boolean =>
  date >= dateOfDay(dayNumber(today) - year) && date <= today;
