// Which cylinder a reading is of: a row above it names it, or a column beside it; else it is asked with what may name it.

import { columnLetters } from "./columns.ts";
import { type Guess, asked, settled } from "./guess-parts.ts";
import type { Source } from "./import-map.ts";
import type { Sheet, SheetRow } from "./imported.ts";
import type { SheetColumn, SheetShape } from "./sheet-shape.ts";
import { sideNamed } from "./sheet-words.ts";

const isBank = /^\s*(?:bank|side|bank side|cylinder bank)\s*:?\s*$/i;

/** @param heads - the row above the readings that names cylinders  @param column - the column that does  @param columns - with readings
 *  @param isNamed - whether something else names the engine */
export const cylinderPart = (
  sheet: Sheet,
  shape: SheetShape,
  {
    heads,
    column,
    columns,
    isNamed,
  }: {
    readonly heads: SheetRow | undefined;
    readonly column: SheetColumn | undefined;
    readonly columns: readonly number[];
    readonly isNamed: boolean;
  },
): Guess => {
  const bank = shape.columns.find(
    ({ heads: above, numbers, texts }) => above.some((text) => isBank.test(text)) && numbers + texts > 0,
  );
  // each number would be two cylinders, and the second of them a repeat of the first
  if (bank !== undefined && (heads !== undefined || column !== undefined))
    return asked(
      "cylinder",
      `column ${columnLetters(bank.index)} says the bank, and no entry of a map does`,
      {
        entry: "cylinder",
        ways: [
          ["each bank counts from 1", "write the bank before each number in the sheet: L1, R1"],
          [
            "no number is in both banks",
            heads === undefined
              ? `"cylinder": { "column": "${columnLetters(column?.index ?? 0)}" }`
              : `"cylinder": { "headerRow": ${String(heads.row)} }`,
          ],
        ],
      },
    );
  if (heads !== undefined) {
    const source: Source = { headerRow: heads.row };
    return settled({ cylinder: source }, "cylinder", `row ${String(heads.row)} names the cylinders`);
  }
  if (column !== undefined)
    return settled(
      { cylinder: { column: columnLetters(column.index) } },
      "cylinder",
      `column ${columnLetters(column.index)} names the cylinders`,
    );
  // Left and Right are engines of a boat as well, unless the engine has its name elsewhere
  const sides = shape.block.find((row) =>
    columns.every((i) => sideNamed(row.cells[i]?.text ?? "") !== undefined),
  );
  if (isNamed && sides !== undefined && columns.length > 1)
    return settled(
      { cylinder: { headerRow: sides.row } },
      "cylinder",
      `row ${String(sides.row)} names the cylinders`,
    );
  const [first] = shape.block;
  const nearest = shape.block.findLast((row) => columns.some((i) => (row.cells[i]?.text ?? "") !== ""));
  const beside = shape.columns.filter(
    ({ index, role, dates }) => !columns.includes(index) && role === undefined && dates === 0,
  );
  const counting = beside.find(({ numbers, dates, texts: words }) => numbers > dates + words) ?? beside[0];
  return asked("cylinder", "nothing in the sheet says which cylinder a reading is of", {
    entry: "cylinder",
    ways: [
      ...(nearest === undefined
        ? []
        : [
            [
              `row ${String(nearest.row)} names them`,
              `"cylinder": { "headerRow": ${String(nearest.row)} }`,
            ] as const,
          ]),
      ...(counting === undefined
        ? []
        : [
            [
              `column ${columnLetters(counting.index)} names them`,
              `"cylinder": { "column": "${columnLetters(counting.index)}" }`,
            ] as const,
          ]),
      ["engines with one cylinder", '"cylinder": { "fixed": "1" }'],
    ],
    ...(first === undefined ? {} : { place: sheet.place(first, 0) }),
  });
};
