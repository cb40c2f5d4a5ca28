// Rows I of the ladder: what somebody saw, by a note or on the engine apart.

import type { Note } from "../../record/index.ts";
import type { TeardownFinding } from "../../teardown/index.ts";
import { type NoteKind, currentNotes } from "./current-notes.ts";
import type { Deciding } from "./deciding.ts";
import { listed } from "../labels.ts";
import { type FoundNow, findingsNow } from "./measured-now.ts";
import type { Row } from "./row.ts";

/** Words of notes that are a finding. A pitted or sticking valve may still seal and is none. */
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

/** What a note and a finding both tell of a bore: the newer holds. */
const ofBores = ["crosshatch", "score"] as const;
type OfBores = (typeof ofBores)[number];
const isOfBores = (what: NoteKind): what is OfBores => ofBores.some((one) => one === what);

/** @source handbook/decision.md 2 */
export const sightRows = (deciding: Deciding): readonly Row[] => {
  const onEngine = findingsNow(deciding.measured);
  const rows = [
    ...found.flatMap(({ what, row, words, text }): readonly Row[] =>
      notesNow(deciding, what, onEngine)
        .filter(({ value = "" }) => words.includes(value))
        .map((note) => ({
          row,
          text: `${text(note.value ?? "")}${note.cylinders.length === 0 ? "" : `, cylinder ${listed(note.cylinders)}`}`,
          from: `note ${note.date}`,
          restsOn: "other-records",
          ...(note.cylinders.length === 1 ? { cylinder: note.cylinders[0] ?? "" } : {}),
        })),
    ),
    ...boreRows(deciding, onEngine),
  ];
  const clean = cleanBores(deciding, onEngine);
  return clean === undefined || rows.some(({ row }) => row === "I2" || row === "I3")
    ? rows
    : [...rows, clean];
};

/** Scores that the nail catches, and bores without hone marks from top to bottom. */
const boreRows = (deciding: Deciding, onEngine: FoundNow): readonly Row[] =>
  deciding.record.engine.cylinders.flatMap((label): readonly Row[] => {
    const row = (id: "I2" | "I3", text: string, from: readonly TeardownFinding[]): Row => ({
      row: id,
      text,
      from: fromText(onEngine, from),
      restsOn: "other-records",
      cylinder: label,
    });
    const scores = boreSeen(deciding, onEngine, { label, what: "score" });
    const caught = scores.filter(({ word }) => word === "nail catches");
    const bare = boreSeen(deciding, onEngine, { label, what: "crosshatch" }).filter(
      ({ word }) => word === "none",
    );
    return [
      ...(caught.length === 0 ? [] : [row("I2", `bore ${label}: the nail catches in a score`, caught)]),
      ...(isWholeStroke(bare) ? [row("I3", `bore ${label}: hone marks gone`, bare)] : []),
    ];
  });

const levels = ["top", "middle", "bottom"] as const;

/** Seen of the bore as a whole or along one side, or at each height. */
const isWholeStroke = (bare: readonly TeardownFinding[]): boolean => {
  const heights = bare.map(({ at }) => levels.find((level) => at?.startsWith(level) === true));
  return bare.length > 0 && (heights.includes(undefined) || levels.every((level) => heights.includes(level)));
};

const fromText = ({ teardown }: FoundNow, seen: readonly TeardownFinding[]): string =>
  `teardown ${String(teardown)}, ${
    seen
      .map(({ date }) => date)
      .toSorted()
      .at(-1) ?? ""
  }`;

interface OfBore {
  readonly label: string;
  readonly what: OfBores;
}

/** Of one bore, where no newer note took its place. */
const boreSeen = (
  deciding: Deciding,
  { findings }: FoundNow,
  { label, what }: OfBore,
): readonly TeardownFinding[] =>
  findings.filter(
    (one) =>
      one.part === "bore" &&
      one.label === label &&
      one.quantity === what &&
      !currentNotes(deciding, what).some(
        ({ date, value, cylinders }) =>
          value !== undefined && date > one.date && (cylinders.length === 0 || cylinders.includes(label)),
      ),
  );

/** Notes that no later one of the same cylinders took the place of, for the cylinders that were not looked at since on the
 *  engine apart. */
const notesNow = (deciding: Deciding, what: NoteKind, onEngine: FoundNow): readonly Note[] => {
  const notes = latestEach(deciding, what);
  if (!isOfBores(what)) return notes;
  return notes.flatMap((note): readonly Note[] => {
    const about = note.cylinders.length === 0 ? deciding.record.engine.cylinders : note.cylinders;
    const left = about.filter(
      (label) => !boreSeen(deciding, onEngine, { label, what }).some(({ date }) => date >= note.date),
    );
    if (left.length === about.length) return [note];
    return left.length === 0 ? [] : [{ ...note, cylinders: left }];
  });
};

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

/** Hone marks there in every bore and no score in any; one bore that was looked at tells nothing of the others. */
const cleanBores = (deciding: Deciding, onEngine: FoundNow): Row | undefined => {
  const all = deciding.record.engine.cylinders;
  const notes = notesNow(deciding, "crosshatch", onEngine).filter(({ value }) => value === "full");
  const marks = all.map((label) => boreSeen(deciding, onEngine, { label, what: "crosshatch" }));
  const covered = all.every((label, i) => {
    const own = marks[i] ?? [];
    return own.length > 0
      ? own.every(({ word }) => word === "full")
      : notes.some(({ cylinders }) => cylinders.length === 0 || cylinders.includes(label));
  });
  const scores = all.map((label) => boreSeen(deciding, onEngine, { label, what: "score" }));
  const isScored = scores.flat().some(({ word }) => word !== "none");
  if (!covered || isScored) return undefined;
  const seen = marks.flat();
  const note = notes.at(-1);
  const from = [
    ...(seen.length === 0 ? [] : [fromText(onEngine, seen)]),
    ...(note === undefined ? [] : [`note ${note.date}`]),
  ];
  const isUnscored =
    notesNow(deciding, "score", onEngine).at(-1)?.value === "none" ||
    scores.every(({ length }) => length > 0);
  return {
    row: "I4",
    text: `hone marks there in every bore${isUnscored ? ", no score" : ""}`,
    from: listed(from),
    restsOn: "other-records",
  };
};
