// The typed measurements as rows of measurements.csv, all of them or none.

import { type Engine, dialectOf, engineHeaders, readMeasurements, rowOf } from "@sealtrend/core/parts";
import { type Fault, Stop } from "../../command.ts";
import type { Logbook } from "../../logbook/open-logbook.ts";
import { shown } from "../../logbook/words.ts";
import { type Written, write } from "../../logbook/write.ts";
import { asTyped, filled, rowIn, stopOnMissing } from "../new-row.ts";
import { nothingSaved } from "./read-lines.ts";
import { type Entry, type TakenLine, typedBack } from "./typed-entry.ts";

export interface ToSave {
  readonly logbook: Logbook;
  readonly engine: Engine;
  readonly entry: Entry;
  /** What the lines came from, as faults name it; absent where they were asked. */
  readonly source?: string;
  /** The command line, shown by undo. */
  readonly command: string;
}

export interface SavedRows {
  /** The file's name as messages print it. */
  readonly file: string;
  readonly rows: number;
  readonly written: Written;
}

/** @throws Stop 1 for a row that the file cannot take, 3 where it cannot be written; nothing is changed then, and the lines are
 *  given back */
export const saveMeasurements = async (save: ToSave): Promise<SavedRows> => {
  const { logbook, engine, entry, command } = save;
  const path = `${engine.id}/measurements.csv`;
  const file = shown(logbook.world.cwd, `${logbook.root}/${path}`);
  const rows = entry.taken.flatMap((line) =>
    line.measurements.map((measurement) => ({ line, values: rowOf(measurement) })),
  );
  const usual = engineHeaders(engine.cylinders)["measurements.csv"] ?? "";
  const header = rows.some(({ values }) => values.instead !== undefined) ? `${usual},instead` : usual;
  const needs = (text: string): readonly string[] => {
    stopOnMissing(readMeasurements(text, file, engine).problems);
    return [...new Set(rows.flatMap(({ values }) => filled(values)))];
  };
  const linesFor = (text: string): readonly string[] => {
    const isBlank = text.trim() === "";
    const before = isBlank ? `${header}\n` : /[\r\n]$/.test(text) ? text : `${text}\n`;
    const dialect = dialectOf(before, file);
    const lines = rows.map(({ values }) => rowIn(dialect, file, values));
    checkRows(
      before,
      lines,
      save,
      rows.map(({ line }) => line),
    );
    return isBlank && text !== "" ? [header, ...lines] : lines;
  };
  const written = await write(logbook.world, {
    root: logbook.root,
    command,
    unsaved: `\n${typedBack(entry).trimEnd()}`,
    changes: [{ kind: "append", path, header, needs, rows: (now) => linesFor(now?.text ?? "") }],
  });
  return { file, rows: rows.length, written };
};

/** New rows must read back without a fault, told at the line they were typed in; older rows are no reason to lose a reading. */
const checkRows = (
  before: string,
  lines: readonly string[],
  { engine, source }: ToSave,
  typedIn: readonly TakenLine[],
): void => {
  const first = before.split(/\r\n|\r|\n/).length;
  const { problems } = readMeasurements(`${before}${lines.join("\n")}\n`, "", engine);
  const faults = problems.filter(
    ({ severity, code, line = 0 }) => line >= first && (severity === "error" || code === "text-formula"),
  );
  if (faults.length === 0) return;
  throw new Stop(
    1,
    faults.map((fault): Fault => {
      const at = typedIn[(fault.line ?? first) - first];
      const place = source === undefined || at === undefined ? {} : { file: source, line: at.line };
      return { ...asTyped(fault), ...place };
    }),
    nothingSaved,
  );
};
