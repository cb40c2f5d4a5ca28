// What six diameters of one bore come to.

import { type Length, length } from "../../quantity/index.ts";
import {
  type Difference,
  type RoundReading,
  boreAxes,
  cylindricity,
  diameterRange,
  largestInSize,
  largestOf,
  outsOfRound,
  smallestOf,
  tapers,
} from "./round-part.ts";

/** A figure is absent where the places that it needs were not measured. */
export interface BoreFigures {
  /** Of the direction where it is largest in size; above 0 where the top is wider. */
  readonly taper?: Difference;
  /** Of the level where it is largest in size; above 0 where the bore is worn across the crank. */
  readonly outOfRound?: Difference;
  /** [m] */
  readonly cylindricity?: Length;
  /** Largest less smallest diameter. [m] */
  readonly range?: Length;
  readonly largest?: RoundReading;
  readonly smallest?: RoundReading;
  /** Largest diameter less the original. [m] */
  readonly wear?: Length;
}

/** Taper, out-of-round, cylindricity, range and wear of one bore.
 *  wear = D_max − original (common practice, no source).
 *  @param original - of the bore before it wore: an unworn reading, else the low end of the new range
 *  @checked data/reference/teardown-cases.json (computed) */
export const boreFigures = (readings: readonly RoundReading[], original?: Length): BoreFigures => {
  const taper = largestInSize(tapers(readings, boreAxes));
  const outOfRound = largestInSize(outsOfRound(readings, boreAxes));
  const cylinder = cylindricity(readings);
  const range = diameterRange(readings);
  const [largest, smallest] = [largestOf(readings), smallestOf(readings)];
  return {
    ...(taper === undefined ? {} : { taper }),
    ...(outOfRound === undefined ? {} : { outOfRound }),
    ...(cylinder === undefined ? {} : { cylindricity: cylinder }),
    ...(range === undefined ? {} : { range }),
    ...(largest === undefined ? {} : { largest }),
    ...(smallest === undefined ? {} : { smallest }),
    ...(largest === undefined || original === undefined ? {} : { wear: length(largest.diameter - original) }),
  };
};
