// UTF-16 without a mark at its start, as some loggers and old spreadsheets write it: told by its zero bytes.

import type { Encoding } from "../../logbook/encoding.ts";

/** As many characters are looked at. */
const most = 4_096;

/** Which half of the characters is zero, where that holds for nearly all: text of a sheet is digits and separators.
 *  Undefined for anything else, a file of zeros from a power cut too. */
export const unmarkedUtf16 = (bytes: Uint8Array): Encoding | undefined => {
  if (bytes.length < 8 || bytes.length % 2 !== 0) return undefined;
  const marked = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  if (marked) return undefined;
  const characters = Math.min(most, bytes.length / 2);
  let first = 0;
  let second = 0;
  for (let i = 0; i < characters; i += 1) {
    if (bytes[2 * i] === 0) first += 1;
    if (bytes[2 * i + 1] === 0) second += 1;
  }
  const nearly = characters * 0.9;
  if (second >= nearly && first === 0) return "utf-16le";
  if (first >= nearly && second === 0) return "utf-16be";
  return undefined;
};
