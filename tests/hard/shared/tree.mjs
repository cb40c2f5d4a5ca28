// A folder with all that is in it, to be looked at and put back as it was before each trial.

import { existsSync, lstatSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

/** Locks, notes and unfinished files: what the next command sweeps, and no part of the records. */
const housekeeping = /(^|\/)[^/]*\.(tmp|lock|pending)$/;

/** Files below a folder with their bytes, by name; folders with none, their names ending in `/`. */
export const filesIn = (folder) => {
  const found = new Map();
  const walk = (below) => {
    for (const name of readdirSync(join(folder, below)).sort()) {
      const path = below === "" ? name : `${below}/${name}`;
      if (lstatSync(join(folder, path)).isDirectory()) {
        found.set(`${path}/`, undefined);
        walk(path);
      } else found.set(path, bytesOf(join(folder, path)));
    }
  };
  walk("");
  return found;
};

/** A link counts as what it leads to, if that is there. */
const bytesOf = (path) => (existsSync(path) ? readFileSync(path) : Buffer.from("a link to nothing"));

/** Makes a folder hold these files and nothing else. */
export const putBack = (folder, files) => {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const [name, bytes] of files) {
    if (bytes === undefined) mkdirSync(join(folder, name), { recursive: true });
    else {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), bytes);
    }
  }
};

/** The records among files as one text, to be compared; empty folders are none. */
export const recordsOf = (files) =>
  [...files]
    .filter(([name, bytes]) => bytes !== undefined && !housekeeping.test(name))
    .map(([name, bytes]) => `== ${name}\n${bytes.toString("latin1")}`)
    .join("\n");

/** What was left behind of housekeeping. */
export const litterOf = (files) => [...files.keys()].filter((name) => housekeeping.test(name));
