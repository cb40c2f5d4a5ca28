// services.csv: what was done to the engine, and which cylinders begin a new history with it.

import { byText, type Problem } from "../problem/index.ts";
import { readRows } from "./read-rows.ts";
import { cylindersIn } from "./cylinder-lists.ts";
import { byAndNote, meterIn } from "./common-cells.ts";
import type { Engine } from "./engine-types.ts";
import type { Service, Work } from "./types.ts";

/** The columns of services.csv, in order. */
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

/** The kinds of work, by the words they are recorded under. */
export const workNames = Object.keys(works) as readonly Work[];
/** Whether a kind of work starts a new history for the cylinders it touches. */
export const startsAnew = (what: Work): boolean => works[what];

/** Reads services.csv of an engine; rows with a fault are left out and reported. */
export const readServices = (
  text: string,
  file: string,
  engine: Engine,
): { readonly services: readonly Service[]; readonly problems: readonly Problem[] } => {
  const { rows, problems } = readRows(text, file, {
    columns: serviceColumns,
    needed: ["date", "what"],
    read: (row): Service | undefined => {
      const date = row.date("date");
      const what = row.neededWord("what", workNames);
      const meter = meterIn(row);
      const cylinders = cylindersIn(row, "cylinders", engine.cylinders, engine.cylinders);
      const usual = what !== undefined && works[what] ? cylinders : [];
      const newBaseline = cylindersIn(row, "new_baseline", engine.cylinders, usual);
      const texts = byAndNote(row);
      if (date === undefined || what === undefined) return undefined;
      return { date, what, cylinders, newBaseline, ...(meter === undefined ? {} : { meter }), ...texts };
    },
  });
  return { services: rows.sort((a, b) => byText(a.date, b.date)), problems };
};
