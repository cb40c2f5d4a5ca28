// What a function has worked out before. The cylinders of an engine, and the engines of a yard, ask for the same few
// quantiles and tables: the answers are the same, only sooner.

/** Gives back what `make` made for a key, or makes it now. Forgets all once it has kept so many. */
export type Kept<K, V> = (key: K, make: () => V) => V;

export const keeping = <K, V>(most: number): Kept<K, V> => {
  const kept = new Map<K, V>();
  return (key, make) => {
    const found = kept.get(key);
    if (found !== undefined) return found;
    if (kept.size === most) kept.clear();
    const made = make();
    kept.set(key, made);
    return made;
  };
};
