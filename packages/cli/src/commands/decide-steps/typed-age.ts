// When the rings were last new and the years they have left, as typed: for an engine that is kept for good.

import {
  type DecisionChoices,
  type FieldKind,
  engineFields,
  expectation,
  fieldValue,
} from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import { usage } from "../usage.ts";

/** @throws Stop 2 for what is no year or day until today, or no number of years */
export const typedAge = (args: Args, today: string): Pick<DecisionChoices, "renewed" | "yearsLeft"> => {
  const renewed = read(args, "renewed", engineFields.renewed);
  const left = read(args, "years-left", engineFields.yearsLeft);
  if (typeof renewed === "string" && renewed > today)
    throw usage(
      "renewed-ahead",
      `--renewed "${renewed}" is yet to come`,
      `a year or a day until ${today}`,
      `--renewed ${today.slice(0, 4)}`,
    );
  return {
    ...(typeof renewed === "string" ? { renewed } : {}),
    ...(typeof left === "number" ? { yearsLeft: left } : {}),
  };
};

const samples = { renewed: "2004", "years-left": "12" } as const;

/** By the grammar that engine.json has for it. */
const read = (args: Args, name: keyof typeof samples, field: FieldKind | undefined): unknown => {
  const typed = args.text(name);
  if (typed === undefined || field === undefined) return undefined;
  const bare = name === "years-left" ? typed.trim().replace(/\s*(?:y|years?)$/i, "") : typed;
  const value = fieldValue(field, bare);
  if (value === undefined)
    throw usage(
      `${name}-bad`,
      `--${name} "${typed}"`,
      expectation(field),
      `--${name} ${/(?:18|19|20)\d\d/.exec(name === "renewed" ? typed : "")?.[0] ?? samples[name]}`,
    );
  return value;
};
