// Finds quote marks that a CSV reader would stumble over, line by line, and blanks those lines out
// so that every other row can still be read and checked.

import { type Problem, problem } from "../problem/index.ts";

/** After so many the rest of the file is not looked at: it is no CSV, and each may cost a walk to the end. */
const mostFaults = 200;

/** @param first - the line on which the text begins
 *  @returns the faults, and the text with each faulty line emptied (line numbers stay). */
export const faultyLines = (
  text: string,
  delimiter: string,
  file: string,
  first = 1,
): { readonly faults: readonly Problem[]; readonly clean: string } => {
  if (!text.includes('"')) return { faults: [], clean: text };
  const faults: Problem[] = [];
  const kept: string[] = [];
  let at = 0;
  let line = first;
  // What lies between two faults is kept, and its lines counted, in one piece.
  let from = 0;
  while (at < text.length && faults.length < mostFaults) {
    const record = scanRecord(text, at, delimiter);
    if (record.fault === undefined) {
      at = record.end;
      continue;
    }
    if (from < at) kept.push(text.slice(from, at));
    line += (text.slice(from, at).match(/\r\n|\r|\n/g) ?? []).length;
    const end = endOfLine(text, at);
    const raw = text.slice(at, end);
    const column = record.fault.offset - at + 1;
    const inLine = column <= raw.length ? column : 1;
    const place = { file, line, column: inLine, excerpt: { text: raw, from: inLine, to: inLine } };
    faults.push(
      record.fault.kind === "open"
        ? problem("quote-open", {}, place)
        : problem("quote-stray", { cell: cellAround(raw, inLine, delimiter) }, place),
    );
    at = afterLineEnd(text, end);
    // A line feed behind a carriage return would make one line end of two.
    kept.push(
      text[at - 1] === "\n" && kept.at(-1)?.endsWith("\r") === true && end === at - 1
        ? "\r"
        : text.slice(end, at),
    );
    line += 1;
    from = at;
  }
  kept.push(text.slice(from, at));
  return { faults, clean: kept.join("") };
};

interface Scan {
  /** Offset just behind the record's line end. */
  readonly end: number;
  readonly fault?: { readonly kind: "open" | "stray"; readonly offset: number };
}

const scanRecord = (text: string, start: number, delimiter: string): Scan => {
  let at = start;
  for (;;) {
    if (text[at] === '"') {
      const close = closingQuote(text, at + 1);
      if (close === undefined) return { end: text.length, fault: { kind: "open", offset: at } };
      const opened = at;
      at = close + 1;
      if (at < text.length && text[at] !== delimiter && !isLineEnd(text[at])) {
        const acrossLines = /[\r\n]/.test(text.slice(opened, close));
        const fault = acrossLines
          ? ({ kind: "open", offset: opened } as const)
          : ({ kind: "stray", offset: close } as const);
        return { end: text.length, fault };
      }
    }
    while (at < text.length && text[at] !== delimiter && !isLineEnd(text[at])) {
      if (text[at] === '"') return { end: text.length, fault: { kind: "stray", offset: at } };
      at++;
    }
    if (at >= text.length) return { end: text.length };
    if (isLineEnd(text[at])) return { end: afterLineEnd(text, at) };
    at++;
  }
};

const closingQuote = (text: string, from: number): number | undefined => {
  let at = text.indexOf('"', from);
  while (at !== -1 && text[at + 1] === '"') at = text.indexOf('"', at + 2);
  return at === -1 ? undefined : at;
};

const isLineEnd = (char: string | undefined): boolean => char === "\n" || char === "\r";

const endOfLine = (text: string, from: number): number => {
  const found = /[\r\n]/.exec(text.slice(from));
  return found === null ? text.length : from + found.index;
};

const afterLineEnd = (text: string, at: number): number => {
  if (text[at] === "\r" && text[at + 1] === "\n") return at + 2;
  return isLineEnd(text[at]) ? at + 1 : at;
};

const cellAround = (raw: string, column: number, delimiter: string): string => {
  const from = raw.lastIndexOf(delimiter, column - 2) + 1;
  const to = raw.indexOf(delimiter, column - 1);
  return raw.slice(from, to === -1 ? undefined : to).trim();
};
