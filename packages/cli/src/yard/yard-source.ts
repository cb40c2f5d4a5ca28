// The file of a yard, open to be read at any place: standard input is put into a file of its own first.

import { join } from "node:path";
import { tmpdir } from "node:os";
import { Stop } from "../command.ts";
import type { Io } from "../io.ts";
import { fileFault, shown, systemFault } from "../logbook/words.ts";
import { type World, codeOf } from "../logbook/world.ts";
import type { YardFile } from "./scan-yard.ts";

export interface YardSource extends YardFile {
  /** In bytes. */
  readonly size: number;
  close(): void;
}

/** @throws Stop 3 where it cannot be read */
export const openYard = async (world: World, io: Io, path: string): Promise<YardSource> =>
  path === "-" ? spooled(world, io) : opened(world, path);

const opened = (world: World, path: string): YardSource => {
  const { fs } = world;
  const file = shown(world.cwd, path);
  try {
    const fd = fs.openSync(path, "r");
    const kind = fs.fstatSync(fd);
    const close = (): void => fs.closeSync(fd);
    if (kind.isFile()) return { fs, fd, file, size: kind.size, close };
    close();
    throw new Stop(3, [fileFault("file-not-regular", { file })]);
  } catch (error) {
    const code = codeOf(error);
    if (code === "ENOENT") throw new Stop(3, [fileFault("file-missing", { file })]);
    throw code === undefined ? error : new Stop(3, [systemFault(file, "read", code)]);
  }
};

/** The file has no name any more once it is open, so that nothing is left of it whatever ends this process; where the system does
 *  not allow that it is removed at the end, Ctrl-C included. */
const spooled = async (world: World, io: Io): Promise<YardSource> => {
  const { fs, pid } = world;
  const path = join(tmpdir(), `sealtrend-yard-${String(pid)}-${String(world.clock())}.csv`);
  try {
    const fd = fs.openSync(path, "wx+", 0o600);
    const forget = unlinkSoon(fs, path);
    let size = 0;
    for await (const part of io.inputParts())
      for (let at = 0; at < part.length;) {
        const count = fs.writeSync(fd, part, at, part.length - at, size);
        at += count;
        size += count;
      }
    const close = (): void => {
      fs.closeSync(fd);
      forget();
    };
    return { fs, fd, file: "standard input", size, close };
  } catch (error) {
    const code = codeOf(error);
    throw code === undefined ? error : new Stop(3, [systemFault(path, "written", code)]);
  }
};

/** Removes the name of an open file now, or returns what does so later. */
const unlinkSoon = (fs: World["fs"], path: string): (() => void) => {
  try {
    fs.unlinkSync(path);
    return () => undefined;
  } catch {
    const remove = (): void => fs.unlinkSync(path);
    const interrupted = (): void => {
      process.exitCode = 130;
      remove();
      process.kill(process.pid, "SIGINT");
    };
    process.once("SIGINT", interrupted);
    return () => {
      process.off("SIGINT", interrupted);
      remove();
    };
  }
};
