// Where the typed lines come from: a file, standard input, a person at a terminal, or nowhere.

import { resolve } from "node:path";
import type { Args } from "../../command.ts";
import type { Io } from "../../io.ts";
import { decode } from "../../logbook/encoding.ts";
import { readFile } from "../../logbook/read-file.ts";
import { asSaid, fileFault, shown } from "../../logbook/words.ts";
import { nodeWorld } from "../../logbook/world.ts";
import { Stop } from "../../command.ts";

export type Given =
  /** `file` as faults name it. */
  | {
      readonly kind: "lines";
      readonly file: string;
      readonly lines: readonly string[];
      readonly asides: readonly string[];
    }
  | { readonly kind: "asked" }
  /** Judge what is recorded. */
  | { readonly kind: "none"; readonly asides: readonly string[] };

/** @throws Stop 1 for what is no text, 3 for a file that cannot be read */
export const givenLines = async (args: Args, io: Io): Promise<Given> => {
  const from = args.text("from");
  if (from !== undefined) {
    const world = nodeWorld(io);
    const { path, text, cautions } = readFile(world, resolve(io.cwd, from));
    return { kind: "lines", file: shown(io.cwd, path), lines: linesOf(text), asides: cautions.map(asSaid) };
  }
  if (args.flag("no-input")) return { kind: "none", asides: io.inputHolds() ? [notRead] : [] };
  if (io.interactive) return { kind: "asked" };
  return inputLines(await io.readInput());
};

const standardInput = "standard input";

const notRead = `the lines on ${standardInput} were not read and nothing was saved: leave --no-input out to enter them`;

const inputLines = (bytes: Uint8Array): Given => {
  const file = standardInput;
  const decoded = decode(bytes);
  if (decoded === undefined) throw new Stop(1, [fileFault("file-half-character", { file })]);
  const zeros = decoded.text.split("\0").length - 1;
  if (zeros > 0) throw new Stop(1, [fileFault("file-zero-bytes", { file, detail: String(zeros) })]);
  if (decoded.text.trim() === "") return { kind: "none", asides: [] };
  return { kind: "lines", file, lines: linesOf(decoded.text), asides: [] };
};

/** The blank line after the last line end is none. */
const linesOf = (text: string): readonly string[] => {
  const lines = text.split(/\r\n|\r|\n/);
  return lines.at(-1) === "" ? lines.slice(0, -1) : lines;
};
