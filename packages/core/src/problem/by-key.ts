// Things by what they have in common.

/** The groups in the order in which their first members came, each with its members in theirs. */
export const byKey = <T>(
  all: readonly T[],
  keyOf: (one: T) => string,
): ReadonlyMap<string, readonly [T, ...T[]]> => {
  const found = new Map<string, [T, ...T[]]>();
  for (const one of all) {
    const key = keyOf(one);
    const own = found.get(key);
    if (own === undefined) found.set(key, [one]);
    else own.push(one);
  }
  return found;
};
