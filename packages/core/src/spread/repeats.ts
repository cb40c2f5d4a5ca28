// Repeats of one test, looked at for a common trend.

/** Which way the last repeat differs from the first: where all cylinders agree, oil film or warming moved the readings
 *  and the repeats do not stand for independent ones. Told only from four cylinders with repeats (by chance alone four
 *  agree once in eight; our choice).  @param cells - the repeats of each cylinder in the order taken */
export const repeatsDrift = (cells: readonly (readonly number[])[]): "rising" | "falling" | "none" => {
  const signs = cells
    .filter((cell) => cell.length > 1)
    .map((cell) => Math.sign((cell.at(-1) ?? 0) - (cell[0] ?? 0)));
  if (signs.length < 4) return "none";
  if (signs.every((sign) => sign > 0)) return "rising";
  return signs.every((sign) => sign < 0) ? "falling" : "none";
};
