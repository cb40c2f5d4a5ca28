// How many columns a text takes on a terminal. No Intl.Segmenter: building one costs more than the rest of a start; for the
// same reason patterns with classes of Unicode are made where a text is not plain, and not before.

/** Nothing to steer with, a column each: Latin, the blank that holds a command together, punctuation, blocks and boxes. */
const plain = /^[\x20-\x7e\xa0-\xac\xae-\u02ff\u2010-\u2027\u2190-\u21ff\u2500-\u25ff]*$/;
// eslint-disable-next-line no-control-regex -- an escape takes no columns
const emphasis = /\x1b\[[\d;]*m/g;
const joins = (character: string): boolean =>
  /[\p{Mn}\p{Me}\p{Cf}\p{Cc}\p{Emoji_Modifier}\u1160-\u11ff]/u.test(character);
const isFlagLetter = (character: string): boolean => /[\u{1f1e6}-\u{1f1ff}]/u.test(character);
const isWide = (character: string): boolean =>
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\ua960-\ua97c\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff01-\uff60\uffe0-\uffe6\u{16fe0}-\u{1b2ff}\u{20000}-\u{3fffd}\p{Emoji_Presentation}]/u.test(
    character,
  );

/** Whether each character is one column, and is what it seems. */
export const isPlain = (text: string): boolean => plain.test(text);

/** Columns of one character: 0 for a mark that joins the one before, 2 for East Asian wide and emoji, else 1. */
export const characterWidth = (character: string): 0 | 1 | 2 => {
  if (isPlain(character)) return 1;
  if (joins(character)) return 0;
  return isWide(character) && !isFlagLetter(character) ? 2 : 1;
};

/** Columns that a text takes; the escapes of our own emphasis count as nothing. */
export const displayWidth = (text: string): number => {
  if (isPlain(text)) return text.length;
  let columns = 0;
  for (const character of text.replace(emphasis, "")) columns += characterWidth(character);
  return columns;
};

const fill = (text: string, width: number): string => " ".repeat(Math.max(0, width - displayWidth(text)));

/** Right-aligned in `width` columns; a text that is wider stays whole. */
export const padStart = (text: string, width: number): string => fill(text, width) + text;

/** Left-aligned in `width` columns; a text that is wider stays whole. */
export const padEnd = (text: string, width: number): string => text + fill(text, width);

/** At most `width` columns; what was cut off shows as `…`. For plain text: emphasise after cutting. */
export const cut = (text: string, width: number): string => {
  if (displayWidth(text) <= width) return text;
  if (width < 1) return "";
  let kept = "";
  let columns = 0;
  for (const character of text) {
    columns += characterWidth(character);
    if (columns > width - 1) break;
    kept += character;
  }
  return `${kept}…`;
};
