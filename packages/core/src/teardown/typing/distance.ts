// A distance along a part; places hold it in millimetres to the third decimal.

import { type Length, fromSi } from "../../quantity/index.ts";
import { readFigures } from "./typed-figure.ts";
import type { TypingContext } from "./typing.ts";

/** Longer than any block. [m] */
const most = 2;

/** Reads `75`, `75mm`, `3in`; undefined where it is no distance. A bare number is in millimetres, or in inches where a unit of
 *  that kind was chosen last, never in thousandths. */
export const distanceIn = (text: string, { length: chosen }: TypingContext): Length | undefined => {
  const unit = chosen === "in" || chosen === "thou" || chosen === "tenths" ? "in" : "mm";
  const read = readFigures(text.replace(/\s+/g, ""), { kind: "length", most, unit });
  const only = read.ok && read.value.length === 1 ? read.value[0]?.value : undefined;
  return only?.kind === "length" && only.value <= most ? only.value : undefined;
};

/** As places are written. @param times - that distance */
export const distanceText = (distance: Length, times = 1): string =>
  String(Number((fromSi(distance, "mm") * times).toFixed(3)));
