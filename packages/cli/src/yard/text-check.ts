// Watches over bytes that go by in parts: whether they are text at all, and UTF-8 throughout.

import { isAscii } from "node:buffer";
import { type Fault, Stop } from "../command.ts";
import { fileFault } from "../logbook/words.ts";

export interface TextCheck {
  /** @throws Stop 1 for zero bytes, which no text holds: UTF-16, a damaged file, no text */
  take(part: Uint8Array): void;
  /** After the last part; whatever is not UTF-8 is read as Windows-1252, as everywhere. */
  encoding(): "utf-8" | "windows-1252";
  cautions(): readonly Fault[];
}

export const textCheck = (file: string): TextCheck => {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let state: "plain" | "utf-8" | "other" = "plain";
  const decodes = (part: Uint8Array, stream: boolean): boolean => {
    try {
      decoder.decode(part, { stream });
      return true;
    } catch {
      return false;
    }
  };
  const encoding = (): "utf-8" | "windows-1252" => {
    if (state === "utf-8" && !decodes(new Uint8Array(), false)) state = "other";
    return state === "other" ? "windows-1252" : "utf-8";
  };
  return {
    take: (part) => {
      if (part.includes(0)) {
        const zeros = part.reduce((count, byte) => count + (byte === 0 ? 1 : 0), 0);
        throw new Stop(1, [fileFault("file-zero-bytes", { file, detail: String(zeros) })]);
      }
      if (state === "plain" && !isAscii(part)) state = "utf-8";
      if (state === "utf-8" && !decodes(part, true)) state = "other";
    },
    encoding,
    cautions: () => (encoding() === "utf-8" ? [] : [fileFault("file-windows-1252", { file }, "caution")]),
  };
};
