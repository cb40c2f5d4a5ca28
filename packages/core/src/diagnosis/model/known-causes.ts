// The few causes that the way of reckoning itself speaks of, by their codes in the tables.

import type { Faults } from "../faults/faults.ts";

/** No fault: takes what all others leave. */
export const soundCause = "no-fault";
/** Meets two neighbours under one gasket together. */
export const pairCause = "gasket-to-neighbour";
/** Meet a whole bank, where an engine has more than one. */
export const bankCauses = { retarded: "cam-retarded", bent: "bent-valve" } as const;
/** Of all cylinders; in an engine of one it is the same as in that cylinder alone. */
export const wearCause = "worn-rings-or-bore";

/** Place of a cause in the tables. @throws RangeError for a code that stands in none */
export const placeOfCause = ({ causes }: Pick<Faults, "causes">, code: string): number => {
  const place = causes.findIndex((cause) => cause.code === code);
  if (place === -1) throw new RangeError(`diagnosis: no cause ${code} in the tables`);
  return place;
};
