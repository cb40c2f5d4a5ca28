// Rows C to H of the ladder, from the notes: oil use, blow-by, oil pressure, debris, noise, coolant.

import { type Note, burnsOil } from "../../record/index.ts";
import { type NoteKind, figureOf, firstOf, newestOf, timesBaseline } from "./current-notes.ts";
import type { Deciding } from "./deciding.ts";
import type { Row } from "./row.ts";

type Id = Row["row"];

/** Times the own baseline. @source handbook/decision.md 2: C0 Caterpillar SEBU6711, C1 Cat 3412C, C2 Westerbeke, D1
 *  SEBU6711 */
const times = { raised: 1.5, three: 3, four: 4 } as const;
/** What one maker calls excessive, in L/1000km: 0.9 L in 3200 km. @source Saturn VUE 2003 (handbook/trade.md F1) */
const excessive = 0.9 / 3.2;
/** L/1000km of one unit. */
const distances: Readonly<Partial<Record<string, number>>> = {
  "L/1000km": 1,
  "qt/1000mi": 0.946353 / 1.609344,
};
/** Oil pressure against an earlier own figure: as it was, and low; judgement. */
const pressure = { asBefore: 0.9, low: 0.75 } as const;
/** A figure at a limit is at it, whatever the last digit of the arithmetic says. */
const atLeast = 1 - 1e-9;

/** @param leakRows - of the same decision: raised oil use with a healthy leak-down speaks of guides and seals, and no lost
 *  coolant says nothing where air comes out at a valve */
export const runningRows = (deciding: Deciding, leakRows: readonly Row[]): readonly Row[] => {
  const oil = oilRows(deciding);
  const raised = oil.find(({ row }) => row !== "C3");
  const healthy = leakRows.some(({ row }) => row === "B1");
  return [
    ...oil,
    ...(raised !== undefined && healthy
      ? [
          {
            ...raised,
            row: "C4" as const,
            text: "oil use is up, yet the leak-down is healthy: guides or seals",
          },
        ]
      : []),
    ...blowByRows(deciding),
    ...pressureRows(deciding),
    ...words.flatMap(({ what, rows }) => worded(deciding, what, rows)),
    ...coolantLoss(deciding, leakRows),
  ];
};

const rowFrom = (row: Id, note: Note, text: string): Row => ({
  row,
  text,
  from: `note ${note.date}`,
  restsOn: "other-records",
  ...(note.cylinders.length === 1 ? { cylinder: note.cylinders[0] ?? "" } : {}),
});

const factor = (number: number): string => String(Number(number.toFixed(1)));

/** `: 0.4 L/100h, 0.2 in 2015`: the own figures behind a comparison. */
const figures = (deciding: Deciding, note: Note): string => {
  const first = firstOf(deciding, note);
  if (first === undefined) return "";
  const year = first.date.slice(0, 4);
  const when = note.date.startsWith(year) ? `on ${first.date}` : `in ${year}`;
  return `: ${note.value ?? ""} ${note.unit ?? ""}, ${first.value ?? ""} ${when}`;
};

/** By its own baseline where there is one, else by what one maker calls excessive; a word alone is no trend. Of an engine that
 *  burns its oil by design it says nothing. */
const oilRows = (deciding: Deciding): readonly Row[] => {
  const note = newestOf(deciding, "oil use");
  if (note === undefined || burnsOil(deciding.record.engine)) return [];
  const now = figureOf(note);
  if (note.value === "none" || now === 0) return [rowFrom("C3", note, "no oil used")];
  if (now === undefined) return [];
  const more = timesBaseline(deciding, note);
  const perDistance = now * (distances[note.unit ?? ""] ?? 0);
  if (more !== undefined && more >= times.raised * atLeast) {
    const row = more >= times.four * atLeast ? "C0" : more >= times.three * atLeast ? "C1" : "C2";
    return [
      rowFrom(row, note, `oil use ${factor(more)} times what it was at first${figures(deciding, note)}`),
    ];
  }
  if (perDistance >= excessive * atLeast)
    return [
      rowFrom("C2", note, `oil use ${note.value ?? ""} ${note.unit ?? ""}, which one maker calls too much`),
    ];
  return more === undefined
    ? []
    : [rowFrom("C3", note, `oil use as it was at first${figures(deciding, note)}`)];
};

const blowByRows = (deciding: Deciding): readonly Row[] => {
  const note = newestOf(deciding, "blow-by");
  if (note === undefined) return [];
  if (note.value === "none" || figureOf(note) === 0) return [rowFrom("D2", note, "no blow-by to speak of")];
  const more = timesBaseline(deciding, note);
  if (more === undefined) return [];
  if (more >= times.three * atLeast)
    return [
      rowFrom("D1", note, `blow-by ${factor(more)} times what it was at first${figures(deciding, note)}`),
    ];
  return more < times.raised * atLeast
    ? [rowFrom("D2", note, `blow-by as it was at first${figures(deciding, note)}`)]
    : [];
};

/** By the word, else against the own first figure. */
const pressureRows = (deciding: Deciding): readonly Row[] => {
  const note = newestOf(deciding, "oil pressure hot");
  if (note === undefined) return [];
  if (note.value === "normal") return [rowFrom("E2", note, "hot oil pressure normal")];
  if (note.value === "proved low")
    return [rowFrom("E1", note, "hot oil pressure low on a proved gauge, with the right oil")];
  // by a gauge that nobody proved it is no row but a question (asked.ts)
  const share = timesBaseline(deciding, note);
  if (share === undefined) return [];
  if (share >= pressure.asBefore)
    return [rowFrom("E2", note, `hot oil pressure as it was at first${figures(deciding, note)}`)];
  const text = `hot oil pressure down to ${factor(share)} times what it was at first${figures(deciding, note)}`;
  return share < pressure.low ? [rowFrom("E1", note, text)] : [];
};

/** Kinds whose word is the row; words that are left out say nothing. */
const words: readonly {
  readonly what: NoteKind;
  readonly rows: Readonly<Partial<Record<string, readonly [row: Id, text: string]>>>;
}[] = [
  {
    what: "filter debris",
    rows: {
      "bearing metal": ["F1", "bearing metal in the filter"],
      chunks: ["F3", "chunks of metal in the filter"],
      none: ["F4", "filter clean"],
    },
  },
  {
    what: "oil analysis",
    rows: {
      "copper rising": ["F1", "copper rising in the oil"],
      "lead rising": ["F1", "lead rising in the oil"],
      "iron rising": ["F2", "iron rising in the oil"],
      normal: ["F4", "oil analysis normal"],
    },
  },
  { what: "knock", rows: { heavy: ["G1", "heavy knock"] } },
  { what: "piston slap", rows: { some: ["G2", "piston slap"], heavy: ["G2", "heavy piston slap"] } },
  {
    what: "combustion gas in coolant",
    rows: {
      some: ["H2", "combustion gas in the coolant"],
      heavy: ["H2", "much combustion gas in the coolant"],
    },
  },
];

const worded = (deciding: Deciding, what: NoteKind, rows: (typeof words)[number]["rows"]): readonly Row[] => {
  const note = newestOf(deciding, what);
  const found = note === undefined || figureOf(note) !== undefined ? undefined : rows[note.value ?? ""];
  if (note === undefined || found === undefined) return [];
  // a knock is one of the bottom end only where it is known to move with a cylinder
  if (found[0] === "G1" && note.cylinders.length === 0) return [];
  return [rowFrom(found[0], note, found[1])];
};

/** None lost speaks against gasket and crack, not against a valve that is heard: beside B2 it is no row (ours). */
const coolantLoss = (deciding: Deciding, leakRows: readonly Row[]): readonly Row[] => {
  const note = newestOf(deciding, "coolant loss");
  if (note?.value === undefined) return [];
  const isNone = note.value === "none" || figureOf(note) === 0;
  if (!isNone) return [rowFrom("H1", note, "coolant lost")];
  return leakRows.some(({ row }) => row === "B2") ? [] : [rowFrom("H3", note, "no coolant lost")];
};
