// Words of one sort in the headings of a sheet: over each column of readings, or anywhere; and the column of kinds.

import type { SheetText } from "./guess-parts.ts";
import type { SheetRow } from "./imported.ts";
import type { SheetColumn, SheetShape } from "./sheet-shape.ts";
import { withoutUnitAndKind } from "./heading-text.ts";
import { cylinderNamed, isSummary, kindNamed } from "./sheet-words.ts";
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

/** The column that has the kinds of reading: one of its own, else the one of the cylinders where each says its kind too, as `1 dry`. */
export const kindColumn = (shape: SheetShape): SheetColumn | undefined =>
  shape.columns.find(
    ({ role, index }) =>
      role === "what" && shape.data.some(({ cells }) => kindNamed(cells[index]?.text ?? "") !== undefined),
  ) ?? labelsWithKinds(shape, (named, all) => all.length > 0 && named.length === all.length);

/** The column of the cylinders, by how many of its labels say their kind. */
const labelsWithKinds = (
  { columns, data }: SheetShape,
  isSo: (named: readonly SheetText[], all: readonly SheetText[]) => boolean,
): SheetColumn | undefined =>
  columns.find(({ role, index }) => {
    if (role !== "cylinder") return false;
    const all = labelsIn(data, index);
    return isSo(
      all.filter(({ text }) => kindNamed(text) !== undefined),
      all,
    );
  });

const labelsIn = (data: readonly SheetRow[], column: number): readonly SheetText[] =>
  data.flatMap((row) => {
    const text = row.cells[column]?.text ?? "";
    return text === "" || isSummary(text) ? [] : [{ text, row, column }];
  });

/** A label or a heading that names a kind other than dry, and one beside it that names none. */
export const kindBesideNone = ({
  shape,
  columns,
}: Seen): { readonly kind: SheetText; readonly none: SheetText } | undefined => {
  const ofCylinders = shape.columns.find(({ role }) => role === "cylinder");
  const lines = [
    ...shape.block.map((row) =>
      columns.flatMap((column) => {
        const text = row.cells[column]?.text ?? "";
        return cylinderNamed(withoutUnitAndKind(text)) === undefined ? [] : [{ text, row, column }];
      }),
    ),
    ofCylinders === undefined ? [] : labelsIn(shape.data, ofCylinders.index),
  ];
  return lines.flatMap((line) => {
    const kind = line.find(({ text }) => ![undefined, "dry"].includes(kindNamed(text)));
    const none = line.find(({ text }) => kindNamed(text) === undefined);
    return kind === undefined || none === undefined ? [] : [{ kind, none }];
  })[0];
};
