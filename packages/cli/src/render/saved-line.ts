// The first line after something was written: what, and how to take it back.

import { wrapText } from "./table.ts";
import { displayWidth, padEnd } from "./width.ts";

const takenBack = "(sealtrend undo takes it back)";

/** `set  pump geometry.bore: 86mm        (sealtrend undo takes it back)`; what is too long for one line goes on below.
 *  @param said - a word for what was done, two blanks, and what it was done to */
export const savedLine = (said: string, undo: "possible" | "not-possible", width: number): string => {
  const undone = undo === "possible" ? takenBack : "";
  const most = Math.min(width, 80);
  const [, lead = "", rest = said] = /^(\S+ {2})(.*)$/.exec(said) ?? [];
  const lines = wrapText(rest, most, lead);
  const last = lines.at(-1) ?? "";
  const column = most - displayWidth(undone);
  if (undone === "" || displayWidth(last) + 2 <= column)
    return [...lines.slice(0, -1), undone === "" ? last : padEnd(last, column) + undone].join("\n");
  return [...lines, padEnd("", Math.max(2, column)) + undone].join("\n");
};
