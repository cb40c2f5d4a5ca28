// How the sentences show the user's own text and lists of words.

/** The user's text on one line, cut where it is long: where it stands, it can be read whole. */
export const cutShort = (text: string): string => {
  const line = text.replace(/\s*[\r\n]+\s*/g, " ");
  return line.length <= longest ? line : `${[...line].slice(0, longest - 1).join("")}…`;
};
const longest = 60;

/** The same in quotes. */
export const quoted = (text: string): string => `"${cutShort(text)}"`;

/** Words with commas between. */
export const listed = (words: readonly string[]): string => words.join(", ");

/** `1 cell`, `2 cells`. */
export const plural = (n: number, one: string): string => `${String(n)} ${one}${n === 1 ? "" : "s"}`;
