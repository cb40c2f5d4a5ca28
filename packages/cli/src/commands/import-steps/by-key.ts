// Things by what they have in common.

/** Each list in the order in which its members came. */
export const byKey = <T>(all: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, readonly T[]> => {
  const found = new Map<string, T[]>();
  for (const one of all) {
    const key = keyOf(one);
    const own = found.get(key);
    if (own === undefined) found.set(key, [one]);
    else own.push(one);
  }
  return found;
};
