// Where a path of the logbook really leads. Links are followed, and refused where they lead out.

import { basename, dirname, isAbsolute, join, relative, resolve } from "node:path";

import { Stop } from "../command.ts";
import { codeOf, type World } from "./world.ts";
import { fileFault, shown, systemFault, type FileCode } from "./words.ts";

/** The real path of a file (existing or to be made) in a logbook. @param root - real path of the logbook
 *  @throws Stop 3 where the path or a link leads out of the logbook */
export const insideRoot = (world: World, root: string, path: string): string => {
  const asked = resolve(root, path);
  const real = realPath(world, asked);
  const below = relative(root, real);
  if (below === "" || below === ".." || /^\.\.[\\/]/.test(below) || isAbsolute(below) || path.includes("\0"))
    throw refused(world, "path-outside", asked, shown(world.cwd, root));
  return real;
};

/** The real path, also of what does not exist yet. @throws Stop 3 */
export const realPath = (world: World, path: string): string => {
  const { fs } = world;
  try {
    return fs.realpathSync(path);
  } catch (error) {
    const code = codeOf(error);
    if (code !== undefined && code !== "ENOENT")
      throw new Stop(3, [systemFault(shown(world.cwd, path), "read", code)]);
    if (code === undefined) throw refused(world, "path-outside", path.replaceAll("\0", "?"));
  }
  const entry = fs.lstatSync(path, { throwIfNoEntry: false });
  if (entry?.isSymbolicLink() === true) throw refused(world, "link-to-nothing", path);
  if (entry !== undefined) return realPath(world, path); // another command put it back between the two looks
  return join(realPath(world, dirname(path)), basename(path));
};

/** Whether something has that name, a link to nothing included. Nothing lies below a plain file, nor below a link that leads to
 *  itself. */
export const isThere = ({ fs }: World, path: string): boolean => {
  try {
    return fs.lstatSync(path, { throwIfNoEntry: false }) !== undefined;
  } catch (error) {
    if (isNowhere(error)) return false;
    throw error;
  }
};

/** Whether a path leads to a folder, links followed. */
export const isFolder = ({ fs }: World, path: string): boolean => {
  try {
    return fs.statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
  } catch (error) {
    if (isNowhere(error)) return false;
    throw error;
  }
};

const isNowhere = (error: unknown): boolean => ["ENOTDIR", "ELOOP"].includes(codeOf(error) ?? "");

const refused = (world: World, code: FileCode, path: string, detail = ""): Stop =>
  new Stop(3, [fileFault(code, { file: shown(world.cwd, path), detail })]);
