// How the tables of a page are put together.

import type { PageBlock, PageColumn, TableBlock } from "./page-model.ts";

export const left = (name: string): PageColumn => ({ name, align: "left" });
export const right = (name: string): PageColumn => ({ name, align: "right" });

/** The table; where it has no row, a sentence that says so. */
export const tableOrText = (none: string, table: Omit<TableBlock, "kind">): readonly PageBlock[] =>
  table.rows.length === 0 ? [{ kind: "text", text: none }] : [{ kind: "table", ...table }];
