// What `undo` says.

import type { Undone } from "../logbook/undo.ts";
import { clean } from "./clean.ts";
import { wrapText } from "./table.ts";

/** `taken back, of 2026-05-03 10:00: sealtrend enter boat --dry "…" (1 file restored)`. */
export const undoLine = ({ command, when, files }: Undone, width: number): string => {
  const parts = (["restored", "removed"] as const).flatMap((what) => {
    const n = files.filter((file) => file.what === what).length;
    return n === 0 ? [] : [`${String(n)} ${n === 1 ? "file" : "files"} ${what}`];
  });
  const said = `taken back, of ${when.slice(0, 16).replace("T", " ")}: ${clean(command, 2000)} (${parts.join(", ")})`;
  return wrapText(said, width).join("\n");
};
