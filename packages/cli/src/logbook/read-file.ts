// Reads a user's file whole: its bytes, its text, how it is encoded, and a fingerprint to know it by.

import { Stop, type Fault } from "../command.ts";
import { sparing } from "../sparing.ts";
import { decode, type Decoded } from "./encoding.ts";
import { codeOf, type World } from "./world.ts";
import { fileFault, shown, systemFault } from "./words.ts";

/** No file larger than this is read or written: 16 MiB, some 200,000 rows. */
export const largestFile = 16 * 1024 * 1024;

export interface UserFile extends Decoded {
  readonly path: string;
  readonly bytes: Uint8Array;
  /** Bytes. */
  readonly size: number;
  readonly mtimeMs: number;
  /** What is worth saying: read as Windows-1252, cut off. */
  readonly cautions: readonly Fault[];
}

/** Reads a file that may be missing. @throws Stop 3 if it is there and cannot be read, 1 if it holds no text */
export const readFileIfThere = (world: World, path: string): UserFile | undefined => {
  const raw = readRaw(world, path, largestFile);
  if (raw === undefined) return undefined;
  sparing(raw.size / 4); // a record takes less than a sheet that becomes one
  const file = shown(world.cwd, path);
  const decoded = decode(raw.bytes);
  if (decoded === undefined) throw new Stop(1, [fileFault("file-half-character", { file })]);
  const zeros = decoded.text.split("\0").length - 1;
  if (zeros > 0) throw new Stop(1, [fileFault("file-zero-bytes", { file, detail: String(zeros) })]);
  const cautions = [
    ...(decoded.flaw === "mixed" ? [fileFault("file-mixed-encoding", { file }, "caution")] : []),
    ...(decoded.encoding === "windows-1252" ? [fileFault("file-windows-1252", { file }, "caution")] : []),
    ...(decoded.cutOff.length > 0 ? [fileFault("file-cut-off", { file }, "caution")] : []),
  ];
  return { path, ...raw, ...decoded, cautions };
};

/** Reads a file that must be there. @throws Stop 3 if it is missing or cannot be read, 1 if it holds no text */
export const readFile = (world: World, path: string): UserFile => {
  const file = readFileIfThere(world, path);
  if (file === undefined) throw new Stop(3, [fileFault("file-missing", { file: shown(world.cwd, path) })]);
  return file;
};

export interface Raw {
  readonly bytes: Uint8Array;
  readonly size: number;
  readonly mtimeMs: number;
}

/** The bytes of a file, whatever they are; undefined if it is missing. @throws Stop 3 */
export const readRaw = (world: World, path: string, limit: number): Raw | undefined => {
  const { fs } = world;
  const file = shown(world.cwd, path);
  try {
    const kind = fs.statSync(path);
    // What a shell hands over, such as /dev/fd/63, may be a pipe; a pipe in a logbook would only hang.
    if (!kind.isFile() && (kind.isDirectory() || !/^\/(dev|proc)\//.test(path)))
      throw new Stop(3, [fileFault("file-not-regular", { file })]);
    const fd = fs.openSync(path, "r");
    try {
      const { mtimeMs } = fs.fstatSync(fd);
      const bytes = readAll(world, fd, limit);
      if (bytes === undefined) {
        const detail = `more than ${String(Math.floor(limit / 1048576))} MiB`;
        throw new Stop(3, [fileFault("file-too-large", { file, detail })]);
      }
      return { bytes, size: bytes.length, mtimeMs };
    } finally {
      fs.closeSync(fd);
    }
  } catch (error) {
    const code = codeOf(error);
    if (code === "ENOENT") return undefined;
    if (code === undefined) throw error;
    throw new Stop(3, [systemFault(file, "read", code)]);
  }
};

/** Reads to the end; undefined if there is more than `limit`. */
const readAll = ({ fs }: World, fd: number, limit: number): Uint8Array | undefined => {
  const parts: Uint8Array[] = [];
  let total = 0;
  for (;;) {
    const part = new Uint8Array(64 * 1024);
    const count = fs.readSync(fd, part, 0, part.length, null);
    if (count === 0) return Buffer.concat(parts);
    total += count;
    if (total > limit) return undefined;
    parts.push(part.subarray(0, count));
  }
};
