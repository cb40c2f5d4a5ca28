// Which entry of the map a name in the sheet is.

import type { EngineOfSheet } from "./import-map.ts";
import { plainText } from "./sheet-words.ts";

/** The entry that has the name to the letter, else the first that has it whatever its case and blanks. */
export const engineNamed = <T extends Pick<EngineOfSheet, "sheet">>(
  engines: readonly T[],
): ((text: string) => T | undefined) => {
  const exact = new Map(engines.map((one) => [one.sheet, one]));
  const plain = new Map(engines.toReversed().map((one) => [plainText(one.sheet), one]));
  return (text) => exact.get(text) ?? plain.get(plainText(text));
};
