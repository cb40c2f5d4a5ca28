// A row seen by column name, with the checks that every table of the logbook shares.
// Each read either gives a value or notes a problem at its cell; nothing is thrown.

import {
  type Facts,
  type Place,
  type Problem,
  type ProblemCode,
  type Severity,
  problem,
} from "../problem/index.ts";
import { digitsValue, isPlainDay, readNumber } from "../quantity/index.ts";
import { type SplitRow, type Table, placeOf } from "./csv.ts";

export interface Bounds {
  readonly least: number;
  readonly most: number;
  /** What the number is, for the message: "altitude in m". */
  readonly of: string;
  /** What to do about another one; else the paper sheet is to be looked at. */
  readonly mend?: string;
}

export interface RowView {
  readonly line: number;
  /** The cell's text without surrounding blanks; "" where the column or the cell is absent. */
  text(name: string): string;
  place(name: string): Place;
  fault<C extends ProblemCode>(name: string, code: C, facts: Facts<C>, severity?: Severity): undefined;
  /** A number within bounds; undefined where the cell is empty or `x`, or after a fault. */
  number(name: string, bounds: Bounds): number | undefined;
  /** One of the words, whatever its case; undefined where the cell is empty. */
  word<W extends string>(name: string, words: readonly W[]): W | undefined;
  /** The same, and an empty cell is a fault. */
  neededWord<W extends string>(name: string, words: readonly W[]): W | undefined;
  /** A calendar date `YYYY-MM-DD`; an empty cell is a fault. */
  date(name: string): string | undefined;
}

export interface TableView {
  readonly table: Table;
  readonly rows: readonly RowView[];
  has(name: string): boolean;
  /** Whether any row has text in this column. */
  holds(name: string): boolean;
  readonly columns: readonly string[];
}

/** What the rows of a table share. */
interface Seen {
  readonly table: Table;
  readonly index: ReadonlyMap<string, number>;
  readonly problems: Problem[];
}

/** Looks at a table by column name; problems found while reading go to `problems`. */
export const viewTable = (table: Table, problems: Problem[]): TableView => {
  const index = new Map(table.header.map(({ name }, i) => [name, i] as const));
  const seen = { table, index, problems };
  return {
    table,
    columns: table.header.map(({ name }) => name),
    has: (name) => index.has(name),
    holds: (name) => {
      const at = index.get(name) ?? -1;
      return table.rows.some(({ texts }) => trim(texts[at] ?? "") !== "");
    },
    rows: table.rows.map((row) => new ViewedRow(seen, row)),
  };
};

/** Whether an error was noted behind the first so many problems. */
export const hasErrorSince = (problems: readonly Problem[], before: number): boolean => {
  for (let i = before; i < problems.length; i += 1) if (problems[i]?.severity === "error") return true;
  return false;
};

/** Notes the columns that the table lacks, all in one problem. @returns whether all are there */
export const requireColumns = (view: TableView, columns: readonly string[], problems: Problem[]): boolean => {
  if (view.columns.length === 0) return false;
  const missing = columns.filter((name) => !view.has(name));
  const { file, headerLine, delimiter } = view.table;
  const facts = { names: missing, header: view.columns, delimiter };
  if (missing.length > 0)
    problems.push(problem("column-missing", facts, { file, line: headerLine, column: 1 }));
  return missing.length === 0;
};

/** A class, for a yard looks at hundreds of thousands of rows: seven functions a row would cost more than what they read. */
class ViewedRow implements RowView {
  readonly #of: Seen;
  readonly #row: SplitRow;

  constructor(of: Seen, row: SplitRow) {
    this.#of = of;
    this.#row = row;
  }

  get line(): number {
    return this.#row.line;
  }

  text(name: string): string {
    const text = this.#row.texts[this.#of.index.get(name) ?? -1];
    return text === undefined ? "" : trim(text);
  }

  place(name: string): Place {
    const { cells } = this.#row;
    return placeOf(this.#of.table, this.#row, cells[this.#of.index.get(name) ?? -1] ?? cells[0]);
  }

  fault<C extends ProblemCode>(
    name: string,
    code: C,
    facts: Facts<C>,
    severity: Severity = "error",
  ): undefined {
    this.#of.problems.push(problem(code, facts, this.place(name), severity));
    return undefined;
  }

  number(name: string, bounds: Bounds): number | undefined {
    return numberIn(this, name, bounds, this.#of.table.delimiter);
  }

  word<W extends string>(name: string, words: readonly W[]): W | undefined {
    return this.text(name) === "" ? undefined : this.neededWord(name, words);
  }

  neededWord<W extends string>(name: string, words: readonly W[]): W | undefined {
    const text = this.text(name);
    const plain = text.toLowerCase();
    const found = words.find((word) => word === plain);
    return found ?? this.fault(name, "word-unknown", { column: name, text, words });
  }

  date(name: string): string | undefined {
    return dateIn(this, name);
  }
}

const trim = (text: string): string =>
  text === "" || (isInk(text, 0) && isInk(text, text.length - 1)) ? text : withoutBlanks(text);

/** Whether a character is of the plain ones that are no blank; most cells begin and end with one. */
const isInk = (text: string, at: number): boolean => {
  const code = text.charCodeAt(at);
  return code > 32 && code < 127;
};

const withoutBlanks = (text: string): string => text.replace(/^[\s\u00A0\u202F]+|[\s\u00A0\u202F]+$/g, "");

const numberIn = (view: RowView, name: string, bounds: Bounds, delimiter: string): number | undefined => {
  const text = view.text(name);
  if (text === "" || text === "x" || text === "X") return undefined;
  const digits = digitsValue(text);
  if (digits >= bounds.least && digits <= bounds.most) return digits;
  return checkNumber(text, bounds, delimiter, (code, facts) => view.fault(name, code, facts), name);
};

type Report = <C extends "number-bad" | "number-two-ways" | "number-range">(
  code: C,
  facts: Facts<C>,
) => undefined;

/** Reads a number of a cell; a mark that could be decimal or thousands is refused where both are within bounds. */
export const checkNumber = (
  text: string,
  bounds: Bounds,
  delimiter: string,
  report: Report,
  name: string,
): number | undefined => {
  const reading = readNumber(text);
  if (!reading.ok) {
    const within = bounds.mend === undefined ? {} : { within: bounds };
    return report("number-bad", { column: name, text, fault: reading.fault, ...within });
  }
  const { value, thousands } = reading;
  const within = (n: number): boolean => n >= bounds.least && n <= bounds.most;
  const open =
    thousands !== undefined && (thousands.mark === "," || delimiter !== ",") && within(thousands.value);
  if (open && within(value)) return report("number-two-ways", { text, small: value, large: thousands.value });
  const meant = open ? thousands.value : value;
  if (!within(meant)) return report("number-range", { text, ...bounds });
  return meant;
};

const daysIn = (year: number, month: number): number =>
  month === 2
    ? year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
      ? 29
      : 28
    : [4, 6, 9, 11].includes(month)
      ? 30
      : 31;

/** Whether a text is a calendar date `YYYY-MM-DD` of 1900 to 2100. */
export const isIsoDate = (text: string): boolean => {
  if (isPlainDay(text)) return true;
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return false;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  return year >= 1900 && year <= 2100 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
};

const dateIn = (view: RowView, name: string): string | undefined => {
  const text = view.text(name);
  if (text === "") return view.fault(name, "date-missing", { column: name });
  if (isIsoDate(text)) return text;
  return view.fault(name, "date-bad", { text, ways: datesMeant(text) });
};

/** The ISO dates that a date in another form can mean; none where it names no day. */
export const datesMeant = (text: string): readonly string[] => {
  const match = /^(\d{1,4})[./-](\d{1,2})[./-](\d{1,4})$/.exec(text);
  if (match === null) return [];
  const [a, b, c] = match.slice(1).map(Number) as [number, number, number];
  const iso = (y: number, m: number, d: number): string =>
    `${String(y < 100 ? y + 2000 : y).padStart(4, "0")}-${String(m).padStart(2, "0")}-${String(d).padStart(2, "0")}`;
  const candidates =
    match[1]?.length === 4
      ? [iso(a, b, c)]
      : text.includes(".")
        ? [iso(c, b, a)]
        : [iso(c, b, a), iso(c, a, b)];
  return [...new Set(candidates.filter(isIsoDate))];
};
