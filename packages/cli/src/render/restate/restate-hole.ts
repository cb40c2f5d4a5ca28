// A leak told as a hole.

import { type HoleOfReading, type LeakSize, type PressureUnit, writeNumber } from "@sealtrend/core";
import { fixed } from "../words.ts";

export const sizeSentence = ({ equalHole, uEqualHole, flow }: LeakSize, unit: PressureUnit): string =>
  `It leaks like a hole of ${bore(equalHole, unit, uEqualHole)} made like the restrictor: ${fixed(6e4 * flow, 0)}\u00a0L of air a minute.`;

export const holesSentence = (
  { hole, uHole }: Extract<HoleOfReading, { readonly kind: "measured" }>,
  unit: PressureUnit,
): string =>
  `It leaks like a drilled hole of ${bore(hole, unit, uHole)}, by the open holes read on this tester.`;

/** In inches too for those who read psi; hundredths of a millimetre, thousandths where the doubt leaves them. */
export const bore = (metres: number, unit: PressureUnit, uncertainty?: number): string => {
  const places = uncertainty !== undefined && uncertainty < 0.000_02 ? 3 : 2;
  const doubt = uncertainty === undefined ? "" : ` ± ${writeNumber(uncertainty, "mm", places)}`;
  const inches = unit === "psi" ? ` (${writeNumber(metres, "in", 3)} in)` : "";
  return `${writeNumber(metres, "mm", places)}${doubt} mm${inches}`;
};
