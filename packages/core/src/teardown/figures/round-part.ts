// A bore or a journal as the diameters taken along and across it. Differences keep their sign: which end, which axis.

import { type Angle, type Length, length } from "../../quantity/index.ts";

export interface RoundReading {
  /** How far along: `top`, `middle`, `bottom` of a bore; `front`, `rear` of a journal. */
  readonly along: string;
  /** In which direction: `thrust`, `axial`; `0`, `90` degrees. */
  readonly across: string;
  readonly diameter: Length;
}

/** One diameter less another. */
export interface Difference {
  /** Signed. [m] */
  readonly value: Length;
  /** What the two share: the direction of a taper, the level of an out-of-round. */
  readonly at: string;
  /** Places of the first and of what is taken from it, as `top/thrust`. */
  readonly places: readonly [string, string];
}

/** Which is taken from which: the second of each pair from the first. */
export interface RoundAxes {
  readonly along: readonly [string, string];
  readonly across: readonly [string, string];
}

/** Top less bottom, across the crank less along it. */
export const boreAxes: RoundAxes = { along: ["top", "bottom"], across: ["thrust", "axial"] };
/** Front less rear, 0 less 90 degrees. */
export const journalAxes: RoundAxes = { along: ["front", "rear"], across: ["0", "90"] };

const placeOf = ({ along, across }: RoundReading): string => `${along}/${across}`;
const distinct = (words: readonly string[]): readonly string[] => [...new Set(words)];

const differences = (
  readings: readonly RoundReading[],
  shared: "along" | "across",
  [first, second]: readonly [string, string],
): readonly Difference[] => {
  const other = shared === "along" ? "across" : "along";
  return distinct(readings.map((reading) => reading[shared])).flatMap((at) => {
    const found = (place: string): RoundReading | undefined =>
      readings.find((reading) => reading[shared] === at && reading[other] === place);
    const [one, two] = [found(first), found(second)];
    if (one === undefined || two === undefined) return [];
    return [
      { value: length(one.diameter - two.diameter), at, places: [placeOf(one), placeOf(two)] as const },
    ];
  });
};

/** Taper in each direction measured at both ends. t = D_first − D_second, signed: of a bore a negative one is a tight top
 *  or a choke, of a journal it is a thick rear.
 *  @source manuals of engine makers (Onan, GM) for bores; one maker subtracts the other way round */
export const tapers = (readings: readonly RoundReading[], axes: RoundAxes): readonly Difference[] =>
  differences(readings, "across", axes.along);

/** Out-of-round at each level measured both ways. D_first − D_second, signed: which axis is worn.
 *  @source manuals of engine makers (Suzuki, GM, Johnson) */
export const outsOfRound = (readings: readonly RoundReading[], axes: RoundAxes): readonly Difference[] =>
  differences(readings, "along", axes.across);

/** The difference that is largest in size, its sign kept; the first of equals. */
export const largestInSize = (all: readonly Difference[]): Difference | undefined =>
  all.reduce<Difference | undefined>(
    (worst, one) => (worst === undefined || Math.abs(one.value) > Math.abs(worst.value) ? one : worst),
    undefined,
  );

/** The reading of the largest diameter; the first of equals. */
export const largestOf = (readings: readonly RoundReading[]): RoundReading | undefined =>
  [...readings].sort((a, b) => b.diameter - a.diameter)[0];

/** The reading of the smallest diameter; the first of equals. */
export const smallestOf = (readings: readonly RoundReading[]): RoundReading | undefined =>
  [...readings].sort((a, b) => a.diameter - b.diameter)[0];

/** Largest less smallest diameter of all; undefined of fewer than two. */
export const diameterRange = (readings: readonly RoundReading[]): Length | undefined => {
  const [largest, smallest] = [largestOf(readings), smallestOf(readings)];
  return largest === undefined || smallest === undefined || readings.length < 2
    ? undefined
    : length(largest.diameter - smallest.diameter);
};

/** Cylindricity as workshops take it: max − min over the levels of one direction, the larger of the directions. Needs two
 *  levels in a direction.
 *  @source Yanmar 3JH4E p. 198 */
export const cylindricity = (readings: readonly RoundReading[]): Length | undefined => {
  const ranges = distinct(readings.map(({ across }) => across)).flatMap((direction) => {
    const range = diameterRange(readings.filter(({ across }) => across === direction));
    return range === undefined ? [] : [range];
  });
  return ranges.length === 0 ? undefined : length(Math.max(...ranges));
};

/** Mean diameter at a level: what a ring follows there. Undefined unless both directions were taken. */
export const meanAt = (readings: readonly RoundReading[], along: string): Length | undefined => {
  const here = readings.filter((reading) => reading.along === along).map(({ diameter }) => diameter);
  return here.length < 2 ? undefined : length(here.reduce((sum, one) => sum + one, 0) / here.length);
};

/** What two directions at right angles see of an oval hole when they stand off its axes: e·|cos 2φ|, half of it at 30°.
 *  A two-point gauge sees nothing of three lobes: turn it and take the largest and the smallest.
 *  @param ovality - largest less smallest diameter, e [m]  @param off - of the gauge from the oval's axis, φ [deg]
 *  @source geometry of an ellipse close to a circle @checked data/reference/teardown-cases.json (computed) */
export const ovalitySeen = (ovality: Length, off: Angle): Length =>
  length(ovality * Math.abs(Math.cos((2 * off * Math.PI) / 180)));
