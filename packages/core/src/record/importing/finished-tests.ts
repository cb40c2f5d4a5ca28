// Gathered tests as they leave the import: what says nothing without its supply, and a mark that must stand wrong, is left out first.

import { type Problem, problem } from "../../problem/index.ts";
import { readNumber } from "../../quantity/index.ts";
import { median } from "../../statistics/index.ts";
import type { DraftRow, DraftTest, TakenText } from "./gather.ts";
import type { ImportedTest, Sheet } from "./imported.ts";
import type { LeftList } from "./left-out.ts";
import { testKey } from "./recorded.ts";

/** The tests of a sheet, by engine and date, and how many of their readings were left out.
 *  @param left - gets the reasons */
export const finishedTests = (
  drafts: readonly DraftTest[],
  sheet: Sheet,
  left: LeftList,
): { readonly tests: readonly ImportedTest[]; readonly lost: number } => {
  let lost = 0;
  const leave = ({ row, column }: TakenText, what: Problem, readings: number): void => {
    lost += readings;
    left.found(row, column, what, readings);
  };
  const misplacedIn = markFinder(drafts);
  const tests = drafts.flatMap((draft): readonly ImportedTest[] => {
    const isSupplied = [...draft.facts.keys()].some((name) => name.startsWith("regulated_"));
    const rows = draft.rows.flatMap((row): readonly DraftRow[] => {
      const isGood = isSupplied || row.unit === "%" || row.gauge !== "" || !row.what.startsWith("leak");
      if (!isGood) {
        const facts = { test: `${draft.engine.engine} ${draft.date}` };
        leave({ ...row, text: "" }, problem("supply-missing", facts), readingsIn(row));
        return [];
      }
      const misplaced = misplacedIn(row);
      if (misplaced.length === 0) return [row];
      for (const [, cell] of misplaced) leave(cell, problem("import-mark", { text: cell.text }), 1);
      const away = new Set(misplaced.map(([label]) => label));
      const rest = { ...row, cells: new Map([...row.cells].filter(([label]) => !away.has(label))) };
      return readingsIn(rest) === 0 ? [] : [rest];
    });
    return rows.length === 0 ? [] : [finished({ ...draft, rows }, sheet)];
  });
  return { tests, lost };
};

const readingsIn = ({ cells }: DraftRow): number =>
  [...cells.values()].filter(({ text }) => text !== "x").length;

/** Finds the cells of a row that are next to nothing among their fellows with their mark, and like them without: 1,26 among 126s,
 *  1.050 among 998s. A reading alone has those of the whole sheet for fellows. One that is marked as doubtful is taken, and so is a
 *  5.0: a cylinder can hold nothing. */
const markFinder = (
  drafts: readonly DraftTest[],
): ((row: DraftRow) => readonly (readonly [label: string, cell: TakenText])[]) => {
  const middles = new Map<string, number | undefined>();
  const middleOf = ({ unit, what }: DraftRow): number | undefined => {
    const key = `${what} ${unit}`;
    if (!middles.has(key)) {
      const alike = drafts.flatMap(({ rows }) =>
        rows.filter((row) => row.unit === unit && row.what === what),
      );
      middles.set(key, middle(alike.flatMap((row) => figuresIn(row))));
    }
    return middles.get(key);
  };
  return (row) => {
    if (row.unit === "%" || row.what.startsWith("leak")) return [];
    return [...row.cells].filter(([label, { text }]) => {
      if (!marked.test(text)) return false;
      const fellows = middle(figuresIn(row, label)) ?? middleOf(row);
      const share = Number(text.replace(".", "")) / (fellows ?? Infinity);
      return share > alike.least && share < alike.most;
    });
  };
};

const marked = /^\d{1,2}\.\d{2,3}$/;

/** The readings of a row above nothing, whose marks leave no doubt. @param but - a cylinder that is left out */
const figuresIn = ({ cells }: DraftRow, but?: string): readonly number[] =>
  [...cells].flatMap(([label, { text }]) => {
    const read = label === but || marked.test(text) ? undefined : readNumber(text);
    return read?.ok === true && read.value > 0 ? [read.value] : [];
  });

const middle = (figures: readonly number[]): number | undefined =>
  figures.length === 0 ? undefined : median(figures);

/** Judgement of this project. */
const alike = { least: 0.5, most: 2 };

const finished = ({ engine, date, facts, rows }: DraftTest, sheet: Sheet): ImportedTest => {
  const conditions = [...facts].filter(([name]) => name !== "meter" && name !== "by");
  const [meter, by] = [facts.get("meter"), facts.get("by")];
  const test = {
    engine: engine.engine,
    cylinders: engine.cylinders,
    date,
    ...(meter === undefined ? {} : { meter }),
    ...(by === undefined ? {} : { by }),
    conditions: Object.fromEntries(conditions),
    rows: rows.map((row) => ({
      what: row.what,
      take: row.take ?? 1,
      ...(row.gauge === "" ? {} : { gauge: row.gauge }),
      unit: row.unit,
      cells: engine.cylinders.map((label) => row.cells.get(label)?.text ?? "x"),
      ...(row.notes.size === 0 ? {} : { note: [...row.notes].join("; ") }),
      from: sheet.place(row.row, row.column),
    })),
  };
  return { ...test, key: testKey(test) };
};
