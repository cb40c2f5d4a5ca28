// One row of a rule sheet, seen by column name. What is wrong with a cell is noted, and the cell then counts as
// undefined.

import { type Place, type Problem, problem } from "../problem/index.ts";
import { type Table, type TableRow, placeOf } from "../record/index.ts";

/** The columns of a rule sheet, all of them needed, in any order. Lines before them that begin with # are
 *  comments. */
export const ruleColumns = [
  "id",
  "family",
  "formula",
  "limit",
  "unit",
  "compare",
  "applies",
  "text",
  "source",
  "status",
] as const;
type Column = (typeof ruleColumns)[number];

export class RuleRow {
  readonly #table: Table;
  readonly #row: TableRow;
  readonly #problems: Problem[];
  constructor(table: Table, row: TableRow, problems: Problem[]) {
    this.#table = table;
    this.#row = row;
    this.#problems = problems;
  }
  get line(): number {
    return this.#row.line;
  }
  get delimiter(): string {
    return this.#table.delimiter;
  }
  text(column: Column): string {
    return this.#cell(column)?.text.trim() ?? "";
  }
  /** Where a cell stands, or the character `after` so many of its own. */
  place(column: Column, after = 0): Place {
    const cell = this.#cell(column);
    const place = placeOf(this.#table, this.#row, cell);
    if (after === 0 || cell === undefined) return place;
    const { text, column: start } = cell;
    const raw = this.#row.raw;
    if (raw.slice(start - 1, start - 1 + text.length) !== text) return place;
    const at = start + (text.length - text.trimStart().length) + after;
    return { ...place, column: at, excerpt: { text: place.excerpt?.text ?? raw, from: at, to: at } };
  }
  note(fault: Problem): undefined {
    this.#problems.push(fault);
    return undefined;
  }
  needed(column: Column): string | undefined {
    const text = this.text(column);
    return text === "" ? this.note(problem("rule-cell-empty", { column }, this.place(column))) : text;
  }
  word<W extends string>(column: Column, words: readonly W[]): W | undefined {
    const text = this.needed(column);
    const found = words.find((word) => word === text);
    if (text === undefined || found !== undefined) return found;
    return this.note(problem("word-unknown", { column, text, words }, this.place(column)));
  }
  #cell(column: Column) {
    return this.#row.cells[this.#table.header.findIndex(({ name }) => name === column)];
  }
}
