// notes.csv: other evidence, each kind with the words or the units it may be given in.

import { byText, type Problem } from "../problem/index.ts";
import { readNumber } from "../quantity/index.ts";
import { readRows } from "./read-rows.ts";
import { cylindersIn } from "./cylinder-lists.ts";
import { byAndNote, meterIn } from "./common-cells.ts";
import type { RowView } from "./row-view.ts";
import type { Engine } from "./engine-types.ts";
import type { Note } from "./types.ts";

/** The columns of notes.csv, in order. */
export const noteColumns: readonly string[] = [
  "date",
  "meter",
  "what",
  "value",
  "unit",
  "cylinders",
  "by",
  "note",
];

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
  "oil pressure hot": { words: ["normal", "low", "proved low", "none"], units: pressures },
  "filter debris": { words: ["none", "some", "heavy", "bearing metal", "chunks"], units: [] },
  "oil analysis": {
    words: ["normal", "iron rising", "copper rising", "lead rising", "silicon rising", "coolant", "fuel"],
    units: ["ppm"],
  },
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

/** The kinds of notes, by the words they are recorded under. */
export const noteNames = Object.keys(noteKinds) as readonly (keyof typeof noteKinds)[];

/** Reads notes.csv of an engine; rows with a fault are left out and reported. */
export const readNotes = (
  text: string,
  file: string,
  engine: Engine,
): { readonly notes: readonly Note[]; readonly problems: readonly Problem[] } => {
  const { rows, problems } = readRows(text, file, {
    columns: noteColumns,
    needed: ["date", "what"],
    read: (row): Note | undefined => {
      const date = row.date("date");
      const what = row.neededWord("what", noteNames);
      const meter = meterIn(row);
      const cylinders = cylindersIn(row, "cylinders", engine.cylinders, []);
      const value = what === undefined ? {} : valueIn(row, noteKinds[what], what);
      const texts = byAndNote(row);
      if (date === undefined || what === undefined) return undefined;
      return { date, what, cylinders, ...value, ...(meter === undefined ? {} : { meter }), ...texts };
    },
  });
  return { notes: rows.sort((a, b) => byText(a.date, b.date)), problems };
};

/** No evidence is below nothing; so wide that a mark which may be one of thousands is always asked about. */
const figures = { least: 0, most: 999_999_999 };

/** Value and unit as the table of kinds spells them; free text as it stands. */
const valueIn = (row: RowView, kind: NoteKind, what: string): Pick<Note, "value" | "unit"> => {
  const value = row.text("value");
  const unit = row.text("unit");
  if (kind.words.length === 0 && kind.units.length === 0)
    return { ...(value === "" ? {} : { value }), ...(unit === "" ? {} : { unit }) };
  if (value === "") return {};
  const word = kind.words.find((known) => known === value.toLowerCase());
  if (word !== undefined) return { value: word };
  const known = kind.units.find((name) => name.toLowerCase() === unit.toLowerCase());
  if (known !== undefined && readNumber(value).ok)
    return row.number("value", { of: `${what} in ${known}`, ...figures }) === undefined
      ? {}
      : { value, unit: known };
  const text = `${value} ${unit}`.trim();
  row.fault("value", "note-value", { what, text, words: kind.words, units: kind.units });
  return {};
};
