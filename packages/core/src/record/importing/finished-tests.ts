// Gathered tests as they leave the import: what says nothing without its supply, and a mark that must stand wrong, is left out first.

import { type Problem, problem } from "../../problem/index.ts";
import { readNumber } from "../../quantity/index.ts";
import { median } from "../../statistics/index.ts";
import type { CellAt } from "./cell-places.ts";
import type { DraftRow, DraftTest } from "./gather.ts";
import type { ImportedTest } from "./imported.ts";
import type { LeftList } from "./left-out.ts";

/** The tests of a sheet, by engine and date, and how many of their readings were left out.
 *  @param drafts - taken over: each is let go when its test is finished  @param left - gets the reasons */
export const finishedTests = (
  drafts: DraftTest[],
  left: LeftList,
): { readonly tests: readonly ImportedTest[]; readonly lost: number } => {
  let lost = 0;
  const leave = (cell: CellAt | undefined, what: Problem, readings: number): void => {
    lost += readings;
    if (cell !== undefined) left.found(cell.row, cell.column, what, readings);
  };
  const misplacedIn = markFinder(drafts);
  const isGood = (draft: DraftTest, row: DraftRow): boolean => {
    if (row.unit !== "%" && row.gauge === "" && row.what.startsWith("leak") && !isSupplied(draft)) {
      const facts = { test: `${draft.engine.engine} ${draft.date}` };
      leave(row.places.cell(undefined), problem("supply-missing", facts), readingsIn(row));
      return false;
    }
    for (const at of misplacedIn(row)) {
      leave(row.places.cell(at), problem("import-mark", { text: row.texts[at] ?? "" }), 1);
      row.texts[at] = undefined;
    }
    return readingsIn(row) > 0;
  };
  const tests: ImportedTest[] = [];
  drafts.reverse();
  for (let draft = drafts.pop(); draft !== undefined; draft = drafts.pop()) {
    const own = draft;
    const rows = own.rows.filter((row) => isGood(own, row));
    if (rows.length > 0) tests.push(finished(own, rows));
  }
  return { tests, lost };
};

const isSupplied = ({ facts }: DraftTest): boolean =>
  Object.entries(facts).some(([name, value]) => value !== "" && name.startsWith("regulated_"));

const readingsIn = ({ texts }: DraftRow): number =>
  texts.reduce((sum, text) => sum + (text === undefined || text === "x" ? 0 : 1), 0);

/** Finds the cells of a row that are next to nothing among their fellows with their mark, and like them without: 1,26 among 126s,
 *  1.050 among 998s. A reading alone has those of the whole sheet for fellows. One that is marked as doubtful is taken, and so is a
 *  5.0: a cylinder can hold nothing. */
const markFinder = (drafts: readonly DraftTest[]): ((row: DraftRow) => readonly number[]) => {
  const middles = sheetMiddles(drafts);
  return (row) => {
    if (isOpenToMarks(row))
      return row.texts.flatMap((text = "", at) => {
        if (!marked.test(text)) return [];
        const fellows = middle(figuresIn(row, at)) ?? middles.get(row.what)?.get(row.unit);
        const share = Number(text.replace(".", "")) / (fellows ?? Infinity);
        return share > alike.least && share < alike.most ? [at] : [];
      });
    return [];
  };
};

const isOpenToMarks = ({ unit, what, texts }: DraftRow): boolean =>
  unit !== "%" && !what.startsWith("leak") && texts.some((text = "") => marked.test(text));

type Middles = ReadonlyMap<string, ReadonlyMap<string, number>>;

/** The middle of all readings of a kind and unit, for rows that have none to hold a mark against; worked out before any of them is
 *  let go. */
const sheetMiddles = (drafts: readonly DraftTest[]): Middles => {
  const wanted = new Map<string, Map<string, number[]>>();
  const rows = function* (): Iterable<DraftRow> {
    for (const draft of drafts) yield* draft.rows;
  };
  for (const row of rows())
    if (isOpenToMarks(row) && figuresIn(row).length === 0) {
      const units = wanted.get(row.what) ?? new Map<string, number[]>();
      wanted.set(row.what, units.set(row.unit, []));
    }
  if (wanted.size > 0)
    for (const row of rows()) {
      const figures = wanted.get(row.what)?.get(row.unit);
      if (figures !== undefined) for (const figure of figuresIn(row)) figures.push(figure);
    }
  return new Map(
    [...wanted].map(([what, units]) => [
      what,
      new Map(
        [...units].flatMap(([unit, figures]) => (figures.length === 0 ? [] : [[unit, median(figures)]])),
      ),
    ]),
  );
};

const marked = /^\d{1,2}\.\d{2,3}$/;

/** The readings of a row above nothing, whose marks leave no doubt. @param but - a cylinder that is left out */
const figuresIn = ({ texts }: DraftRow, but?: number): readonly number[] =>
  texts.flatMap((text, at) => {
    const read = at === but || text === undefined || marked.test(text) ? undefined : readNumber(text);
    return read?.ok === true && read.value > 0 ? [read.value] : [];
  });

const middle = (figures: readonly number[]): number | undefined =>
  figures.length === 0 ? undefined : median(figures);

/** Judgement of this project. */
const alike = { least: 0.5, most: 2 };

const finished = ({ engine, date, facts }: DraftTest, rows: readonly DraftRow[]): ImportedTest => {
  const { meter = "", by = "", set_aside: aside = "", test: _, ...others } = facts;
  const conditions = Object.entries(others).filter(([, value]) => value !== "");
  return {
    engine: engine.engine,
    cylinders: engine.cylinders,
    date,
    ...(meter === "" ? {} : { meter }),
    ...(by === "" ? {} : { by }),
    ...(aside === "" ? {} : { setAside: aside }),
    conditions: conditions.length === 0 ? noConditions : Object.fromEntries(conditions),
    rows: rows.map(({ what, take = 1, gauge, unit, texts, places, notes }) => ({
      what,
      take,
      ...(gauge === "" ? {} : { gauge }),
      unit,
      cells: texts.map((text = "x") => text),
      ...(notes.length === 0 ? {} : { note: notes.join("; ") }),
      from: places,
    })),
  };
};

const noConditions: ImportedTest["conditions"] = {};
