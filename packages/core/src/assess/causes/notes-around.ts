// The notes that speak of the engine as it was on the day of a test: of the year before it, and what was seen after it as
// long as nothing else was done or measured.

import type { Note } from "../../record/index.ts";
import type { Assessed } from "./assessed.ts";
import { daysBefore } from "./work-since.ts";

/** Judgement. */
const year = 365;

/** In order. A note from before work that began a new history on all cylinders, or on all that it names, is left out. */
export const notesAround = (
  { record, test }: Pick<Assessed, "record" | "test">,
  what: Note["what"],
): readonly Note[] => {
  const { notes, services, tests, engine } = record;
  const next = tests.find(({ date, setAside }) => date > test.date && setAside === undefined)?.date;
  const work = services.filter(({ newBaseline }) => newBaseline.length > 0);
  const until = [next, work.find(({ date }) => date > test.date)?.date].filter((date) => date !== undefined);
  const isOver = (note: Note): boolean =>
    work.some(({ date, newBaseline }) => {
      const about = note.cylinders.length === 0 ? engine.cylinders : note.cylinders;
      return date > note.date && date <= test.date && about.every((label) => newBaseline.includes(label));
    });
  return notes.filter(
    (note) =>
      note.what === what &&
      note.date >= daysBefore(test.date, year) &&
      until.every((date) => note.date < date) &&
      !isOver(note),
  );
};

/** Of one kind. */
export const newestNote = (
  assessed: Pick<Assessed, "record" | "test">,
  what: Note["what"],
): Note | undefined => notesAround(assessed, what).at(-1);
