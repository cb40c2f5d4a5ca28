// Whether a map goes with its sheet: its columns are there, and nothing that every reading needs is left open.

import { type Place, type Problem, problem } from "../../problem/index.ts";
import { columnLetters, columnNamed, columnsNamed } from "./columns.ts";
import { fixedExpected, fixedMisfit } from "./fixed-values.ts";
import type { Attribute, ImportMap, Source } from "./import-map.ts";
import { unitIn } from "./heading-text.ts";
import type { Sheet } from "./imported.ts";
import { oneCylinderTwice } from "./one-cylinder.ts";
import { unitOfCell } from "./reading-text.ts";

/** What every reading needs, with an entry to begin with. */
const needed = {
  engine: '{ "column": "A" }',
  date: '{ "column": "B" }',
  cylinder: '{ "headerRow": 1 }',
  what: '{ "fixed": "dry" }',
  unit: '{ "fixed": "psi" }',
} as const satisfies Partial<Record<Attribute, string>>;

export const attributes: readonly Attribute[] = [
  "engine",
  "ignition",
  "date",
  "test",
  "cylinder",
  "what",
  "take",
  "unit",
  "gauge",
  "meter",
  "by",
  "set_aside",
  "note",
];

/** The sources of a map by the path of their entry. */
export const sourcesOf = (map: ImportMap): readonly (readonly [string, Source])[] => [
  ...attributes.flatMap((name) => (map[name] === undefined ? [] : [[name, map[name]] as const])),
  ...Object.entries(map.conditions ?? {}).map(([name, source]) => [`conditions.${name}`, source] as const),
];

/** The columns with readings, from 0, ascending; and what of the map does not go with the sheet.
 *  @param place - where an entry of the map stands */
export const fitMap = (
  sheet: Sheet,
  map: ImportMap,
  place: (path: string) => Place,
): { readonly columns: readonly number[]; readonly problems: readonly Problem[] } => {
  const problems: Problem[] = [];
  const misfit = fixedMisfit(map);
  if (misfit !== undefined) {
    const { field, text, expected } = misfit;
    problems.push(problem("field-bad", { field, text: JSON.stringify(text), expected }, place(field)));
  }
  const checkFixed = (path: string, text: string): void => {
    const expected = fixedExpected(path, text);
    const facts = { field: `${path}.fixed`, text: JSON.stringify(text), expected: expected ?? "" };
    if (expected !== undefined) problems.push(problem("field-bad", facts, place(facts.field)));
  };
  const checkHeader = (path: string, row: number): void => {
    const where = place(`${path}.headerRow`);
    if (row >= map.firstRow)
      problems.push(problem("import-header-below", { row, firstRow: map.firstRow }, where));
    else if (!sheet.rows.some((one) => one.row === row))
      problems.push(
        problem(
          "field-bad",
          {
            field: `${path}.headerRow`,
            text: String(row),
            expected: "a row of the sheet that holds something",
          },
          where,
        ),
      );
  };
  const last = columnLetters(Math.max(0, sheet.columns - 1));
  const seen = new Map<number, string>();
  map.readings.columns.forEach((name, i) => {
    const path = `readings.columns[${String(i)}]`;
    const found = columnsNamed(sheet, name, map.firstRow);
    if (found === undefined)
      problems.push(problem("import-column-gone", { column: name, last }, place(path)));
    for (const column of found ?? []) {
      const first = seen.get(column);
      if (first === undefined) seen.set(column, "readings");
      else
        problems.push(problem("import-column-twice", { column: columnLetters(column), first }, place(path)));
    }
  });
  for (const [path, source] of sourcesOf(map)) {
    if ("fixed" in source) checkFixed(path, source.fixed);
    if ("headerRow" in source) checkHeader(path, source.headerRow);
    if (!("column" in source)) continue;
    const column = columnNamed(sheet, source.column, map.firstRow);
    const first = seen.get(column ?? -1);
    if (column === undefined)
      problems.push(problem("import-column-gone", { column: source.column, last }, place(`${path}.column`)));
    else if (first !== undefined)
      problems.push(
        problem("import-column-twice", { column: columnLetters(column), first }, place(`${path}.column`)),
      );
  }
  const columns = [...seen.keys()].sort((a, b) => a - b);
  for (const [field, example] of Object.entries(needed))
    if (
      !sourcesOf(map).some(([path]) => path === field) &&
      !(field === "unit" && namesUnits(sheet, map, columns))
    )
      problems.push(problem("field-missing", { field, example }, place("schema")));
  const twice = problems.length === 0 ? oneCylinderTwice(sheet, map, columns) : undefined;
  if (twice !== undefined) {
    const [first, second] = twice.map(({ text }) => JSON.stringify(text));
    const expected = `headings that differ for cylinders that do: ${first ?? ""} and ${second ?? ""} are read as one`;
    const field = "cylinder.headerRow";
    problems.push(problem("field-bad", { field, text: second ?? "", expected }, place(field)));
  }
  return { columns, problems };
};

/** Whether readings of the sheet name their units themselves: then the map need not. */
const namesUnits = (sheet: Sheet, { firstRow, what }: ImportMap, columns: readonly number[]): boolean => {
  const kinds =
    what !== undefined && "column" in what ? columnNamed(sheet, what.column, firstRow) : undefined;
  return sheet.rows.some(
    ({ row, cells }) =>
      row >= firstRow &&
      (columns.some((i) => unitOfCell(cells[i]?.text ?? "") !== undefined) ||
        (kinds !== undefined && unitIn(cells[kinds]?.text ?? "") !== undefined)),
  );
};
