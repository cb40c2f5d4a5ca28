// The day of an entry, as typed.

import { isIsoDate } from "@sealtrend/core";
import type { Args } from "../command.ts";
import type { Io } from "../io.ts";
import { usage } from "./usage.ts";

/** The value of --date; undefined where it is left out. @throws Stop 2 for what is no day, or a day to come */
export const typedDay = (args: Args, { today }: Io): string | undefined => {
  const date = args.text("date")?.trim();
  if (date === undefined) return undefined;
  if (!isIsoDate(date))
    throw usage("date-bad", `--date "${date}"`, "a day as year-month-day", `--date ${today}`);
  if (date > today)
    throw usage(
      "date-future",
      `--date ${date} lies ahead; today is ${today}`,
      "a day that has been",
      `--date ${today}`,
    );
  return date;
};
