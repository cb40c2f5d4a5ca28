// The guards of this domain. A list that is too short or holds no-number is a mistake of the calling code, so it is
// thrown back: simple-statistics would order a NaN like any number and answer with something plausible.

/** Refuses a list with fewer than `least` entries or with an entry that is not a finite number. @throws RangeError */
export const checkList = (name: string, xs: ArrayLike<number>, least: number): void => {
  if (xs.length < least)
    throw new RangeError(`${name}: needs at least ${String(least)} values, got ${String(xs.length)}`);
  for (let i = 0; i < xs.length; i += 1)
    if (!Number.isFinite(xs[i])) throw new RangeError(`${name}: value ${String(i + 1)} is ${String(xs[i])}`);
};

/** Refuses two lists that cannot be points of a plane: unequal lengths, too few, not finite. @throws RangeError */
export const checkPairs = (
  name: string,
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  least: number,
): void => {
  if (xs.length !== ys.length)
    throw new RangeError(`${name}: ${String(xs.length)} values of x but ${String(ys.length)} of y`);
  checkList(`${name}: x`, xs, least);
  checkList(`${name}: y`, ys, least);
};

/** Refuses a probability outside 0 < p < 1. @throws RangeError */
export const checkProbability = (name: string, p: number): void => {
  if (!(p > 0 && p < 1))
    throw new RangeError(`${name}: probability must lie between 0 and 1, got ${String(p)}`);
};

/** Refuses degrees of freedom that are not above 0; infinity is allowed. @throws RangeError */
export const checkDegrees = (name: string, df: number): void => {
  if (!(df > 0)) throw new RangeError(`${name}: degrees of freedom must be above 0, got ${String(df)}`);
};

/** The entry at a place known to exist. @throws RangeError outside the list */
export const at = (xs: ArrayLike<number>, index: number): number => {
  const value = xs[index];
  if (value === undefined)
    throw new RangeError(`no entry ${String(index)} in a list of ${String(xs.length)}`);
  return value;
};
