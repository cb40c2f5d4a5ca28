// Rows in the dialect of the file they go to: its line ends, its encoding, its mark.

import { Stop } from "../command.ts";
import { encode, mark } from "./encoding.ts";
import type { UserFile } from "./read-file.ts";
import { fileFault } from "./words.ts";

export type LineEnd = "\n" | "\r\n" | "\r";

/** The line end most lines of a text have; LF where there is none yet. */
export const lineEndOf = (text: string): LineEnd => {
  const pairs = text.split("\r\n").length - 1;
  const feeds = text.split("\n").length - 1 - pairs;
  const returns = text.split("\r").length - 1 - pairs;
  if (pairs > 0 && pairs >= feeds && pairs >= returns) return "\r\n";
  return returns > feeds ? "\r" : "\n";
};

/** The bytes that put rows at the end of a file, closing its last line first where that is open.
 *  @param file - its name as shown  @throws Stop 1 for a character that the file's encoding cannot hold */
export const rowsAtEnd = (current: UserFile, file: string, rows: readonly string[]): Uint8Array => {
  const end = lineEndOf(current.text);
  const open = current.text !== "" && !/[\r\n]$/.test(current.text);
  return encoded(current, file, (open ? end : "") + rows.map((row) => row + end).join(""));
};

/** A whole file with a new text, in the encoding of the old one. @throws Stop 1 */
export const wholeText = (current: UserFile, file: string, text: string): Uint8Array => {
  if (current.flaw === "mixed") throw new Stop(1, [fileFault("file-mixed-encoding", { file })]);
  const keepsCut = current.cutOff.length > 0 && text.endsWith("\uFFFD");
  const body = encoded(current, file, keepsCut ? text.slice(0, -1) : text);
  const start = current.bom === "bom" ? mark(current.encoding) : new Uint8Array();
  return Buffer.concat([start, body, keepsCut ? current.cutOff : new Uint8Array()]);
};

const encoded = (current: UserFile, file: string, text: string): Uint8Array => {
  const result = encode(text, current.encoding);
  if ("bytes" in result) return result.bytes;
  // no text that is typed or read holds half a character (typed-text.ts, encoding.ts)
  if (current.encoding !== "windows-1252") throw new TypeError("encoded: half a character");
  throw new Stop(1, [fileFault("character-not-in-encoding", { file, detail: result.character })]);
};
