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
        const words = found.split(" ");
        const end = words.findIndex((word) => goesOn.test(word));
        const own = end < 0 ? words : words.slice(0, end);
        const whole = own.join("\u00a0");
        return displayWidth(whole) + signs > most ? found : [whole, ...words.slice(own.length)].join(" ");
      })
    : text;
