// Where the header of a CSV ends, on bytes.

import { isBlank, rowEnd } from "./row-scan.ts";

const comma = 44;
const mark: readonly number[] = [0xef, 0xbb, 0xbf];

/** Behind the first row that holds anything and does not only name the delimiter; -1 where more bytes are needed. Commas serve
 *  to find it, whatever the delimiter is. */
export const headerEnd = (bytes: Buffer, to: number, end: "of the file" | "more follows"): number => {
  let from = mark.every((byte, i) => bytes[i] === byte) ? mark.length : 0;
  while (from < to) {
    const next = rowEnd(bytes, from, to, { delimiter: comma, end });
    if (next === -1) return -1;
    const namesOnly = /^sep=.\s*$/i.test(bytes.toString("latin1", from, Math.min(next, from + 10)));
    if (!namesOnly && !isBlank(bytes, from, next, comma)) return next;
    from = next;
  }
  return end === "of the file" ? to : -1;
};
