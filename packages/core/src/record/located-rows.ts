// The rows of a text, each with its place in it. csv-parse tells no columns, and of a row only where it ends.

import type { Problem } from "../problem/index.ts";
import { type RawRecord, rawRecordsOf, tooManyLines, tooMuch } from "./csv-records.ts";

/** One cell of a table and where it begins. */
export interface TableCell {
  readonly text: string;
  /** Where the cell begins in its row, from 1. */
  readonly column: number;
}

/** One row of a table and where it stands in its text. */
export interface TableRow {
  /** The line on which the row begins, from 1. */
  readonly line: number;
  readonly cells: readonly TableCell[];
  /** The row as it stands in the file, without its line end. */
  readonly raw: string;
  /** Offset of raw in the text. */
  readonly offset: number;
}

/** A row of which the texts are at hand. */
export interface SplitRow extends TableRow {
  /** What each cell says. */
  readonly texts: readonly string[];
}

interface LocatedRows {
  readonly rows: readonly SplitRow[];
  readonly problems: readonly Problem[];
}

export const lineEnd = /\r\n|\r|\n/;

/** Where a cell begins is asked of few rows but those with a fault, and worked out then. */
class LocatedRow implements SplitRow {
  readonly line: number;
  readonly texts: readonly string[];
  readonly raw: string;
  readonly offset: number;
  readonly #delimiter: string;

  constructor(texts: readonly string[], { line, raw, offset }: Omit<TableRow, "cells">, delimiter: string) {
    this.line = line;
    this.texts = texts;
    this.raw = raw;
    this.offset = offset;
    this.#delimiter = delimiter;
  }

  get cells(): readonly TableCell[] {
    const columns = cellColumns(this.raw, this.#delimiter);
    return this.texts.map((text, i) => ({ text, column: columns[i] ?? this.raw.length + 1 }));
  }
}

/** The rows of a text whose quote marks are sound. @param first - the line on which the text begins */
export const locatedRows = (text: string, delimiter: string, file: string, first = 1): LocatedRows => {
  const fault = tooManyLines(text, file, first);
  if (fault !== undefined) return { rows: [], problems: [fault] };
  return text.includes('"') || text.startsWith("\uFEFF")
    ? quotedRows(text, delimiter, file, first)
    : plainRows(text, delimiter, file, first);
};

/** Where no cell is quoted, a row is a line and a cell what stands between two separators: as every file is that the tool
 *  writes without a comma in a note. csv-parse would take the time of the whole reading for it, and make an error of each row
 *  that is not as long as the first. */
export const plainRows = (text: string, delimiter: string, file: string, first = 1): LocatedRows => {
  const rows: SplitRow[] = [];
  let line = first;
  let offset = 0;
  for (;;) {
    for (; isLineEnd(text, offset); offset = afterLineEnd(text, offset)) line += 1;
    if (offset >= text.length) return { rows, problems: [] };
    const start = offset;
    while (offset < text.length && !isLineEnd(text, offset)) offset += 1;
    const raw = text.slice(start, offset);
    const texts = raw.split(delimiter);
    const size = { characters: raw.length - texts.length + 1, columns: texts.length, rows: rows.length + 1 };
    const fault = tooMuch(size, file, { first, row: line });
    if (fault !== undefined) return { rows: [], problems: [fault] };
    rows.push(new LocatedRow(texts, { line, raw, offset: start }, delimiter));
  }
};

/** The cells of a line in which nothing is quoted. */
export const plainCells = (raw: string, delimiter: string): readonly TableCell[] => {
  let column = 1;
  return raw.split(delimiter).map((text): TableCell => {
    const own = { text, column };
    column += text.length + 1;
    return own;
  });
};

export const isLineEnd = (text: string, at: number): boolean => {
  const code = text.charCodeAt(at);
  return code === 10 || code === 13;
};

export const afterLineEnd = (text: string, at: number): number =>
  text.charCodeAt(at) === 13 && text.charCodeAt(at + 1) === 10 ? at + 2 : at + 1;

/** Not by a pattern: from each of many line ends inside a cell it would look to the last of them. */
const withoutLineEnds = (raw: string): string => {
  let [from, to] = [0, raw.length];
  while (from < to && isLineEnd(raw, from)) from += 1;
  while (to > from && isLineEnd(raw, to - 1)) to -= 1;
  return raw.slice(from, to);
};

/** Any text: each row is looked up by its own text behind the one before. */
export const quotedRows = (text: string, delimiter: string, file: string, first = 1): LocatedRows => {
  const { records, problems } = rawRecordsOf(text, delimiter, file, first);
  let offset = 0;
  let line = first;
  const rows = records.map(({ record, raw: untrimmed }: RawRecord): SplitRow => {
    const raw = withoutLineEnds(untrimmed);
    const start = text.indexOf(raw, offset);
    line += lineEnds(text.slice(offset, start));
    const row = new LocatedRow(record, { line, raw, offset: start }, delimiter);
    line += lineEnds(raw);
    offset = start + raw.length;
    return row;
  });
  return { rows, problems };
};

const lineEnds = (text: string): number => text.split(lineEnd).length - 1;

/** Where each cell of a record begins, from 1; a quoted cell may hold the separator. */
export const cellColumns = (raw: string, delimiter: string): number[] => {
  const columns = [1];
  let quoted = false;
  for (let i = 0; i < raw.length; i++) {
    if (raw[i] === '"') quoted = !quoted;
    else if (raw[i] === delimiter && !quoted) columns.push(i + 2);
  }
  return columns;
};
