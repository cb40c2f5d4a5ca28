// Parts of a guess: what is settled with the reason why, and what only the owner of the sheet can say.

import type { Place } from "../../problem/index.ts";
import type { ImportMap } from "./import-map.ts";
import type { OpenQuestion, QuestionCode, MapReason, Sheet, SheetRow } from "./imported.ts";
import { columnLetters } from "./columns.ts";

/** One text of the sheet and where it stands. */
export interface SheetText {
  readonly text: string;
  readonly row: SheetRow;
  readonly column: number;
}

export interface Guess {
  readonly map: Partial<ImportMap>;
  readonly open: readonly OpenQuestion[];
  readonly why: readonly MapReason[];
}

/** Something settled. */
export const settled = (map: Partial<ImportMap>, entry: string, text: string): Guess => ({
  map,
  open: [],
  why: [{ entry, text }],
});

/** Something settled that nothing speaks against, where an option may say better. */
export const assumed = (map: Partial<ImportMap>, entry: string, text: string): Guess => ({
  map,
  open: [],
  why: [{ entry, text, isAssumed: true }],
});

/** Something open. @param ways - what can be meant, each with the map entry that says it and the option */
export const asked = (
  code: QuestionCode,
  text: string,
  {
    entry,
    option,
    ways,
    place,
    isAgainstTyped,
  }: {
    readonly entry: string;
    readonly option?: string;
    readonly ways: readonly (readonly [string, string, string?])[];
    readonly place?: Place;
    readonly isAgainstTyped?: boolean;
  },
): Guess => ({
  map: {},
  open: [
    {
      code,
      text,
      entry,
      ...(option === undefined ? {} : { option }),
      readings: ways.map(([meant, said, typed]) => ({
        text: meant,
        entry: said,
        ...(typed === undefined ? {} : { option: typed }),
      })),
      ...(place === undefined ? {} : { place }),
      ...(isAgainstTyped === true ? { isAgainstTyped } : {}),
    },
  ],
  why: [],
});

/** Nothing said. */
export const silent: Guess = { map: {}, open: [], why: [] };

/** Several guesses as one; a later entry goes before an earlier. */
export const joined = (guesses: readonly Guess[]): Guess => ({
  map: guesses.reduce<Partial<ImportMap>>((all, { map }) => ({ ...all, ...map }), {}),
  open: guesses.flatMap(({ open }) => open),
  why: guesses.flatMap(({ why }) => why),
});

/** `"11/12/2026" in B4`. */
export const quotedCell = ({ text, row, column }: SheetText): string =>
  `${JSON.stringify(text.slice(0, 40))} in ${columnLetters(column)}${String(row.row)}`;

/** Where a text of the sheet stands. */
export const placeIn = (sheet: Sheet, { row, column }: SheetText): Place => sheet.place(row, column);
