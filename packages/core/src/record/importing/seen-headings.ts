// Words of one sort in the headings of a sheet: over each column of readings, or anywhere; and the column of kinds.

import type { SheetText } from "./guess-parts.ts";
import type { SheetRow } from "./imported.ts";
import type { SheetColumn, SheetShape } from "./sheet-shape.ts";
import { kindNamed } from "./sheet-words.ts";
import type { Seen } from "./typed-and-said.ts";

/** The row above the readings in which every one of their columns has a word of this kind. */
export const rowOf = (
  { shape, columns }: Seen,
  isOne: (text: string) => boolean,
): { readonly row: SheetRow; readonly fill: boolean } | undefined => {
  const row = shape.block.find((one) => {
    const texts = columns.map((i) => one.cells[i]?.text ?? "");
    return (
      texts[0] !== "" &&
      texts.some((text) => text !== "") &&
      texts.every((text) => text === "" || isOne(text))
    );
  });
  if (row === undefined) return undefined;
  return { row, fill: columns.some((i) => (row.cells[i]?.text ?? "") === "") };
};

/** All different words of a kind in the headings, each with its first cell. */
export const inHeadings = <T>(
  { shape }: Seen,
  read: (text: string) => T | undefined,
): ReadonlyMap<T, SheetText> => {
  const found = new Map<T, SheetText>();
  for (const row of shape.headings)
    row.cells.forEach(({ text }, column) => {
      const one = text === "" ? undefined : read(text);
      if (one !== undefined && !found.has(one)) found.set(one, { text, row, column });
    });
  return found;
};

/** The column that has the kinds of reading. */
export const kindColumn = (shape: SheetShape): SheetColumn | undefined =>
  shape.columns.find(
    ({ role, index }) =>
      role === "what" && shape.data.some(({ cells }) => kindNamed(cells[index]?.text ?? "") !== undefined),
  );
