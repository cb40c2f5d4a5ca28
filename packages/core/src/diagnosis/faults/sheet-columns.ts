// The first line of a sheet: columns that are missing, renamed, or not read.

import { type Place, type Problem, nearest, problem } from "../../problem/index.ts";
import type { Table } from "../../record/index.ts";

/** May stand in every sheet and is not read. */
const free = "note";

interface Header {
  readonly table: Table;
  /** The sheet without its comments. */
  readonly text: string;
  readonly columns: readonly string[];
}

/** Notes what is wrong with the shape and the columns of a sheet. A column that is missing beside one that nobody reads was
 *  renamed: that is one fault, not two. @returns whether the columns are all there */
export const checkColumns = (sheet: Header, ofShape: readonly Problem[], problems: Problem[]): boolean => {
  const { table, columns } = sheet;
  const isTwice = ofShape.some(({ code }) => code === "header-twice");
  const names = table.header.map(({ name }) => name);
  if (names.length === 0 || isTwice) {
    problems.push(...ofShape);
    return false;
  }
  const blank = ofShape.filter(({ code }) => code === "header-blank").map(({ column }) => column);
  const spare = table.header.filter(({ name, column }) =>
    name === "" ? blank.includes(column) : name !== free && !columns.includes(name),
  );
  const missing = columns.filter((name) => !names.includes(name));
  const renamed = missing.map((name, i) => ({ name, at: meantBy(name, spare, missing.length, i) }));
  const taken = renamed.flatMap(({ at }) => at ?? []);
  problems.push(
    ...ofShape.filter(
      ({ code, column }) => code !== "header-blank" || !taken.some((at) => at.column === column),
    ),
    ...renamed.map(({ name, at }) =>
      problem(
        "sheet-column-missing",
        { name, columns, sheet: table.file, ...(at === undefined ? {} : { found: at.name }) },
        placeOf(sheet, at),
      ),
    ),
    ...spare
      .filter((one) => one.name !== "" && !taken.includes(one))
      .map((one) =>
        problem("sheet-column", { name: one.name, names: columns }, placeOf(sheet, one), "caution"),
      ),
  );
  return missing.length === 0;
};

type Head = Table["header"][number];

/** The column that stands for a missing one: with a name like it, or in its turn where there are as many. */
const meantBy = (name: string, spare: readonly Head[], missing: number, i: number): Head | undefined => {
  const [near] = nearest(
    name,
    spare.map((one) => one.name),
  );
  if (near !== undefined) return spare.find((one) => one.name === near);
  return spare.length === missing ? spare[i] : undefined;
};

const placeOf = ({ table, text }: Header, head: Head | undefined): Place => {
  const { file, headerLine: line } = table;
  if (head === undefined) return { file, line, column: 1 };
  const { column, name } = head;
  const raw = text.replace(/^\uFEFF/, "").split(/\r\n|\r|\n/)[line - 1] ?? "";
  const to = column + Math.max(1, name.length) - 1;
  return { file, line, column, excerpt: { text: raw, from: column, to } };
};
