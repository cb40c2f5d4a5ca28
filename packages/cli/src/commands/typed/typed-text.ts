// Free text as typed: what a spreadsheet would run as a formula, or what steers a terminal, is not stored.

import { isFormula } from "@sealtrend/core/parts";
import type { Args, Fault } from "../../command.ts";
import { Stop } from "../../command.ts";
import { clean } from "../../render/clean.ts";
import { usageFault } from "../usage.ts";

// Controls, lone surrogates, separators of lines and paragraphs, marks that turn the direction of writing. A line end is
// not among them: it is stored as a blank.
const control = /(?![\n\r])[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** @param names - the options that hold free text; `-` alone, which takes a text out, passes  @throws Stop 2 with every fault */
export const checkTexts = (args: Args, names: readonly string[]): void => {
  const faults = names.flatMap((name) => {
    const text = args.text(name);
    return text === undefined || text.trim() === "-" ? [] : textFaults(name, text);
  });
  if (faults.length > 0) throw new Stop(2, faults);
};

const textFaults = (name: string, text: string): readonly Fault[] => {
  const bare = text.replace(control, " ").trim();
  if (bare !== text.trim())
    return [
      usageFault(
        "text-control",
        `--${name} "${clean(text)}" holds a character that is no letter and steers the screen`,
        "plain text",
        bare === "" || isFormula(bare)
          ? "type it again in plain letters"
          : `write --${name} "${clean(bare)}"`,
      ),
    ];
  if (!isFormula(text.trim())) return [];
  return [
    usageFault(
      "text-formula",
      `--${name} "${clean(text)}" begins like a spreadsheet formula`,
      "text that begins with a letter or a digit",
      `put a word in front of it: --${name} "text: ${clean(text.trim())}"`,
    ),
  ];
};
