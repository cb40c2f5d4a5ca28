// The entry of a list at a place known to exist; a wrong place is a mistake of this library.

/** @throws RangeError outside the list */
export const at = <T>(list: ArrayLike<T>, index: number): T => {
  const value = list[index];
  if (value === undefined)
    throw new RangeError(`no entry ${String(index)} in a list of ${String(list.length)}`);
  return value;
};
