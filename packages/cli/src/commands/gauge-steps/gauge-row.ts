// One gauge's own row of gauges.csv, changed in place: exactly its cells, every other byte as it was.

import { join } from "node:path";
import { type Gauge, type Problem, nearest, parseTable, readGauges } from "@sealtrend/core/parts";
import { type Fault, Stop } from "../../command.ts";
import { columnsAdded, columnsLacking, withColumns } from "../../logbook/add-columns.ts";
import type { Logbook } from "../../logbook/open-logbook.ts";
import { readFile } from "../../logbook/read-file.ts";
import { shown } from "../../logbook/words.ts";
import type { Change } from "../../logbook/write.ts";
import { typedLine } from "../../options/quote.ts";
import { rawTests } from "../amend-steps/amend-rows.ts";
import { editCells } from "../amend-steps/amend-text.ts";
import { asTyped } from "../new-row.ts";
import { usage } from "../usage.ts";

/** gauges.csv as messages name it. */
export const gaugesFile = ({ world, root }: Logbook): string => shown(world.cwd, join(root, "gauges.csv"));

/** The gauge of this name. @param kind - that is wanted, for the mend  @throws Stop 2 where there is none */
export const gaugeNamed = ({ gauges, world, root }: Logbook, name: string, kind: Gauge["kind"]): Gauge => {
  const found = gauges.find(({ id }) => id === name);
  if (found !== undefined) return found;
  const ids = gauges.map(({ id }) => id);
  const [near] = nearest(name, ids);
  throw usage(
    "gauge-unknown",
    `there is no gauge "${name}" in ${shown(world.cwd, root)}`,
    ids.length === 0 ? "a gauge that was added" : `one of: ${ids.join(", ")}`,
    near === undefined
      ? typedLine(["gauge", "add", name, "--kind", kind, "--unit", "psi"])
      : `did you mean ${near}?`,
  );
};

/** The cells of one gauge's row by column, columns that the file lacks added.
 *  @throws Stop 1 where the file has a fault, 2 with the faults the change would bring; both when it is carried out */
export const gaugeChange = (
  logbook: Logbook,
  changes: readonly { readonly gauge: string; readonly cells: Readonly<Record<string, string>> }[],
): Change => {
  const file = gaugesFile(logbook);
  const names = [...new Set(changes.flatMap(({ cells }) => Object.keys(cells)))];
  const text = (current: string): string => {
    const wide = withColumns(current, names);
    if (wide === undefined) throw new Stop(1, parseTable(current, file).problems);
    const table = rawTests(wide, file);
    const edits = changes.flatMap(({ gauge, cells }) => {
      const row = table.rows.find(({ cell }) => cell("gauge") === gauge)?.row;
      if (row === undefined) throw new Stop(1, [gone(gauge, file)]);
      return Object.entries(cells).map(([column, to]) => ({ row, column, to }));
    });
    const after = editCells(table, edits).text;
    const known = new Set(errorsIn(current, file).map(({ code, found }) => `${code} ${found}`));
    const fresh = errorsIn(after, file).filter(({ code, found }) => !known.has(`${code} ${found}`));
    if (fresh.length > 0) throw new Stop(2, fresh.map(asTyped));
    return after;
  };
  return { kind: "replace", path: "gauges.csv", text: (current) => text(current.text) };
};

/** What is said aloud of the columns that such a change adds: asked before it is carried out. */
export const columnsToAdd = (logbook: Logbook, columns: readonly string[]): readonly string[] => {
  const { text } = readFile(logbook.world, join(logbook.root, "gauges.csv"));
  const lacking = columnsLacking(text, columns);
  return lacking.length === 0 ? [] : [columnsAdded(gaugesFile(logbook), lacking)];
};

const errorsIn = (text: string, file: string): readonly Problem[] =>
  readGauges(text, file).problems.filter(({ severity }) => severity === "error");

const gone = (gauge: string, file: string): Fault => ({
  code: "gauge-unknown",
  severity: "error",
  found: `the gauge "${gauge}" is no longer in ${file}`,
  expected: "its row",
  mend: "sealtrend gauge list",
});
