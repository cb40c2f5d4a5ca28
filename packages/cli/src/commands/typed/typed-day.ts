// The day of an entry, as typed.

import { datesMeant, isIsoDate, problem } from "@sealtrend/core/parts";
import { type Args, Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import { usageFault } from "../usage.ts";

/** The value of --date; undefined where it is left out. What is no day is never taken for today.
 *  @param of - what it is the day of, for the mend  @throws Stop 2 for what is no day, or a day to come */
export const typedDay = (
  args: Args,
  { today }: Pick<Io, "today">,
  of: "the test" | "the work" | "the note" | "the measuring",
): string | undefined => {
  const typed = args.text("date")?.trim();
  if (typed === undefined) return undefined;
  const open = `--date YYYY-MM-DD, the day of ${of}`;
  if (!isIsoDate(typed)) {
    const ways = datesMeant(typed).filter((day) => day <= today);
    const { found } = problem("date-bad", { text: typed, ways });
    const mend = ways.length === 0 ? open : ways.map((day) => `--date ${day}`).join(" or ");
    throw new Stop(2, [usageFault("date-bad", `--date: ${found}`, "a day as year-month-day", mend)]);
  }
  if (typed > today)
    throw new Stop(2, [
      usageFault(
        "date-future",
        `--date ${typed} lies ahead; today is ${today}`,
        "a day that has been",
        `--date ${today} if it was today, else the day of ${of}`,
      ),
    ]);
  return typed;
};
