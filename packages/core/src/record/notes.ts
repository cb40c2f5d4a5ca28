// notes.csv: other evidence, each kind with the words or the units it may be given in.

import type { Problem } from "../problem/index.ts";
import { readNumber } from "../quantity/index.ts";
import { parseTable } from "./csv.ts";
import { cylindersIn } from "./cylinder-lists.ts";
import { flagFormulas, meterIn } from "./common-cells.ts";
import { type RowView, requireColumns, viewTable } from "./row-view.ts";
import type { Engine, Note } from "./types.ts";

export const noteColumns: readonly string[] = ["date", "meter", "what", "value", "unit", "cylinders", "by", "note"];

interface NoteKind {
  readonly words: readonly string[];
  readonly units: readonly string[];
}
const amount = ["none", "some", "heavy"];
const pressures = ["psi", "kPa", "bar", "MPa", "kgf/cm2"];

/** Every kind of evidence with the words and units it takes; a kind with neither takes any text. */
export const noteKinds = {
  "oil use": { words: amount, units: ["L/1000km", "qt/1000mi", "L/h", "mL/h", "qt/h", "L/100h"] },
  "blow-by": { words: amount, units: ["L/min", "ft3/h", "kPa", "mbar", "mmH2O", "inH2O"] },
  "oil pressure hot": { words: ["normal", "low", "none"], units: pressures },
  "filter debris": { words: ["none", "some", "heavy", "bearing metal", "chunks"], units: [] },
  "oil analysis": { words: ["normal", "iron rising", "copper rising", "lead rising", "silicon rising", "coolant", "fuel"], units: ["ppm"] },
  "coolant loss": { words: amount, units: ["L/1000km", "L/100h", "L"] },
  "combustion gas in coolant": { words: ["none", "some", "heavy"], units: ["ppm"] },
  smoke: { words: ["none", "blue", "white", "black"], units: [] },
  knock: { words: amount, units: [] },
  "piston slap": { words: amount, units: [] },
  miss: { words: amount, units: [] },
  "hard start": { words: amount, units: [] },
  crosshatch: { words: ["full", "part", "gone"], units: [] },
  score: { words: amount, units: [] },
  "valve seen": { words: ["good", "burnt", "bent", "pitted", "sticking"], units: [] },
  "crown seen": { words: ["good", "washed", "eroded", "cracked", "wet with oil"], units: [] },
  lash: { words: ["right", "tight", "loose"], units: ["mm", "in", "thou"] },
  "gauge proved": { words: ["yes", "no"], units: [] },
  "other fault": { words: [], units: [] },
  other: { words: [], units: [] },
} as const satisfies Record<string, NoteKind>;

export const noteNames = Object.keys(noteKinds) as readonly (keyof typeof noteKinds)[];

/** Reads notes.csv of an engine; rows with a fault are left out and reported. */
export const readNotes = (
  text: string,
  file: string,
  engine: Engine,
): { readonly notes: readonly Note[]; readonly problems: readonly Problem[] } => {
  const { table, problems: shape } = parseTable(text, file, noteColumns.join(","));
  const problems: Problem[] = [...shape];
  const view = viewTable(table, problems);
  if (!requireColumns(view, ["date", "what"], problems)) return { notes: [], problems };
  const notes = view.rows.flatMap((row): Note[] => {
    const before = problems.length;
    const date = row.date("date");
    const what = row.word("what", noteNames);
    if (row.text("what") === "") row.fault("what", "word-unknown", { column: "what", text: "", words: noteNames });
    const meter = meterIn(row);
    const cylinders = cylindersIn(row, "cylinders", engine.cylinders, []);
    if (what !== undefined) checkValue(row, what);
    flagFormulas(row, ["by", "note"]);
    const faults = problems.slice(before).some((problem) => problem.severity === "error");
    if (faults || date === undefined || what === undefined) return [];
    const optional = (["value", "unit", "by", "note"] as const).flatMap((name) => {
      const cell = row.text(name);
      return cell === "" ? [] : [[name, cell] as const];
    });
    return [{ date, what, cylinders, ...(meter === undefined ? {} : { meter }), ...Object.fromEntries(optional) }];
  });
  return { notes: notes.sort((a, b) => a.date.localeCompare(b.date)), problems };
};

const checkValue = (row: RowView, what: keyof typeof noteKinds): void => {
  const kind: NoteKind = noteKinds[what];
  const value = row.text("value");
  if (value === "" || (kind.words.length === 0 && kind.units.length === 0)) return;
  if (kind.words.includes(value.toLowerCase())) return;
  const numeric = readNumber(value).ok && kind.units.some((unit) => unit.toLowerCase() === row.text("unit").toLowerCase());
  if (!numeric) row.fault("value", "note-value", { what, text: `${value} ${row.text("unit")}`.trim(), words: kind.words, units: kind.units });
};
