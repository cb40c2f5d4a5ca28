// The first pass over a file, on bytes: its header, how it is encoded, and which engine stands where. It tells what the second
// pass reads, so that an engine is read in one piece wherever its rows stand.

import {
  type Problem,
  type YardHeader,
  numberColumns,
  readYardHeader,
  testColumns,
} from "@sealtrend/core/parts";
import { type Fault, Stop } from "../command.ts";
import { decode } from "../logbook/encoding.ts";
import { columnsNearlyNamed } from "../logbook/examine-columns.ts";
import type { FileSystem } from "../logbook/world.ts";
import { headerEnd } from "./header-end.ts";
import { cellBounds, cellText, isBlank, lineEnds, rowEnd } from "./row-scan.ts";
import { likeName } from "./like-name.ts";
import { type RunIndex, runIndex } from "./run-index.ts";
import { type Shard, isOfShard } from "./shard.ts";
import { textCheck } from "./text-check.ts";

export interface YardFile {
  readonly fs: Pick<FileSystem, "readSync">;
  /** Open to read, at any place. */
  readonly fd: number;
  /** As messages name it. */
  readonly file: string;
}

export interface ScannedYard {
  readonly header: YardHeader;
  readonly encoding: "utf-8" | "windows-1252";
  readonly index: RunIndex;
  readonly cautions: readonly (Problem | Fault)[];
}

/** Twice what the longest row takes. */
const partBytes = 1 << 21;

/** @throws Stop 1 for a header that cannot serve, and for bytes that are no text */
export const scanYard = ({ fs, fd, file }: YardFile, shard: Shard | undefined): ScannedYard => {
  const index = runIndex();
  const text = textCheck(file);
  const nameOf = namesIn();
  const part = Buffer.alloc(partBytes);
  let found: ReturnType<typeof headerOf> | undefined;
  let [held, offset, line, isDone] = [0, 0, 1, false];
  while (!isDone) {
    const count = fs.readSync(fd, part, held, part.length - held, offset + held);
    isDone = count === 0;
    const end = isDone ? "of the file" : "more follows";
    text.take(part.subarray(held, held + count));
    held += count;
    let from = 0;
    if (found === undefined) {
      const to = headerEnd(part, held, end);
      if (to === -1) continue;
      found = headerOf(part.subarray(0, to), file);
      line += lineEnds(part, 0, to);
      from = to;
    }
    const { engineColumn: column, delimiter: sign } = found.header;
    const delimiter = sign.charCodeAt(0);
    while (from < held) {
      const to = rowEnd(part, from, held, { delimiter, end });
      if (to === -1) break;
      const row = { offset: offset + from, length: to - from, line };
      if (isBlank(part, from, to, delimiter)) index.addBlank(row);
      else {
        const name = nameOf(part, cellBounds(part, { from, to, delimiter, column }));
        const isOurs =
          name === "" ? (shard?.number ?? 1) === 1 : shard === undefined || isOfShard(likeName(name), shard);
        if (isOurs) index.add(name, row);
      }
      line += lineEnds(part, from, to);
      from = to;
    }
    part.copyWithin(0, from, held);
    held -= from;
    offset += from;
  }
  const { header, problems } = found ?? headerOf(new Uint8Array(), file);
  return { header, encoding: text.encoding(), index, cautions: [...problems, ...text.cautions()] };
};

/** All that a row may say; any other column is nobody's, but one that is nearly named so may be a slip. */
const columns: readonly string[] = ["engine", "ignition", ...testColumns([]), ...Object.keys(numberColumns)];

const headerOf = (
  bytes: Uint8Array,
  file: string,
): { readonly header: YardHeader; readonly problems: readonly (Problem | Fault)[] } => {
  const text = decode(bytes)?.text ?? "";
  const { header, problems } = readYardHeader(text, file);
  if (header === undefined) throw new Stop(1, problems);
  return { header, problems: [...problems, ...columnsNearlyNamed({ text, file }, columns)] };
};

/** Rows of one engine mostly follow each other: the last name is kept. */
const namesIn = () => {
  let [raw, name] = ["", ""];
  return (bytes: Buffer, [from, to]: readonly [number, number]): string => {
    const now = bytes.toString("latin1", from, to);
    if (now !== raw) {
      raw = now;
      name = cellText(/[^\0-\x7f]/.test(now) ? bytes.toString("utf8", from, to) : now);
    }
    return name;
  };
};
