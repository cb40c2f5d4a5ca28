// A record with a value for each of some words, or none at all.

/** A value for each of the words; undefined where one has none. */
export const valueForEach = <K extends string, T>(
  words: readonly K[],
  valueOf: (word: K) => T | undefined,
): Readonly<Record<K, T>> | undefined => {
  const values: Partial<Record<K, T>> = {};
  for (const word of words) values[word] = valueOf(word);
  return isWhole(words, values) ? values : undefined;
};

const isWhole = <K extends string, T>(
  words: readonly K[],
  values: Partial<Record<K, T>>,
): values is Record<K, T> => words.every((word) => values[word] !== undefined);
