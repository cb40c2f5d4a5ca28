// The one gate for text that came from somebody's file: nothing that steers a terminal or hides itself gets past.

import { characterWidth, isPlain } from "./width.ts";

// Controls (C0, DEL, C1), lone surrogates, line and paragraph separators, every format character: bidi marks and
// overrides (061C, 200E-F, 202A-E, 2066-9), zero-width ones; then all else that shows as nothing (DI: fillers,
// tags), but for the variation selectors, which belong to ordinary emoji and East Asian names.
// Made where a text is not plain, and not before: its classes take as long as much of a start.
export const steering = (): RegExp =>
  /(?![\ufe00-\ufe0f\u{e0100}-\u{e01ef}])[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\p{Cf}\p{DI}]/u;

const visible = (character: string): string =>
  steering().test(character) ? `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}` : character;

/** The text with every steering or hidden character written out, as in `\u{1b}`; letters of all scripts stay.
 *  Cleaning twice changes nothing more.
 *  @param most - columns kept, a combining mark counted as one; a longer text ends in `…` */
export const clean = (text: string, most = 200): string => {
  if (text.length <= most && isPlain(text)) return text;
  let kept = "";
  let columns = 0;
  let shorter = "";
  for (const character of text) {
    const shown = visible(character);
    columns += shown === character ? Math.max(1, characterWidth(character)) : shown.length;
    if (columns > most) return `${shorter}…`;
    kept += shown;
    if (columns < most) shorter = kept;
  }
  return kept;
};
