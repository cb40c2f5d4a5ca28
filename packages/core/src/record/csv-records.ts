// The only file that calls csv-parse: a text without faulty quote marks, split into records. And how much a file may hold.

import { CsvError, parse } from "csv-parse/browser/esm/sync";
import { type Problem, problem } from "../problem/index.ts";

/** What a row, or a file, holds at most. */
const most = { characters: 65_536, columns: 4_096, rows: 200_000 } as const;

/** What is said of a row or a file that holds more; undefined where it does not.
 *  @param lines - on which the text begins, and the row */
export const tooMuch = (
  {
    characters,
    columns,
    rows,
  }: { readonly characters: number; readonly columns: number; readonly rows: number },
  file: string,
  lines: { readonly first: number; readonly row: number },
): Problem | undefined => {
  if (characters > most.characters)
    return problem("row-huge", { most: most.characters }, { file, line: lines.row, column: 1 });
  if (rows <= most.rows && columns <= most.columns) return undefined;
  const [what, limit] = rows > most.rows ? ["rows", most.rows] : ["columns", most.columns];
  return problem("file-huge", { what, most: limit }, { file, line: lines.first, column: 1 });
};

/** The same for a text with more lines than that, before any of them is split. */
export const tooManyLines = (text: string, file: string, first: number): Problem | undefined => {
  let rows = -1;
  for (let at = text.indexOf("\n"); at !== -1 && rows <= most.rows; at = text.indexOf("\n", at + 1))
    rows += 1;
  return tooMuch({ characters: 0, columns: 0, rows }, file, { first, row: first });
};

export interface RawRecord {
  readonly record: readonly string[];
  /** As it stands in the text, with its line end and those of empty lines. */
  readonly raw: string;
}

interface Split {
  readonly records: readonly RawRecord[];
  readonly problems: readonly Problem[];
}

/** The cells of every record, and its text. @param first - the line on which the text begins */
export const rawRecordsOf = (text: string, delimiter: string, file: string, first: number): Split => {
  const bad = (fault: Problem): Split => ({ records: [], problems: [fault] });
  try {
    const records = parse(text, {
      delimiter,
      bom: true,
      record_delimiter: ["\r\n", "\n", "\r"],
      relax_column_count: true,
      skip_empty_lines: true,
      max_record_size: most.characters,
      to: most.rows + 1,
      info: true,
      raw: true,
    });
    const columns = records.reduce((widest, { record }) => Math.max(widest, record.length), 0);
    const fault = tooMuch({ characters: 0, columns, rows: records.length }, file, { first, row: first });
    return fault === undefined ? { records, problems: [] } : bad(fault);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = first - 1 + Math.max(1, error.lines ?? 1);
    return bad(problem("row-huge", { most: most.characters }, { file, line, column: 1 }));
  }
};
