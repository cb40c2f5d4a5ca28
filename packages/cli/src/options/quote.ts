// Words as they would be typed again.

const plain = /^[\w@%+=:,./-]+$/;

export const quoted = (word: string): string =>
  plain.test(word) ? word : `"${word.replace(/["\\$`]/g, "\\$&")}"`;

/** The command line of these words, ready to type. */
export const typedLine = (words: readonly string[]): string => ["sealtrend", ...words.map(quoted)].join(" ");
