// Columns of the sheet that the map does not read: named, so that nothing is lost without a word.

import { columnLetters, columnNamed, columnsNamed } from "./columns.ts";
import { sourcesOf } from "./fit-map.ts";
import type { ImportMap } from "./import-map.ts";
import type { Sheet, UnreadColumn } from "./imported.ts";
import { isSummary } from "./sheet-words.ts";

/** The columns that hold something beside the readings and that no entry of the map names; averages and totals are none. */
export const unreadColumns = (sheet: Sheet, map: ImportMap): readonly UnreadColumn[] => {
  const { firstRow, lastRow = Infinity, readings } = map;
  const read = new Set([
    ...readings.columns.flatMap((name) => columnsNamed(sheet, name, firstRow) ?? []),
    ...sourcesOf(map).flatMap(([, source]) =>
      "column" in source ? [columnNamed(sheet, source.column, firstRow) ?? -1] : [],
    ),
  ]);
  const counts = new Map<number, number>();
  for (const { row, cells } of sheet.rows) {
    if (row < firstRow || row > lastRow) continue;
    cells.forEach(({ text }, at) => {
      if (text !== "" && !read.has(at)) counts.set(at, (counts.get(at) ?? 0) + 1);
    });
  }
  const above = sheet.rows.filter(({ row }) => row < firstRow);
  return [...counts]
    .sort(([a], [b]) => a - b)
    .flatMap(([at, cells]) => {
      const heads = above.map((row) => row.cells[at]?.text ?? "").filter((text) => text !== "");
      const isWorkedOut = heads.some(isSummary);
      return isWorkedOut ? [] : [{ column: columnLetters(at), heading: heads.at(-1) ?? "", cells }];
    });
};
