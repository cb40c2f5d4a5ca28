// What is doubted of a row of a sheet.

import type { Problem } from "../../problem/index.ts";
import type { SheetRow } from "./imported.ts";

export interface RowDoubt {
  /** Where the cause stands: in this row, or above it. */
  readonly at: SheetRow;
  readonly column: number;
  readonly problem: Problem;
}
