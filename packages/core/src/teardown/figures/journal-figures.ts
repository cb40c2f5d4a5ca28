// What the diameters of one main or pin come to.

import {
  type Difference,
  type RoundReading,
  journalAxes,
  largestInSize,
  largestOf,
  outsOfRound,
  smallestOf,
  tapers,
} from "./round-part.ts";

/** A figure is absent where the places that it needs were not measured. */
export interface JournalFigures {
  /** Of the angle where it is largest in size; above 0 where the front is thicker. */
  readonly taper?: Difference;
  /** Of the position where it is largest in size; above 0 where it is thicker at 0 degrees. */
  readonly outOfRound?: Difference;
  /** The oil clearance fits to this one. */
  readonly largest?: RoundReading;
  /** The grinder has to get under this one. */
  readonly smallest?: RoundReading;
}

/** Taper = front − rear, out-of-round = 0° − 90°, each the largest in size. */
export const journalFigures = (readings: readonly RoundReading[]): JournalFigures => {
  const taper = largestInSize(tapers(readings, journalAxes));
  const outOfRound = largestInSize(outsOfRound(readings, journalAxes));
  const [largest, smallest] = [largestOf(readings), smallestOf(readings)];
  return {
    ...(taper === undefined ? {} : { taper }),
    ...(outOfRound === undefined ? {} : { outOfRound }),
    ...(largest === undefined ? {} : { largest }),
    ...(smallest === undefined ? {} : { smallest }),
  };
};
