// Where on a part a limit of engine.json is for: a place at which nothing is ever measured would leave it to judge nothing.

import type { FieldFault } from "./field-fault.ts";
import { quantityOf } from "./measured-parts.ts";
import { beginsPlace, placeNear, placesExpected } from "./measured-places.ts";
import type { MeasuredPart } from "./measurement-types.ts";

/** Of what is measured as it stands; what is worked out of it has places of its own.
 *  @param at - as written  @param path - of the entry */
export const placeFaults = (
  at: unknown,
  path: string,
  part: MeasuredPart,
  quantity: string,
): readonly FieldFault[] => {
  const measured = quantityOf(part, quantity);
  if (measured === undefined || typeof at !== "string" || at === "") return [];
  if (beginsPlace(measured, at.toLowerCase())) return [];
  const near = placeNear(measured, at);
  const { places } = measured;
  return [
    {
      path: `${path}.at`,
      value: at,
      expected: places.length === 0 ? "no place" : `${placesExpected(measured)}, or how one of these begins`,
      mend: near === undefined ? 'take "at" out where the limit is for every place' : `write "${near}"`,
    },
  ];
};
