// The files of a new engine and a new logbook, as text.

import { gaugeColumns } from "./gauges.ts";
import { measurementColumns } from "./measurements.ts";
import { noteColumns } from "./notes.ts";
import { serviceColumns } from "./services.ts";
import { testColumns } from "./tests.ts";

/** The columns of amendments.csv, in order. */
export const amendmentColumns: readonly string[] = ["when", "file", "row", "column", "old", "new", "because"];

const line = (columns: readonly string[]): string => columns.join(",");

/** The header lines of one engine's tables, by file name. */
export const engineHeaders = (labels: readonly string[]): Readonly<Record<string, string>> => ({
  "tests.csv": line(testColumns(labels)),
  "services.csv": line(serviceColumns),
  "notes.csv": line(noteColumns),
  "measurements.csv": line(measurementColumns),
  "amendments.csv": line(amendmentColumns),
});

/** The first line of a new gauges.csv. */
export const gaugeHeader: string = line(gaugeColumns);

/** JSON as people edit it. */
export const jsonText = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

/** logbook.json of a new logbook. */
export const newLogbookText = (): string => jsonText({ schema: "sealtrend/logbook@1", demo: false });
