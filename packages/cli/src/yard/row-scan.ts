// Where a row of a CSV ends and what its cell of the engine says, on bytes: a file of any size is cut at the borders of its
// rows without being read as text. Quotes count as the core takes them: a row whose quotes are faulty ends with its line.

const [lf, cr, quote, space, tab] = [10, 13, 34, 32, 9];

/** No row is longer; what has no end by then is cut, and the core says that it is too long. */
const mostBytes = 1 << 20;

export interface RowsOf {
  readonly delimiter: number;
  /** Whether the bytes end with the file. */
  readonly end: "of the file" | "more follows";
}

/** Offset just behind the line end of the row that begins at `from`; -1 where the row goes on behind `to`. */
export const rowEnd = (bytes: Uint8Array, from: number, to: number, rows: RowsOf): number => {
  const { delimiter, end } = rows;
  const isLast = end === "of the file" || to - from > mostBytes;
  let at = from;
  while (at < to) {
    const byte = bytes[at];
    if (byte === lf || byte === cr) return behind(bytes, at, to, isLast);
    if (byte !== quote) {
      at += 1;
      continue;
    }
    if (at !== from && bytes[at - 1] !== delimiter) return lineEnd(bytes, from, to, isLast);
    const close = closing(bytes, at + 1, to, isLast);
    if (close === -1) return isLast ? lineEnd(bytes, from, to, isLast) : -1;
    const next = bytes[close + 1];
    if (close + 1 < to && next !== delimiter && next !== lf && next !== cr)
      return lineEnd(bytes, from, to, isLast);
    at = close + 1;
  }
  return isLast ? to : -1;
};

/** Behind a line end; after a carriage return at the very end a line feed may follow. */
const behind = (bytes: Uint8Array, at: number, to: number, isLast: boolean): number => {
  if (bytes[at] === lf) return at + 1;
  if (at + 1 === to && !isLast) return -1;
  return at + 1 < to && bytes[at + 1] === lf ? at + 2 : at + 1;
};

const lineEnd = (bytes: Uint8Array, from: number, to: number, isLast: boolean): number => {
  for (let at = from; at < to; at += 1)
    if (bytes[at] === lf || bytes[at] === cr) return behind(bytes, at, to, isLast);
  return isLast ? to : -1;
};

const closing = (bytes: Uint8Array, from: number, to: number, isLast: boolean): number => {
  for (let at = from; at < to; at += 1) {
    if (bytes[at] !== quote) continue;
    if (at + 1 < to && bytes[at + 1] === quote) at += 1;
    else return at + 1 < to || isLast ? at : -1;
  }
  return -1;
};

/** How many lines end in a part. */
export const lineEnds = (bytes: Uint8Array, from: number, to: number): number => {
  let count = 0;
  for (let at = from; at < to; at += 1)
    if (bytes[at] === lf ? bytes[at - 1] !== cr || at === from : bytes[at] === cr) count += 1;
  return count;
};

/** Whether a row holds nothing, as a spreadsheet leaves them behind the last entry. */
export const isBlank = (bytes: Uint8Array, from: number, to: number, delimiter: number): boolean => {
  for (let at = from; at < to; at += 1) {
    const byte = bytes[at];
    if (byte !== delimiter && byte !== lf && byte !== cr && byte !== space && byte !== tab) return false;
  }
  return true;
};

/** From where to where the cell stands in its row, quotes with it. @param column - from 0; behind the last cell nothing stands */
export const cellBounds = (
  bytes: Uint8Array,
  { from, to, delimiter, column }: { from: number; to: number; delimiter: number; column: number },
): readonly [number, number] => {
  let [at, cell, start] = [from, 0, from];
  let quoted = false;
  for (; at < to; at += 1) {
    const byte = bytes[at];
    if (byte === quote) quoted = !quoted;
    else if (!quoted && (byte === lf || byte === cr)) break;
    else if (!quoted && byte === delimiter) {
      if (cell === column) return [start, at];
      cell += 1;
      start = at + 1;
    }
  }
  return cell === column ? [start, at] : [at, at];
};

/** What a cell says: without its quotes and the blanks around it. */
export const cellText = (raw: string): string =>
  raw
    .trim()
    .replace(/^"|"$/g, "")
    .replaceAll('""', '"')
    .replace(/^[\s\u00A0\u202F]+|[\s\u00A0\u202F]+$/g, "");
