// services.csv: what was done to the engine, and which cylinders begin a new history with it.

import { byText, type Problem } from "../problem/index.ts";
import { parseTable } from "./csv.ts";
import { cylindersIn } from "./cylinder-lists.ts";
import { byAndNote, meterIn } from "./common-cells.ts";
import { requireColumns, viewTable } from "./row-view.ts";
import type { Engine, Service, Work } from "./types.ts";

export const serviceColumns: readonly string[] = [
  "date",
  "meter",
  "what",
  "cylinders",
  "new_baseline",
  "by",
  "note",
];

/** Every kind of work; true where the cylinders touched begin a new history. */
const works: Readonly<Record<Work, boolean>> = {
  "valve job": true,
  "head gasket": true,
  "head off": true,
  "re-ring": true,
  rebore: true,
  rebuild: true,
  "valve lash": false,
  "timing drive": false,
  plugs: false,
  "oil change": false,
  additive: false,
  storage: false,
  overheated: false,
  flooded: false,
  "over-rev": false,
  "water drawn in": false,
  "meter replaced": false,
  other: false,
};

export const workNames = Object.keys(works) as readonly Work[];
/** Whether a kind of work starts a new history for the cylinders it touches. */
export const startsAnew = (what: Work): boolean => works[what];

/** Reads services.csv of an engine; rows with a fault are left out and reported. */
export const readServices = (
  text: string,
  file: string,
  engine: Engine,
): { readonly services: readonly Service[]; readonly problems: readonly Problem[] } => {
  const { table, problems: shape } = parseTable(text, file, serviceColumns.join(","));
  const problems: Problem[] = [...shape];
  const view = viewTable(table, problems);
  if (!requireColumns(view, ["date", "what"], problems)) return { services: [], problems };
  const services = view.rows.flatMap((row): Service[] => {
    const before = problems.length;
    const date = row.date("date");
    const what = row.neededWord("what", workNames);
    const meter = meterIn(row);
    const cylinders = cylindersIn(row, "cylinders", engine.cylinders, engine.cylinders);
    const newBaseline = cylindersIn(
      row,
      "new_baseline",
      engine.cylinders,
      what !== undefined && works[what] ? cylinders : [],
    );
    const texts = byAndNote(row);
    const faults = problems.slice(before).some((problem) => problem.severity === "error");
    if (faults || date === undefined || what === undefined) return [];
    return [
      {
        date,
        what,
        cylinders,
        newBaseline,
        ...(meter === undefined ? {} : { meter }),
        ...texts,
      },
    ];
  });
  return { services: services.sort((a, b) => byText(a.date, b.date)), problems };
};
