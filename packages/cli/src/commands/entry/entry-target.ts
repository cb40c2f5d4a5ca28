// Which test an entry goes to: a new one of the day, one that is named, or the latest.

import type { Args } from "../../command.ts";
import type { Io } from "../../io.ts";
import { typedDay } from "../typed/typed-day.ts";
import { usage } from "../usage.ts";

export type Target =
  | { readonly kind: "new"; readonly date: string }
  | { readonly kind: "named"; readonly test: string }
  | { readonly kind: "latest" };

/** @throws Stop 2 for a day that is none or lies ahead, and for two places at once */
export const entryTarget = (args: Args, io: Pick<Io, "today">): Target => {
  const named = args.text("test");
  const date = args.text("date");
  const latest = args.flag("same-test");
  if (named !== undefined && latest)
    throw usage("target-twice", "--test and --same-test together", "one of the two", "leave --same-test out");
  if (named === undefined && !latest)
    return { kind: "new", date: typedDay(args, io, "the test") ?? io.today };
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
  return named === undefined || named === "latest" ? { kind: "latest" } : { kind: "named", test: named };
};
