// What check.mjs reads itself, file by file.

import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync, statSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";

const mostCodeLines = 250;

/** Licences that let anyone use, change and pass on what we bundle or build with. */
const allowedLicences = new Set([
  "MIT", "MIT-0", "ISC", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "0BSD", "BlueOak-1.0.0", "CC0-1.0",
  "CC-BY-4.0", "Python-2.0", "MPL-2.0", "Unlicense", "Apache 2.0", "(MIT OR CC0-1.0)", "(MIT AND Zlib)",
]); // prettier-ignore

const filesUnder = (folder) =>
  readdirSync(folder, { recursive: true })
    .map((name) => join(folder, name))
    .filter((path) => statSync(path).isFile());

/** Lines that hold code: neither empty nor all comment. */
const codeLines = (text) =>
  text
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .split("\n")
    .filter((line) => !/^\s*(\/\/.*)?$/.test(line)).length;

/** Source files too long to read at one sitting; what a generator wrote says so in its first line. */
export const sourceSizes = (root) =>
  ["core", "cli"]
    .flatMap((name) => filesUnder(join(root, "packages", name, "src")))
    .filter((path) => path.endsWith(".ts"))
    .map((path) => ({ path, text: readFileSync(path, "utf8") }))
    .filter(({ text }) => !/^\/\/.*generated/i.test(text))
    .map(({ path, text }) => ({ path, lines: codeLines(text) }))
    .filter(({ lines }) => lines > mostCodeLines)
    .map(
      ({ path, lines }) =>
        `${path.slice(root.length + 1)}: ${String(lines)} lines of code, at most ${String(mostCodeLines)}`,
    );

const hosts = /https?:\/\/[^ ]*(npm|debian)/i;
const machinePath = /(^|[\s"'`(=:,])\/(root|work)\//;
const home = `${homedir()}/`;

/** Tracked and new files, without what git ignores; the lockfile is pnpm's own. */
const ourFiles = (root) =>
  execFileSync("git", ["ls-files", "-z", "--cached", "--others", "--exclude-standard"], {
    cwd: root,
    encoding: "utf8",
  })
    .split("\0")
    .filter((name) => name !== "" && name !== "pnpm-lock.yaml");

/** Places where a path of one machine or the name of a registry stands. */
export const faultsOfText = (root) =>
  ourFiles(root).flatMap((name) =>
    linesOf(join(root, name)).flatMap((line, index) =>
      hosts.test(line) || machinePath.test(line) || line.includes(home)
        ? [`${name}:${String(index + 1)}: ${line.trim().slice(0, 120)}`]
        : [],
    ),
  );

const linesOf = (path) => {
  try {
    return readFileSync(path, "utf8").split("\n");
  } catch {
    return []; // deleted, not yet committed
  }
};

/** Packages whose licence is not on the list. @param json - the answer of `pnpm licenses list --json` */
export const licenceFaults = (json) =>
  Object.entries(JSON.parse(json))
    .filter(([licence]) => !allowedLicences.has(licence))
    .flatMap(([licence, packages]) => packages.map(({ name }) => `${name}: ${licence}`));
