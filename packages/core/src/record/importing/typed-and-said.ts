// What was typed of a sheet against what the sheet says itself: it fills a gap, and goes before nothing that stands there.

import { columnLetters } from "./columns.ts";
import { type Guess, type SheetText, asked, placeIn } from "./guess-parts.ts";
import type { Source } from "./import-map.ts";
import type { Sheet } from "./imported.ts";
import type { SheetShape } from "./sheet-shape.ts";

/** A sheet as far as it is known before its unit and kind are. */
export interface Seen {
  readonly sheet: Sheet;
  readonly shape: SheetShape;
  readonly columns: readonly number[];
  /** Cells that look like readings. */
  readonly cells: readonly SheetText[];
}

interface Asking<T> {
  readonly read: (text: string) => T | undefined;
  readonly isSame: (one: T | undefined) => boolean;
}

/** Whether the sheet leaves room for what was typed: it says nothing else, throughout or above one of the columns. */
export const isGap = <T>(
  { shape, columns }: Seen,
  source: Source | undefined,
  { read, isSame }: Asking<T>,
): boolean => {
  const isFit = (text: string): boolean => read(text) === undefined || isSame(read(text));
  const above = columns.flatMap((i) => shape.columns[i]?.heads ?? []);
  if (!above.every(isFit)) return false;
  if (source === undefined || "above" in source) return true;
  if ("fixed" in source) return isFit(source.fixed);
  if ("headerRow" in source) return true;
  const at = shape.columns.find(({ index }) => columnLetters(index) === source.column)?.index ?? -1;
  return shape.data.every(({ cells }) => isFit(cells[at]?.text ?? ""));
};

/** The sheet says something else than what was typed: neither goes before the other by itself. */
export const otherwise = (
  { sheet, cells: [cell] }: Seen,
  said: Guess,
  { entry, told }: { readonly entry: "unit" | "what"; readonly told: string },
): Guess => {
  const own = said.map[entry];
  const [reason] = said.why.filter((one) => one.entry === entry);
  const known =
    own === undefined ? [] : [[`as the sheet says: leave --${entry} out`, entryText(entry, own)] as const];
  return asked(
    entry,
    `--${entry} ${told} and the sheet says otherwise${reason === undefined ? "" : `: ${reason.text}`}`,
    {
      entry,
      ways: [...known, [`${told} for all of them`, entryText(entry, { fixed: told })]],
      isAgainstTyped: own !== undefined,
      ...(cell === undefined ? {} : { place: placeIn(sheet, cell) }),
    },
  );
};

const entryText = (entry: string, source: Source): string =>
  `"${entry}": { ${Object.entries(source)
    .map(([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`)
    .join(", ")} }`;
