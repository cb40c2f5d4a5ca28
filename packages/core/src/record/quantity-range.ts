// A quantity or a range of it, as a manual prints it: `250rpm`, `250-400rpm`.

import { type Dimension, readQuantity } from "../quantity/index.ts";

/** Both ends in SI, equal for a single quantity; undefined where it is neither, or not above 0. The unit of the first may be
 *  left out where the second has it. */
export const readRange = (
  text: string,
  dimension: Dimension,
): { readonly least: number; readonly most: number } | undefined => {
  const alone = valueOf(text, dimension);
  if (alone !== undefined) return { least: alone, most: alone };
  const [, from, to] = /^\s*(.*?\S)\s*(?:-|–|\.\.\.?|to)\s*(\S.*)$/.exec(text) ?? [];
  if (from === undefined || to === undefined) return undefined;
  const unit = /[^\d.,\s].*$/.exec(to)?.[0] ?? "";
  const least = valueOf(from, dimension) ?? valueOf(`${from}${unit}`, dimension);
  const most = valueOf(to, dimension);
  return least === undefined || most === undefined || least >= most ? undefined : { least, most };
};

const valueOf = (text: string, dimension: Dimension): number | undefined => {
  const reading = readQuantity(text, dimension);
  return reading.ok && reading.si > 0 ? reading.si : undefined;
};
