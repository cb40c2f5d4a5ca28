// What is said on stderr beside an answer.

import { clean } from "./clean.ts";
import { wrapText } from "./table.ts";
import { displayWidth } from "./width.ts";

/** A line each, none said twice. */
export const saidOnce = (lines: readonly string[]): string =>
  [...new Set(lines)].map((line) => `${line}\n`).join("");

/** The text with its long lines broken; a command at the end of a line stays whole, so that it can be copied. */
export const asideText = (text: string, width: number): string =>
  text
    .split("\n")
    .flatMap((line) => (displayWidth(line) <= width ? [clean(line)] : wrapText(wholeCommand(line), width)))
    .join("\n");

const wholeCommand = (line: string): string =>
  line.replace(/sealtrend [a-z].*$/, (command) => command.replaceAll(" ", "\u00a0"));
