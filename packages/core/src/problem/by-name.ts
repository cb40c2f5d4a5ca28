// A table that is looked up with words of somebody's file or command line.

/** The entries alone: `constructor` and `__proto__`, which every plain object has, are in it only where they were put. */
export const byName = <T>(entries: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
  Object.freeze(Object.assign(Object.create(null) as Record<string, T>, entries));
