// Faults in the first lines of tables, and names that are nearly ours: what stands under them would be read by nobody.

import {
  type NamedText,
  type Problem,
  engineHeaders,
  nearest,
  parseTable,
  problem,
  viewJson,
} from "@sealtrend/core/parts";
import type { Fault } from "../command.ts";

/** Faults in the shape of a table of which nothing more can be said. */
export const shapeFaults = (table: NamedText | undefined): readonly Problem[] =>
  table === undefined ? [] : parseTable(table.text, table.file).problems;

/** Faults in the shape of a table, and the columns that its first line lacks. */
export const headerFaults = (table: NamedText | undefined, name: "amendments.csv"): readonly Problem[] => {
  if (table === undefined) return [];
  const wanted = engineHeaders([])[name] ?? "";
  const { table: read, problems } = parseTable(table.text, table.file, wanted);
  const columns = read.header.map((column) => column.name);
  if (columns.length === 0) return problems;
  const place = { file: table.file, line: read.headerLine, column: 1 };
  const missing = wanted.split(",").filter((column) => !columns.includes(column));
  return [
    ...problems,
    ...(missing.length === 0
      ? []
      : [problem("column-missing", { names: missing, header: columns, delimiter: read.delimiter }, place)]),
  ];
};

/** A caution for each column that is not read but nearly has the name of one that is. */
export const columnsNearlyNamed = (
  table: NamedText | undefined,
  known: readonly string[],
): readonly Fault[] => {
  if (table === undefined) return [];
  const { header, headerLine, delimiter } = parseTable(table.text, table.file).table;
  const text = header.map(({ name }) => name).join(delimiter);
  return header.flatMap(({ name, column }): Fault[] => {
    if (name === "" || known.includes(name) || /^c\d+$/.test(name)) return [];
    const near = nearest(name, [...new Set(known)]);
    if (near[0] === undefined) return [];
    return [
      {
        code: "column-unknown",
        severity: "caution",
        file: table.file,
        line: headerLine,
        column,
        excerpt: { text, from: column, to: column + name.length - 1 },
        found: `the column "${name}" is kept but not read`,
        expected: near.map((one) => `"${one}"`).join(" or "),
        mend: `rename it ${near.join(" or ")} if that is meant, or leave it`,
      },
    ];
  });
};

/** A caution for each field at the top of a JSON object that nobody reads. */
export const fieldsUnknown = ({ text, file }: NamedText, fields: readonly string[]): readonly Problem[] => {
  // that it is no JSON is a fault of its own
  const view = viewJson(text, file, []);
  return Object.keys(view?.root ?? {})
    .filter((field) => !fields.includes(field))
    .map((field) => problem("field-unknown", { field, fields }, view?.place(field), "caution"));
};
