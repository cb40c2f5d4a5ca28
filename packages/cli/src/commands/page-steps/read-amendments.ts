// amendments.csv as a page tells it.

import { join } from "node:path";
import { amendmentColumns, parseTable } from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import { type Logbook, stopOnErrors, textOf } from "../../logbook/open-logbook.ts";
import type { AmendmentTold } from "../../render/page/page-input.ts";

/** In the order of the file; none where there is no file. @param upTo - a day; what was changed in a test after it is left
 *  out, for the test is not shown either; what was changed in an earlier one counts, whenever it was changed
 *  @throws Stop 1 where the file has a fault: a page without a trace that exists would mislead */
export const readAmendments = (
  logbook: Logbook,
  id: string,
  upTo: string | undefined,
  cautions: Fault[],
): readonly AmendmentTold[] => {
  const file = textOf(logbook.world, join(logbook.root, id, "amendments.csv"), cautions);
  if (file === undefined || file.text.trim() === "") return [];
  const { table, problems } = parseTable(file.text, file.file, amendmentColumns.join(","));
  stopOnErrors(problems);
  const place = new Map(table.header.map(({ name }, i) => [name, i] as const));
  return table.rows
    .map(({ cells }) => {
      const text = (name: string): string => cells[place.get(name) ?? -1]?.text.trim() ?? "";
      return {
        when: text("when"),
        row: text("row"),
        column: text("column"),
        was: text("old"),
        is: text("new"),
        because: text("because"),
      };
    })
    .filter(({ row }) => upTo === undefined || (/^\d{4}-\d\d-\d\d/.exec(row)?.[0] ?? "") <= upTo);
};
