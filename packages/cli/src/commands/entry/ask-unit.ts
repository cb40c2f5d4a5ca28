// Readings that were typed without a unit, on a terminal: it is asked for, or the gauge whose unit is known.

import { gaugeUnits } from "@sealtrend/core/parts";
import type { Args, Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import { prose } from "../../render/prose.ts";
import { askPerson } from "../kept/ask-person.ts";
import type { EntryContext } from "./entry-context.ts";
import { entryRows } from "./entry-rows.ts";
import { isLeak, namesFor } from "./entry-unit.ts";
import { kindsGiven } from "./entry-options.ts";

interface Asking extends EntryContext {
  readonly say: (lines: readonly string[]) => void;
  readonly leave: (expected: string) => Stop;
}

/** The command line with the unit, or with the gauge. @throws Stop 2 where the person leaves */
export const askUnit = async (args: Args, io: Io, asking: Asking): Promise<Args> => {
  if (!io.interactive) return args;
  const { faults } = entryRows(args, asking);
  if (faults.length === 0 || faults.some(({ code }) => code !== "unit-open")) return args;
  const kinds = kindsGiven(args);
  const names =
    args.text("gauge") === undefined
      ? [...new Set(kinds.flatMap((what) => namesFor(what, asking.gauges, asking.test)))]
      : [];
  const units = kinds.every(isLeak) ? [...gaugeUnits, "%"] : gaugeUnits;
  const choices = [...names, ...units].join(", ");
  for (;;) {
    const question = `unit of the readings${names.length === 0 ? "" : ", or the gauge"} (${choices}): `;
    const answer = await askPerson(io, question, { takes: "typed now" });
    if (answer === undefined || answer === "q") throw asking.leave("the unit of the readings");
    const unit = units.find((name) => name.toLowerCase() === answer.toLowerCase());
    const option = names.includes(answer) ? "gauge" : unit === undefined ? undefined : "unit";
    if (option !== undefined) return withText(args, option, unit ?? answer);
    asking.say(prose(`one of ${choices}`, io.width, "  "));
  }
};

const withText = (args: Args, option: string, text: string): Args => ({
  ...args,
  text: (name) => (name === option ? text : args.text(name)),
});
