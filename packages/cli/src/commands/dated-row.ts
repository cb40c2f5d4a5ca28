// What a line of `note` and one of `service` have in common: the day, the meter, who, and what else.

import { type Engine, plainNumber } from "@sealtrend/core/parts";
import type { Args, Option } from "../command.ts";
import type { Io } from "../io.ts";
import { typedDay } from "./typed/typed-day.ts";

/** What `--by` takes. */
export const byWords = { words: ["me", "shop"], orElse: "a name" } as const;

/** @param who - who saw it, or did it  @param note - what else can be said */
export const datedRowOptions = (who: string, note: string): readonly Option[] => [
  { name: "date", value: "DATE", help: "the day (default today)" },
  { name: "meter", value: "N", help: "hours, km or miles on the meter" },
  { name: "by", value: "WHO", help: who, ...byWords },
  { name: "note", value: "TEXT", help: note },
];

/** Their values by column.  @throws Stop 2 for what is no day */
export const datedRowValues = (args: Args, io: Io, of: Parameters<typeof typedDay>[2]) => ({
  date: typedDay(args, io, of) ?? io.today,
  meter: plainNumber(args.text("meter")?.trim() ?? ""),
  by: args.text("by") ?? "",
  note: args.text("note") ?? "",
});

/** Labels apart by blanks, as the table has them: `1,2` and `1 + 2` are typed too. */
export const labelsTyped = (text = ""): string =>
  text
    .trim()
    .split(/[\s,;+]+/)
    .join(" ");

/** ` in km`; empty where the meter is not known. */
export const inMeter = ({ meter }: Pick<Engine, "meter">): string =>
  meter === undefined ? "" : ` in ${meter}`;
