// Different headings of one cylinder are no repeats that anybody spoke of: what they are is asked.

import { columnLetters } from "./columns.ts";
import { type Guess, asked, placeIn, quotedCell, silent } from "./guess-parts.ts";
import type { ImportMap } from "./import-map.ts";
import type { Sheet } from "./imported.ts";
import { oneCylinderTwice, repeatsUnsaid } from "./one-cylinder.ts";

/** @param map - as it was guessed  @param columns - with readings */
export const oneCylinderPart = (sheet: Sheet, map: ImportMap, columns: readonly number[]): Guess => {
  const twice = oneCylinderTwice(sheet, map, columns);
  const [first, second] = twice ?? repeatsUnsaid(sheet, map, columns) ?? [];
  if (first === undefined || second?.at === undefined) return silent;
  const cell = { text: second.text, ...second.at };
  const text = `${JSON.stringify(first.text)} and ${quotedCell(cell)} are of one cylinder`;
  return asked("cylinder", text, {
    entry: "cylinder",
    ways: twice === undefined ? ofColumns(map, [first.at?.column ?? 0, cell.column]) : ofHeadings,
    place: placeIn(sheet, cell),
  });
};

const ofHeadings = [
  ["they are two", "write the label of each above its column: L1, L2, R1, R2"],
  ["dry and wet of one", "write dry or wet in each of the headings"],
  ["repeats of one", "write the same heading above both"],
] as const;

const ofColumns = (
  { cylinder }: ImportMap,
  columns: readonly number[],
): readonly (readonly [string, string])[] => {
  const own = cylinder !== undefined && "column" in cylinder ? cylinder.column : "B";
  const entry = `"cylinder": { "column": "${own}" }`;
  return [
    ...columns.map(
      (column) =>
        [
          `only ${columnLetters(column)} holds readings`,
          `"readings": { "columns": ["${columnLetters(column)}"] }, ${entry}`,
        ] as const,
    ),
    ["repeats of one", entry],
  ];
};
