// Whether standard input holds lines that nobody is going to read: to say so, never to wait for them.

import { closeSync, constants, fstatSync, openSync, readSync, readlinkSync } from "node:fs";

const own = "/proc/self/fd/0";

/** A file that is not empty, or a pipe in which text lies ready. What the shell that started us reads too, as the list of a
 *  loop over engines, was not meant for us: nothing is taken from it or said of it. */
export const inputHolds = (): boolean => {
  try {
    const input = fstatSync(0);
    if ((!input.isFile() && !input.isFIFO()) || isOfParent()) return false;
    return input.size > 0 || (input.isFIFO() && liesReady());
  } catch {
    return false;
  }
};

/** Where the system does not show it, no. */
const isOfParent = (): boolean => {
  try {
    return readlinkSync(`/proc/${String(process.ppid)}/fd/0`) === readlinkSync(own);
  } catch {
    return false;
  }
};

/** Opened anew, so that an open pipe with nothing in it is an error at once instead of a wait. */
const liesReady = (): boolean => {
  const input = openSync(own, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    const part = Buffer.alloc(4096);
    return part.toString("utf8", 0, readSync(input, part)).trim() !== "";
  } finally {
    closeSync(input);
  }
};
