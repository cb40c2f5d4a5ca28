// Takes back the last command that wrote to a logbook from this computer: another ordinary safe write.

import { Stop } from "../command.ts";
import { commit } from "./commit.ts";
import { inverse, type Delta } from "./delta.ts";
import { realPath } from "./inside.ts";
import { dropEntry, lastEntry, type Done, type Entry } from "./journal.ts";
import { lockFiles } from "./lock-files.ts";
import { newOwner } from "./owner.ts";
import { sha256 } from "./fingerprint.ts";
import { largestFile, readRaw } from "./read-file.ts";
import { releaseWith, settle } from "./settle.ts";
import type { World } from "./world.ts";
import { fileFault, shown } from "./words.ts";

export interface Undone {
  /** The command that was taken back, and when it ran (local time). */
  readonly command: string;
  readonly when: string;
  readonly files: readonly { readonly path: string; readonly what: "removed" | "restored" }[];
  readonly asides: readonly string[];
}

/** @throws Stop 1 where there is nothing to take back, 3 where a file has changed since or cannot be written */
export const undo = async (world: World, logbook: string): Promise<Undone> => {
  const asides = [...(await settle(world, logbook, "write"))];
  const root = realPath(world, logbook);
  for (;;) {
    const entry = lastEntry(world, root);
    if (entry === undefined) throw new Stop(1, [fileFault("undo-nothing", { file: shown(world.cwd, root) })]);
    const paths = entry.files.map((file) => file.path);
    const { locks, asides: more } = await lockFiles(world, root, paths, entry.folders);
    asides.push(...more);
    let folders: readonly string[] = [];
    try {
      if (lastEntry(world, root)?.id !== entry.id) continue; // another command ended meanwhile
      const deltas = backwards(world, entry);
      const pending = { owner: newOwner(world), command: `undo of: ${entry.command}`, deltas, folders: [] };
      if (deltas.length > 0)
        asides.push(...(await commit(world, root, { pending, locks, keep: () => undefined })));
      world.saved(`undo of: ${entry.command}`);
      dropEntry(world, root, entry.id);
      ({ folders } = entry);
      const files = entry.files.map(({ path, before }) => ({ path, what: removedOrRestored(before) }));
      return { command: entry.command, when: entry.when, files, asides };
    } finally {
      releaseWith(world, locks, folders);
    }
  }
};

const removedOrRestored = (before: string | undefined): "removed" | "restored" =>
  before === undefined ? "removed" : "restored";

/** What takes the entry back, last file first; empty where an undo was killed when all but its end was done.
 *  @throws Stop 3 with a fault for every file that is not as the command left it */
const backwards = (world: World, entry: Entry): readonly Delta[] => {
  const states = entry.files.map((file) => ({ file, bytes: readRaw(world, file.path, largestFile)?.bytes }));
  if (states.every(({ file, bytes }) => print(bytes) === file.before)) return [];
  const others = states.filter(({ file, bytes }) => print(bytes) !== file.after);
  if (others.length > 0) {
    const detail = `${entry.command} (${entry.when})`;
    throw new Stop(
      3,
      others.map(({ file }) => fileFault("undo-changed", { file: shown(world.cwd, file.path), detail })),
    );
  }
  return states.map(({ file, bytes }) => inverse(whole(file, bytes ?? new Uint8Array()))).reverse();
};

const print = (bytes: Uint8Array | undefined): string | undefined => bytes && sha256(bytes);

const whole = ({ addedLength, ...file }: Done, bytes: Uint8Array): Delta => ({
  ...file,
  added: bytes.slice(file.at, file.at + addedLength),
});
