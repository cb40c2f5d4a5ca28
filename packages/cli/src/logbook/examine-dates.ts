// Rows dated after today: a slip of the pen that every later look at the engine would carry on.

import { type NamedText, isIsoDate, parseTable, placeOf } from "@sealtrend/core/parts";
import type { Fault } from "../command.ts";

/** A fault for each row of a table whose day lies ahead. @param today - `YYYY-MM-DD` @param column - that holds the day */
export const daysAhead = (named: NamedText | undefined, today: string, column = "date"): readonly Fault[] => {
  if (named === undefined) return [];
  const { table } = parseTable(named.text, named.file);
  const at = table.header.findIndex(({ name }) => name === column);
  return table.rows.flatMap((row): Fault[] => {
    const cell = row.cells[at];
    const date = cell?.text.trim() ?? "";
    if (!isIsoDate(date) || date <= today) return [];
    return [
      {
        code: "date-ahead",
        severity: "error",
        ...placeOf(table, row, cell),
        found: `the date ${date} lies ahead; today is ${today}`,
        expected: "a day that has been",
        mend: "write the day that is meant, as year-month-day",
      },
    ];
  });
};
