// The cylinder that most needs an explanation.

import type { CylinderEvidence, Evidence } from "../evidence.ts";
import type { Faults } from "../faults/faults.ts";
import { placeOfCause, soundCause } from "../model/known-causes.ts";

/** Place of the cylinder with the largest chance of a fault, to a thousandth; of several the one that reads lowest, or
 *  leaks most where nothing was cranked; then the first. @source handbook/diagnosis.md 5.1 */
export const targetOf = (
  cylinders: readonly (readonly number[])[],
  evidence: Evidence,
  faults: Faults,
): number => {
  const sound = placeOfCause(faults, soundCause);
  const [first] = cylinders
    .map((chances, place) => ({
      place,
      fault: Math.round(1000 * (1 - (chances[sound] ?? 0))),
      reading: readingOf(evidence.cylinders[place] ?? {}),
      leak: evidence.cylinders[place]?.leak?.alpha ?? 0,
    }))
    .sort(
      (a, b) => b.fault - a.fault || rising(a.reading, b.reading) || b.leak - a.leak || a.place - b.place,
    );
  return first?.place ?? 0;
};

/** Mean of the dry takes; beyond all where there are none. */
const readingOf = ({ dry = [] }: CylinderEvidence): number =>
  dry.length === 0 ? Infinity : dry.reduce((sum, one) => sum + one, 0) / dry.length;

const rising = (a: number, b: number): number => (a < b ? -1 : a > b ? 1 : 0);
