// The notes that are still true today: of the last year, and not of a part that was renewed since.

import { readNumber } from "../../quantity/index.ts";
import type { Note, Work } from "../../record/index.ts";
import { isCurrent } from "./current.ts";
import type { Deciding } from "./deciding.ts";

export type NoteKind = Note["what"];

/** Work that makes what was noted before it untrue, where the newest history of the cylinders does not tell: bearings are
 *  seen to with rings or in a rebuild (judgement). */
const bottomWork: readonly Work[] = ["re-ring", "rebuild"];
const ofTheBottom: readonly NoteKind[] = ["oil pressure hot", "filter debris", "oil analysis", "knock"];

type Known = Pick<Deciding, "record" | "today">;

/** In order of their dates. */
export const currentNotes = ({ record, today }: Known, what: NoteKind): readonly Note[] =>
  record.notes.filter(
    (note) => note.what === what && isCurrent(note.date, today) && !isCured({ record, today }, note),
  );

export const newestOf = (known: Known, what: NoteKind): Note | undefined => currentNotes(known, what).at(-1);

/** Whether a note of that kind is there, but too old or of parts that were renewed since. */
export const hasOldNote = ({ record, today }: Known, what: NoteKind): boolean =>
  record.notes.some((note) => note.what === what && note.date <= today);

const isCured = ({ record: { services, engine }, today }: Known, note: Note): boolean => {
  const since = services.filter(({ date }) => date > note.date && date <= today);
  if (ofTheBottom.includes(note.what)) return since.some(({ what }) => bottomWork.includes(what));
  const renewed = new Set(since.flatMap(({ newBaseline }) => newBaseline));
  const about = note.cylinders.length === 0 ? engine.cylinders : note.cylinders;
  return about.every((label) => renewed.has(label));
};

/** A figure with its unit; undefined for a word. */
export const figureOf = ({ value = "", unit }: Note): number | undefined => {
  const read = readNumber(value);
  return unit !== undefined && read.ok ? read.value : undefined;
};

/** The own first figure of the same kind and unit, since rings or bores were last done; undefined where there is no earlier
 *  one. */
export const firstOf = ({ record: { notes, services } }: Known, note: Note): Note | undefined => {
  const since = services.findLast(
    ({ date, what }) => date <= note.date && ["re-ring", "rebore", "rebuild"].includes(what),
  );
  return notes.find(
    (one) =>
      one.what === note.what &&
      one.unit === note.unit &&
      one.date > (since?.date ?? "") &&
      one.date < note.date &&
      (figureOf(one) ?? 0) > 0,
  );
};

/** How many times that first figure. */
export const timesBaseline = (known: Known, note: Note): number | undefined => {
  const first = firstOf(known, note);
  const [before, now] = [first === undefined ? undefined : figureOf(first), figureOf(note)];
  return before === undefined || now === undefined ? undefined : now / before;
};
