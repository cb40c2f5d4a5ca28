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
      const { mtimeMs, size } = fs.fstatSync(fd);
      const bytes = readAll(world, fd, { size, limit });
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

/** Reads to the end; undefined if there is more than `limit`. @param size - what the file says of itself; a pipe says 0 */
const readAll = (
  { fs }: World,
  fd: number,
  { size, limit }: { readonly size: number; readonly limit: number },
): Uint8Array | undefined => {
  // with room for one byte more the end is found without another buffer
  let bytes = new Uint8Array(Math.min(size, limit) + 1);
  let total = 0;
  for (;;) {
    if (total === bytes.length) {
      const wider = new Uint8Array(Math.max(64 * 1024, 2 * total));
      wider.set(bytes);
      bytes = wider;
    }
    const count = fs.readSync(fd, bytes, total, bytes.length - total, null);
    if (count === 0) return bytes.subarray(0, total);
    total += count;
    if (total > limit) return undefined;
  }
};
