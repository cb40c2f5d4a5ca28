// How the sentences show the user's own text and lists of words.

/** The user's text in quotes. */
export const quoted = (text: string): string => `"${text}"`;

/** Words with commas between. */
export const listed = (words: readonly string[]): string => words.join(", ");

/** `1 cell`, `2 cells`. */
export const plural = (n: number, one: string): string => `${String(n)} ${one}${n === 1 ? "" : "s"}`;
