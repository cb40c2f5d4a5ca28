// A stranger's sheet as text: its encoding made out or told, and what is no text refused with the way to make it one.

import { resolve } from "node:path";
import { type Fault, Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import { type Decoded, type Encoding, decode, decodeAs } from "../../logbook/encoding.ts";
import { largestFile, readRaw } from "../../logbook/read-file.ts";
import { asSaid, fileFault, shown } from "../../logbook/words.ts";
import type { World } from "../../logbook/world.ts";
import { unmarkedUtf16 } from "./unmarked-utf16.ts";
import { workbookFault } from "./workbook.ts";

export interface SheetText {
  /** As faults name it. */
  readonly file: string;
  readonly text: string;
  readonly encoding: Encoding;
  /** What is worth saying of how it was read. */
  readonly asides: readonly string[];
}

/** Standard input, typed as `-`. */
const standardInput = "standard input";

/** The bytes of FILE, or of standard input for `-`. @throws Stop 3 where it cannot be read */
export const sheetBytes = async (
  world: World,
  io: Io,
  typed: string,
): Promise<{ readonly file: string; readonly bytes: Uint8Array }> => {
  if (typed === "-") return { file: standardInput, bytes: await io.readInput() };
  const path = resolve(io.cwd, typed);
  const file = shown(io.cwd, path);
  const raw = readRaw(world, path, largestFile);
  if (raw === undefined) throw new Stop(3, [fileFault("file-missing", { file })]);
  return { file, bytes: raw.bytes };
};

/** @param told - the encoding that an option or the map names  @throws Stop 1 for what is no text */
export const sheetText = (file: string, bytes: Uint8Array, told: Encoding | undefined): SheetText => {
  const workbook = workbookFault(file, bytes);
  if (workbook !== undefined) throw new Stop(1, [workbook]);
  const unmarked = told === undefined ? unmarkedUtf16(bytes) : undefined;
  const meant = told ?? unmarked;
  const decoded = meant === undefined ? decode(bytes) : decodeAs(bytes, meant);
  if (decoded === undefined) throw new Stop(1, [undecoded(file, told)]);
  const zeros = decoded.text.split("\0").length - 1;
  if (zeros > 0) throw new Stop(1, [fileFault("file-zero-bytes", { file, detail: String(zeros) })]);
  return {
    file,
    text: decoded.text,
    encoding: decoded.encoding,
    asides: [
      ...(unmarked === undefined
        ? []
        : [`${file} does not say how it is encoded and was read as UTF-16: every second byte is zero`]),
      ...(told === undefined ? cautionsOf(file, decoded).map(asSaid) : []),
    ],
  };
};

const undecoded = (file: string, told: Encoding | undefined): Fault =>
  told === "utf-8"
    ? {
        code: "sheet-not-utf-8",
        severity: "error",
        file,
        found: `${file} is not UTF-8 throughout`,
        expected: "the encoding that its program wrote",
        mend: "leave --sheet-encoding out, or say --sheet-encoding windows-1252",
      }
    : fileFault("file-half-character", { file });

const cautionsOf = (file: string, { flaw, encoding, cutOff }: Decoded): readonly Fault[] => [
  ...(flaw === "mixed" ? [fileFault("file-mixed-encoding", { file }, "caution")] : []),
  ...(encoding === "windows-1252" ? [fileFault("file-windows-1252", { file }, "caution")] : []),
  ...(cutOff.length > 0 ? [fileFault("file-cut-off", { file }, "caution")] : []),
];
