// Changes at the end of a file, in place: hard links stay true, and nothing before the end is touched.

import type { World } from "./world.ts";
import { writeAll } from "./write-bytes.ts";

/** Appends bytes in one positioned loop and flushes them; on any error the file is cut back to what it was.
 *  @param size - of the file as it was read [bytes]  @returns false if the file has another size now */
export const appendBytes = (world: World, path: string, size: number, bytes: Uint8Array): boolean =>
  inPlace(world, path, size, (fd) => {
    try {
      writeAll(world, fd, bytes, size);
      world.fs.fsyncSync(fd);
    } catch (error) {
      try {
        world.fs.ftruncateSync(fd, size);
        world.fs.fsyncSync(fd);
      } catch {
        // the caller looks at the file again, and the next command does
      }
      throw error;
    }
  });

/** Cuts a file back to its first `keep` bytes. @returns false if the file has another size than `size` */
export const truncate = (world: World, path: string, size: number, keep: number): boolean =>
  inPlace(world, path, size, (fd) => {
    world.fs.ftruncateSync(fd, keep);
    world.fs.fsyncSync(fd);
  });

const inPlace = ({ fs }: World, path: string, size: number, act: (fd: number) => void): boolean => {
  // O_NOFOLLOW: a link put there since the path was looked up is not followed. Windows has none of it.
  const flags: { readonly O_RDWR: number; readonly O_NOFOLLOW?: number } = fs.constants;
  const fd = fs.openSync(path, flags.O_RDWR | (flags.O_NOFOLLOW ?? 0));
  try {
    if (fs.fstatSync(fd).size !== size) return false;
    act(fd);
    return true;
  } finally {
    fs.closeSync(fd);
  }
};
