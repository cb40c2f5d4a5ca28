// How far a formula's value may be off, from how far its readings may be off (JCGM 100:2008, 5.1.2 and 5.2.2, from
// memory). Each reading is moved by its own part alone, then all together by the common part. In a formula that
// yields no pressure, such as lowest / highest, the common part cancels and is left out.

/** A reading as the formulas see it: pressure [Pa], own and common relative standard uncertainty. */
export interface Uncertain {
  readonly pressure: number;
  readonly own: number;
  readonly common: number;
}

/** Standard uncertainty of `value`; undefined where the value cannot be had at a moved reading.
 *  u^2 = sum (f(p_i e^u_i) - f(p_i e^-u_i))^2 / 4  (+ the same with all readings moved by their common part) */
export const uncertaintyOf = (
  value: (pressures: readonly number[]) => number | undefined,
  readings: readonly Uncertain[],
  parts: "own" | "own-and-common",
): number | undefined => {
  const half = (moved: (reading: Uncertain, index: number) => number): number | undefined => {
    const up = value(readings.map((reading, i) => reading.pressure * Math.exp(moved(reading, i))));
    const down = value(readings.map((reading, i) => reading.pressure * Math.exp(-moved(reading, i))));
    return up === undefined || down === undefined ? undefined : (up - down) / 2;
  };
  const halves = readings.map((_, k) => half((reading, i) => (i === k ? reading.own : 0)));
  if (parts === "own-and-common") halves.push(half(({ common }) => common));
  let square = 0;
  for (const part of halves) {
    if (part === undefined) return undefined;
    square += part ** 2;
  }
  return Math.sqrt(square);
};
