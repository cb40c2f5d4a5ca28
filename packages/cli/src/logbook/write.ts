// The one door through which commands write: all changes of a command, whole or not at all.

import { dirname } from "node:path";

import { parseTable } from "@sealtrend/core/parts";

import { Stop } from "../command.ts";
import { columnsAdded, columnsLacking, withColumns } from "./add-columns.ts";
import { commit } from "./commit.ts";
import { makeFolder, removeEmptyFolder } from "./create.ts";
import { deltaBetween, type Delta } from "./delta.ts";
import { utf8 } from "./encoding.ts";
import { insideRoot, isThere, realPath } from "./inside.ts";
import { remember, type Done } from "./journal.ts";
import { rowsAtEnd, wholeText } from "./line-ends.ts";
import { lockFiles } from "./lock-files.ts";
import { newOwner } from "./owner.ts";
import { largestFile, readFile, readFileIfThere, type UserFile } from "./read-file.ts";
import { releaseWith } from "./settle.ts";
import { codeOf, type World } from "./world.ts";
import { sweep } from "./write-bytes.ts";
import { asSaid, fileFault, shown, systemFault } from "./words.ts";

/** What to do to one file. The functions are called in the order of the list, when all files are locked and read afresh:
 *  so the name of a new test is found there, a later change may use what an earlier one found, and any may throw a Stop. */
export type Change = Append | Replace | Create;

export interface Append {
  readonly kind: "append";
  /** Relative to the logbook, or absolute in it. */
  readonly path: string;
  /** The header, without line end, for a file that is missing or empty; left out = a missing file is a fault. */
  readonly header?: string;
  /** Names of the columns that the rows need: those the file lacks are added at the end of its lines. */
  readonly needs?: (text: string) => readonly string[];
  /** Rows without line ends, in the delimiter of the file; none = the file stays as it is. */
  readonly rows: (current: UserFile | undefined) => readonly string[];
}

export interface Replace {
  readonly kind: "replace";
  readonly path: string;
  /** The whole new text; what it has in common with the old one stays byte for byte. */
  readonly text: (current: UserFile) => string;
}

export interface Create {
  readonly kind: "create";
  readonly path: string;
  /** Written as UTF-8 without a mark. */
  readonly text: string;
}

export interface WriteRequest {
  /** Folder of the logbook, absolute; made if it is missing. */
  readonly root: string;
  /** The command line, shown by `undo`. */
  readonly command: string;
  readonly changes: readonly Change[];
  /** Printed back if it cannot be saved: the reading as it was typed. */
  readonly unsaved?: string;
}

export interface WrittenFile {
  readonly path: string;
  readonly kind: Change["kind"];
  /** The rows as they stand in the file now; empty for `replace` and `create`. */
  readonly rows: readonly string[];
}

export interface Written {
  /** Real path of the logbook. */
  readonly root: string;
  /** Only files that really changed. */
  readonly files: readonly WrittenFile[];
  readonly undo: "possible" | "not-possible";
  /** To be said on stderr, a sentence each. */
  readonly asides: readonly string[];
}

/** @throws Stop 3 (a file could not be read or written) or whatever a change threw; nothing is changed then */
export const write = async (world: World, request: WriteRequest): Promise<Written> => {
  const isNew = !isThere(world, request.root);
  try {
    return await writeAllOf(world, request);
  } catch (error) {
    if (isNew) removeEmptyFolder(world, request.root);
    const code = codeOf(error);
    const file = shown(world.cwd, request.root);
    const stop = code === undefined ? error : new Stop(3, [systemFault(file, "written to", code)]);
    if (!(stop instanceof Stop) || request.unsaved === undefined || stop.after !== "") throw stop;
    throw new Stop(stop.exit, stop.faults, `not saved: ${request.unsaved}\n`);
  }
};

const writeAllOf = async (
  world: World,
  { root: asked, command, changes }: WriteRequest,
): Promise<Written> => {
  makeFolder(world, asked);
  const root = realPath(world, asked);
  const paths = changes.map((change) => insideRoot(world, root, change.path));
  if (new Set(paths).size < paths.length) throw new TypeError("write: one change a file");
  const { locks, missing, asides: waited } = await lockFiles(world, root, paths);
  let saved = false;
  try {
    const prepared = changes.map((change, index) => prepare(world, paths[index] ?? root, change));
    const files = prepared.flatMap(({ delta, file }) => (delta === undefined ? [] : [file]));
    const deltas = prepared.flatMap(({ delta }) => (delta === undefined ? [] : [delta]));
    const said = [...waited, ...prepared.flatMap((one) => one.asides ?? [])];
    if (deltas.length === 0) return { root, files, undo: "not-possible", asides: said };
    const owner = newOwner(world);
    const entry = {
      id: owner.nonce,
      command,
      when: world.stamp(),
      files: deltas.map(done),
      folders: missing,
    };
    let trouble: string | undefined;
    const keep = (): void => {
      trouble = remember(world, root, entry);
    };
    const pending = { owner, command, deltas, folders: missing };
    const asides = [...said, ...(await commit(world, root, { pending, locks, keep }))];
    saved = true;
    world.saved(command);
    for (const folder of new Set([root, ...paths.map(dirname)])) sweep(world, folder);
    if (trouble === undefined) return { root, files, undo: "possible", asides };
    return { root, files, undo: "not-possible", asides: [...asides, `undo is not available (${trouble})`] };
  } finally {
    releaseWith(world, locks, saved ? [] : missing);
  }
};

interface Prepared {
  readonly delta: Delta | undefined;
  readonly file: WrittenFile;
  /** To be said aloud. */
  readonly asides?: readonly string[];
}

const prepare = (world: World, path: string, change: Change): Prepared => {
  const file = { path, kind: change.kind, rows: [] };
  if (change.kind === "create") {
    if (isThere(world, path)) throw new Stop(3, [fileFault("file-exists", { file: shown(world.cwd, path) })]);
    return { delta: deltaTo(world, path, undefined, utf8(change.text)), file };
  }
  if (change.kind === "replace") {
    const current = readFile(world, path);
    const bytes = wholeText(current, shown(world.cwd, path), change.text(current));
    return { delta: deltaTo(world, path, current.bytes, bytes), file, asides: cautionsOf(current) };
  }
  const current = change.header === undefined ? readFile(world, path) : readFileIfThere(world, path);
  return prepareRows(world, path, change, current);
};

const prepareRows = (world: World, path: string, change: Append, found: UserFile | undefined): Prepared => {
  const { current, asides } = widened(world, path, change, found);
  const rows = change.rows(current);
  const file = { path, kind: change.kind, rows };
  if (rows.length === 0) return { delta: undefined, file };
  const begins = current === undefined || current.text === "";
  const lines = begins && change.header !== undefined ? [change.header, ...rows] : rows;
  if (current === undefined) {
    const bytes = utf8(lines.map((line) => `${line}\n`).join(""));
    return { delta: deltaTo(world, path, undefined, bytes), file };
  }
  const bytes = Buffer.concat([current.bytes, rowsAtEnd(current, shown(world.cwd, path), lines)]);
  return { delta: deltaTo(world, path, found?.bytes, bytes), file, asides };
};

interface Widened {
  readonly current: UserFile | undefined;
  readonly asides: readonly string[];
}

/** The file with the columns that the new rows need. @throws Stop 1 where its shape has a fault */
const widened = (world: World, path: string, { needs }: Append, found: UserFile | undefined): Widened => {
  if (found === undefined) return { current: found, asides: [] };
  const isBlank = found.text.trim() === "";
  const lacking = needs === undefined || isBlank ? [] : columnsLacking(found.text, needs(found.text));
  if (lacking.length === 0) return { current: found, asides: cautionsOf(found) };
  const file = shown(world.cwd, path);
  const text = withColumns(found.text, lacking);
  if (text === undefined) throw new Stop(1, parseTable(found.text, file).problems);
  if (found.cutOff.length > 0) throw new Stop(1, [fileFault("file-cut-off", { file })]);
  return {
    current: { ...found, text, bytes: wholeText(found, file, text) },
    asides: [...cautionsOf(found), columnsAdded(file, lacking)],
  };
};

const cautionsOf = ({ cautions }: UserFile): readonly string[] => cautions.map(asSaid);

/** What is written must be readable again. */
const deltaTo = (
  world: World,
  path: string,
  before: Uint8Array | undefined,
  after: Uint8Array,
): Delta | undefined => {
  if (after.length > largestFile) {
    const facts = { file: shown(world.cwd, path), detail: "more than 16 MiB with what was to be added" };
    throw new Stop(3, [fileFault("file-too-large", facts)]);
  }
  return deltaBetween(path, before, after);
};

const done = ({ path, at, removed, added, before, after }: Delta): Done => ({
  path,
  at,
  removed,
  addedLength: added.length,
  ...(before === undefined ? {} : { before }),
  ...(after === undefined ? {} : { after }),
});
