// Each line of evidence that nobody looked at, or not within the year, with what would record it.

import { type EvidenceLine, ladder } from "../../decision/index.ts";
import { burnsOil } from "../../record/index.ts";
import { askedOf } from "./asked.ts";
import { type NoteKind, hasOldNote, newestOf } from "./current-notes.ts";
import { listed } from "../labels.ts";
import { isLeakOnly } from "../leak-only.ts";
import { unreadIn, unreadText } from "../never-read.ts";
import { damageOf } from "./damage.ts";
import { type Deciding, renewedAfter } from "./deciding.ts";
import { findingsNow } from "./measured-now.ts";
import { measuredNotSeen } from "./measured-not-seen.ts";
import { type Row, percent } from "./row.ts";
import { leaksBetween } from "./rows-leak.ts";
import { isVoid } from "../trust/trust.ts";
import { valuesOf } from "../values/values.ts";

/** A line of evidence that nobody looked at within the year, with what would record it. */
export interface NotSeen {
  readonly line: EvidenceLine;
  /** What was not looked at: `oil use over time`. */
  readonly text: string;
  /** What would record it, ready to type; absent where nothing here can record it yet. */
  readonly command?: string;
  /** Why what is there does not count. */
  readonly why?: string;
  /** Of a test that was made and no longer speaks: its date (ISO). */
  readonly last?: string;
  /** Of cylinders that no test of the year read: which. */
  readonly cylinders?: readonly string[];
  /** What looking would settle, where a note says too little. */
  readonly settles?: string;
}

interface Line {
  readonly line: EvidenceLine;
  readonly text: string;
  readonly kinds: readonly NoteKind[];
  /** After the name of the engine. */
  readonly note?: string;
}

const lines: readonly Line[] = [
  {
    line: "oil use",
    text: "oil use over time",
    kinds: ["oil use"],
    note: '--what "oil use" --value "0.4L/1000km"',
  },
  { line: "blow-by", text: "blow-by over time", kinds: ["blow-by"], note: "--what blow-by --value none" },
  {
    line: "oil pressure",
    text: "hot oil pressure",
    kinds: ["oil pressure hot"],
    note: '--what "oil pressure hot" --value normal',
  },
  {
    line: "debris",
    text: "filter and oil: debris",
    kinds: ["filter debris", "oil analysis"],
    note: '--what "filter debris" --value none',
  },
  {
    line: "noise",
    text: "knock and piston slap",
    kinds: ["knock", "piston slap"],
    note: "--what knock --value none",
  },
  {
    line: "coolant",
    text: "coolant: loss, combustion gas",
    kinds: ["coolant loss", "combustion gas in coolant"],
    note: '--what "coolant loss" --value none',
  },
  {
    line: "sight",
    text: "bores, valves and crowns by eye",
    kinds: ["crosshatch", "score", "valve seen", "crown seen"],
    note: "--what crosshatch --value full",
  },
];

/** What an engine that burns its oil has not: a sump. */
const ofTheSump: readonly EvidenceLine[] = ["oil use", "oil pressure", "debris"];

/** @param rows - that were found to hold */
export const notSeenOf = (deciding: Deciding, rows: readonly Row[]): readonly NotSeen[] => {
  const { engine } = deciding.record;
  const known = new Set(rows.map(({ row }) => ladder[row].line));
  const tests = (["cranking", "leak-down"] as const).filter(
    (line) => !known.has(line) && !isTested(deciding, line),
  );
  const asked = askedOf(deciding);
  const notes = lines
    .filter(
      ({ line }) =>
        !known.has(line) &&
        !asked.some((one) => one.line === line) &&
        !(line === "coolant" && engine.cooling === "air") &&
        !(ofTheSump.includes(line) && burnsOil(engine)) &&
        !(line === "sight" && findingsNow(deciding.measured).findings.some(({ part }) => part === "bore")),
    )
    .flatMap((line) => ofNotes(deciding, line));
  return [
    ...neverRead(deciding),
    ...tests.map((line) => ofTests(deciding, line)),
    ...sinceWork(deciding),
    ...voidSince(deciding),
    ...betweenBands(deciding),
    ...damageOf(deciding).flatMap(({ asked }) => asked ?? []),
    ...asked,
    ...notes,
    ...measuredNotSeen(deciding),
  ];
};

/** Cylinders that the test gone by passed over, and no other of its year read. */
const neverRead = (deciding: Deciding): readonly NotSeen[] => {
  const { record, main } = deciding;
  const unread = main === undefined ? [] : unreadIn(record, main.test);
  if (unread.length === 0) return [];
  const text = `cylinder${unread.length === 1 ? "" : "s"} ${unreadText(unread)}`;
  const line = main !== undefined && isLeakOnly(main.test) ? "leak-down" : "cranking";
  return [{ ...recordedBy(deciding, line), text, cylinders: unread.map(({ label }) => label) }];
};

/** A cranking test newer than the one that speaks, and void: it was made, and is not passed over in silence. */
const voidSince = (deciding: Deciding): readonly NotSeen[] => {
  const { record, figures, today, dry } = deciding;
  const last = record.tests.findLast(
    (test) => test.date <= today && test.setAside === undefined && valuesOf(test, "dry") !== undefined,
  );
  if (dry === undefined || last === undefined || last.date <= dry.test.date) return [];
  if (!isVoid(record, last, { what: "dry", figures })) return [];
  return [
    {
      ...recordedBy(deciding, "cranking"),
      text: `the cranking test ${last.id}, which is void`,
      why: `what made it void: sealtrend show ${record.engine.id} --test ${last.id}`,
    },
  ];
};

/** A leak that was placed, more than sound cylinders lose and less than is too much: no row, and yet no silence. */
const betweenBands = (deciding: Deciding): readonly NotSeen[] =>
  leaksBetween(deciding).map(({ label, lost, place }) => ({
    ...recordedBy(deciding, "leak-down"),
    text: `whether ${percent(lost)} lost by ${label}, its air at the ${place}, grows`,
    why: "more than sound cylinders lose, less than is too much by itself: the next leak-down tells",
  }));

/** Cylinders renewed since a test that still speaks of the others: what was read of them before tells nothing any more. */
const sinceWork = (deciding: Deciding): readonly NotSeen[] =>
  (["cranking", "leak-down"] as const).flatMap((line) => {
    const test = line === "cranking" ? deciding.dry : deciding.leakDown;
    if (test === undefined) return [];
    const renewed = renewedAfter(deciding, { date: test.test.date, today: deciding.today });
    const labels = test.cylinders.flatMap(({ label }) => (renewed.has(label) ? [label] : []));
    if (labels.length === 0) return [];
    const what = line === "cranking" ? "cranking compression" : "leak-down";
    return [
      {
        ...recordedBy(deciding, line),
        text: `${what} of ${listed(labels)} since the work on ${labels.length === 1 ? "it" : "them"}`,
        why: `${test.test.id} was made before it`,
      },
    ];
  });

const isTested = ({ dry, leakDown }: Deciding, line: "cranking" | "leak-down"): boolean =>
  (line === "cranking" ? dry : leakDown) !== undefined;

const recordedBy = (
  { record }: Deciding,
  line: "cranking" | "leak-down",
): Pick<NotSeen, "line"> & { readonly command: string } => {
  const { id, cylinders } = record.engine;
  const readings = cylinders.map(() => (line === "cranking" ? "150" : "74/80")).join(" ");
  const command =
    line === "cranking"
      ? `sealtrend enter ${id} --dry "${readings}" --unit psi`
      : `sealtrend enter ${id} --leak-down "${readings}" --unit psi`;
  return { line, command };
};

const ofTests = (deciding: Deciding, line: "cranking" | "leak-down"): NotSeen => {
  const { history } = deciding;
  const last = (line === "cranking" ? history.cranking : history.leakDown)?.counted.at(-1)?.test;
  const text = line === "cranking" ? "cranking compression" : "leak-down";
  return {
    ...recordedBy(deciding, line),
    text,
    ...(last === undefined
      ? {}
      : {
          last: last.date,
          why: `the last one that is left, ${last.id}, is older than a year, void, doubtful or from before work on it`,
        }),
  };
};

const ofNotes = (deciding: Deciding, { line, text, kinds, note = "" }: Line): readonly NotSeen[] => {
  const seen = kinds.flatMap((what) => newestOf(deciding, what) ?? []);
  const command = `sealtrend note ${deciding.record.engine.id} ${note}`;
  const told = seen.find(({ value }) => value !== undefined);
  if (told !== undefined) {
    // a word that was looked for and is no row: nothing heard, marks half gone
    const isTrend = line === "oil use" || line === "blow-by" || line === "oil pressure";
    return isTrend
      ? [
          {
            line,
            text,
            command,
            why: `one note (${told.date}) tells no change: it takes an earlier figure in the same unit`,
          },
        ]
      : [];
  }
  const isOld = kinds.some((what) => hasOldNote(deciding, what));
  return [
    {
      line,
      text,
      command,
      ...(isOld ? { why: "what was noted is older than a year, or from before work on it" } : {}),
    },
  ];
};
