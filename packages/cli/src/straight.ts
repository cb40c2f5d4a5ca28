// Writing to a descriptor itself: making Node's stream around it costs a twentieth of a start, and what is written at once
// needs no waiting for at the end.

import { writeSync } from "node:fs";

interface Way {
  readonly write: (text: string) => void;
  /** Whether all of it is written, so that the process may end at once. */
  readonly isDone: () => boolean;
}

/** Where the system takes no more for now, or refuses, the stream goes on with the rest and tells what was wrong; on Windows
 *  it alone knows the letters of the console. @param stream - makes it, when first asked */
export const straight = (fd: number, stream: () => NodeJS.WritableStream): Way => {
  let made = process.platform === "win32" ? stream() : undefined;
  return {
    write: (text) => {
      const bytes = Buffer.from(text);
      let from = 0;
      try {
        while (made === undefined && from < bytes.length) from += writeSync(fd, bytes, from);
      } catch {
        made = stream();
      }
      made?.write(bytes.subarray(from));
    },
    isDone: () => made === undefined,
  };
};
