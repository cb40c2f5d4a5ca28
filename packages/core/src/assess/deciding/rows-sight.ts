// Rows I of the ladder: what somebody saw.

import type { Note } from "../../record/index.ts";
import { type NoteKind, currentNotes, newestOf } from "./current-notes.ts";
import type { Deciding } from "./deciding.ts";
import { listed } from "../labels.ts";
import type { Row } from "./row.ts";

/** Words that are a finding. A pitted or sticking valve may still seal and is none. */
const found: readonly {
  readonly what: NoteKind;
  readonly row: Row["row"];
  readonly words: readonly string[];
  readonly text: (value: string) => string;
}[] = [
  { what: "valve seen", row: "I1", words: ["burnt", "bent"], text: (value) => `a ${value} valve seen` },
  {
    what: "score",
    row: "I2",
    words: ["some", "heavy"],
    text: (value) => `${value === "some" ? "" : "heavily "}scored bore seen`,
  },
  { what: "crown seen", row: "I2", words: ["cracked", "eroded"], text: (value) => `piston crown ${value}` },
  { what: "crosshatch", row: "I3", words: ["gone"], text: () => "hone marks gone" },
];

/** @source handbook/decision.md 2 */
export const sightRows = (deciding: Deciding): readonly Row[] => {
  const rows = found.flatMap(({ what, row, words, text }): readonly Row[] =>
    latestEach(deciding, what)
      .filter(({ value = "" }) => words.includes(value))
      .map((note) => ({
        row,
        text: `${text(note.value ?? "")}${note.cylinders.length === 0 ? "" : `, cylinder ${listed(note.cylinders)}`}`,
        from: `note ${note.date}`,
        restsOn: "other-records",
        ...(note.cylinders.length === 1 ? { cylinder: note.cylinders[0] ?? "" } : {}),
      })),
  );
  const clean = cleanBores(deciding);
  return clean === undefined || rows.some(({ row }) => row === "I2" || row === "I3")
    ? rows
    : [...rows, clean];
};

/** Notes that no later one of the same cylinders took the place of. */
const latestEach = (deciding: Deciding, what: NoteKind): readonly Note[] => {
  const notes = currentNotes(deciding, what);
  return notes.filter(
    (note, i) =>
      !notes
        .slice(i + 1)
        .some(
          (later) =>
            later.cylinders.length === 0 || note.cylinders.every((one) => later.cylinders.includes(one)),
        ),
  );
};

/** Hone marks there in every bore; one bore that was looked at tells nothing of the others. */
const cleanBores = (deciding: Deciding): Row | undefined => {
  const seen = latestEach(deciding, "crosshatch").filter(({ value }) => value === "full");
  const all = deciding.record.engine.cylinders;
  const covered = all.every((label) =>
    seen.some(({ cylinders }) => cylinders.length === 0 || cylinders.includes(label)),
  );
  const last = seen.at(-1);
  if (last === undefined || !covered) return undefined;
  const score = newestOf(deciding, "score");
  return {
    row: "I4",
    text: `hone marks there in every bore${score?.value === "none" ? ", no score" : ""}`,
    from: `note ${last.date}`,
    restsOn: "other-records",
  };
};
