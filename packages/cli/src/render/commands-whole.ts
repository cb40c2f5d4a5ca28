// Commands within sentences: a command that is broken across two lines cannot be copied.

import { displayWidth } from "./width.ts";

/** Our command's words, up to a sign that ends it. Words that are held together already count as one. */
const command = /\bsealtrend(?: (?:[^ \t\n"),;]*"[^"\n]*"|[^ \t\n"),;]*[^ \t\n"),;:.]))+/g;
/** Columns of the signs around it: `(`, `),`. */
const signs = 3;
/** Words of a sentence that goes on behind a command. */
const goesOn =
  /^(?:and|beside|command|first|is|itself|lists|or|says|shows|takes|tells|then|there|to|while|with|writes)$/;

/** A text in which no line ends within a command of less than `most` columns: its blanks are no-break spaces. */
export const commandsWhole = (text: string, most: number): string =>
  text.includes("sealtrend ")
    ? text.replace(command, (found) => {
        const own = ownWords(found);
        const whole = own.replaceAll(" ", "\u00a0");
        return displayWidth(whole) + signs > most ? found : whole + found.slice(own.length);
      })
    : text;

/** Where a line has its first command, with the signs around it. */
export const firstCommand = (
  line: string,
): { readonly before: string; readonly command: string; readonly after: string } | undefined => {
  const found = line.matchAll(command).next().value;
  if (found === undefined) return undefined;
  const from = line[found.index - 1] === "(" ? found.index - 1 : found.index;
  const end = found.index + ownWords(found[0]).length;
  const to = end + (/^\S*/.exec(line.slice(end))?.[0].length ?? 0);
  return { before: line.slice(0, from), command: line.slice(from, to), after: line.slice(to) };
};

const ownWords = (found: string): string => {
  const words = found.match(/(?:[^ "]|"[^"]*")+/g) ?? [];
  const end = words.findIndex((word) => goesOn.test(word));
  return (end < 0 ? words : words.slice(0, end)).join(" ");
};
