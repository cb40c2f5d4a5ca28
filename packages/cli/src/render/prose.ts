// Sentences broken into lines, with each number kept beside its unit.

import { wrapText } from "./table.ts";

const units = "%|psi|kPa|bar|MPa|hPa|kgf/cm2|rpm|m|minutes";
const numberAndUnit = new RegExp(`(\\d) (${units})(?![a-z])`, "g");

/** As wrapText, but no line ends between a number and its unit. */
export const prose = (text: string, width: number, lead = ""): readonly string[] =>
  wrapText(text.replace(numberAndUnit, "$1\u00a0$2"), width, lead);
