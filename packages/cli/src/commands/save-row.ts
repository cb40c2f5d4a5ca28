// One row more in a table of an engine: what `service` and `note` do alike.

import { type Engine, engineHeaders } from "@sealtrend/core/parts";
import type { Logbook } from "../logbook/open-logbook.ts";
import { shown } from "../logbook/words.ts";
import { type Written, write } from "../logbook/write.ts";
import { saidOnce } from "../render/aside.ts";
import { type NewRow, columnsNeeded, newRow } from "./new-row.ts";

export interface RowToSave extends Pick<NewRow, "values" | "read"> {
  readonly logbook: Logbook;
  readonly engine: Engine;
  readonly table: "services.csv" | "notes.csv";
  /** The command line, printed back if the row cannot be saved. */
  readonly command: string;
}

export interface SavedRow {
  /** The file's name as messages print it. */
  readonly file: string;
  /** The file as it stood before; "" where there was none. */
  readonly before: string;
  readonly undo: Written["undo"];
  /** What is to be said on stderr, if anything. */
  readonly said: { readonly aside?: string };
}

/** @throws Stop 2 for a fault in the row, 1 or 3 where the file has one or cannot be written; nothing is changed then */
export const saveRow = async ({
  logbook,
  engine,
  table,
  values,
  read,
  command,
}: RowToSave): Promise<SavedRow> => {
  const path = `${engine.id}/${table}`;
  const file = shown(logbook.world.cwd, `${logbook.root}/${path}`);
  const header = engineHeaders(engine.cylinders)[table] ?? "";
  let before = "";
  const rows = (text: string): readonly string[] => {
    before = text;
    return newRow(text, { file, header, values, read });
  };
  const needs = (text: string): readonly string[] => columnsNeeded(text, { file, values, read });
  const written = await write(logbook.world, {
    root: logbook.root,
    command,
    unsaved: command,
    changes: [{ kind: "append", path, header, needs, rows: (current) => rows(current?.text ?? "") }],
  });
  const aside = saidOnce([...logbook.asides, ...written.asides]);
  return { file, before, undo: written.undo, said: aside === "" ? {} : { aside } };
};

/** The row as the core's reader takes it, defaults filled in.
 *  @param read - the first entry of a table's text  @throws TypeError when a row that was written is not read back */
export const readBack = <T>(
  values: NewRow["values"],
  columns: readonly string[],
  read: (text: string) => T | undefined,
): T => {
  const header = columns.join(",");
  const lines = newRow("", { file: "", header, values, read: () => [] });
  const found = read(`${header}\n${lines.join("\n")}\n`);
  if (found === undefined) throw new TypeError("readBack: a row that was written is not read back");
  return found;
};
