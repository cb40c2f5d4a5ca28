// Which test an entry goes to: a new one of the day, one that is named, or the latest.

import { isIsoDate } from "@sealtrend/core";
import type { Args } from "../command.ts";
import type { Io } from "../io.ts";
import { usage } from "./usage.ts";

export type Target =
  | { readonly kind: "new"; readonly date: string }
  | { readonly kind: "named"; readonly test: string }
  | { readonly kind: "latest" };

/** @throws Stop 2 for a day that is none or lies ahead, and for two places at once */
export const entryTarget = (args: Args, { today }: Pick<Io, "today">): Target => {
  const named = args.text("test");
  const date = args.text("date");
  const latest = args.flag("same-test");
  if (named !== undefined && latest)
    throw usage("target-twice", "--test and --same-test together", "one of the two", "leave one out");
  if (named === undefined && !latest) return { kind: "new", date: dayOf(date, today) };
  if (args.flag("new"))
    throw usage(
      "target-twice",
      "a new engine has no test to add to",
      "--new alone",
      "leave --test and --same-test out",
    );
  if (date !== undefined)
    throw usage(
      "date-twice",
      `--date ${date} with ${latest ? "--same-test" : "--test"}`,
      "no date: that test has its own",
      "leave --date out",
    );
  return named === undefined ? { kind: "latest" } : { kind: "named", test: named };
};

const dayOf = (date: string | undefined, today: string): string => {
  if (date === undefined) return today;
  if (!isIsoDate(date))
    throw usage("date-bad", `--date "${date}"`, "a day as year-month-day", `--date ${today}`);
  if (date > today)
    throw usage(
      "date-future",
      `--date ${date} lies ahead; today is ${today}`,
      "the day of the test",
      `--date ${today}`,
    );
  return date;
};
