// A question on a screen of any width: what is too long for a line is broken, and the answer is typed behind the last of them.

import type { Io, Takes } from "../../io.ts";
import { wrapText } from "../../render/table.ts";
import { displayWidth } from "../../render/width.ts";

/** Columns left for the answer. */
const room = 8;

/** The answer, without blanks around it; undefined at the end of input.
 *  @param ifLeft - printed where the person leaves by Ctrl-C */
export const askPerson = async (
  io: Io,
  question: string,
  { ifLeft, takes }: { readonly ifLeft?: string; readonly takes?: Takes } = {},
): Promise<string | undefined> => {
  const isShort = displayWidth(question) <= io.width - room;
  const lines = wrapText(question.trimEnd(), isShort ? io.width : io.width - room);
  return (await io.ask(`${lines.join("\n")} `, ifLeft, takes))?.trim();
};
