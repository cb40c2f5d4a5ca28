// What `npm start`, `npm test`, `npm run check` and `npm run bench` run first, with nothing but Node: install the
// packages where they are missing or changed, then bundle the command where its sources changed. Both steps leave
// a stamp only when they are done, so a run that was killed is simply run again; two at once take turns. stdout stays
// empty.

import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { whileLocked } from "./setup-lock.mjs";

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const at = (...parts) => join(root, ...parts);
const say = (text) => process.stderr.write(`${text}\n`);

const manifests = ["package.json", "packages/core/package.json", "packages/cli/package.json"];

/** Files that a whole installation has; a package deleted by hand is noticed by one of these. */
const installed = [
  "node_modules/esbuild/package.json",
  "node_modules/vitest/vitest.mjs",
  "node_modules/typescript/bin/tsc",
  "packages/cli/node_modules/yargs/package.json",
  "packages/core/node_modules/csv-parse/package.json",
];

const bundled = ["sealtrend", "program", "program-code", "quick", "quick-code", "mathjs"].map(
  (name) => `packages/cli/dist/${name}.cjs`,
);

/** What the bundle is made of. */
const sources = [
  "packages/cli/src",
  "packages/core/src",
  "packages/cli/bundle.mjs",
  "data/demo",
  "data/faults",
  "data/rules",
];

const filesUnder = (path) => {
  let entries;
  try {
    entries = readdirSync(at(path), { withFileTypes: true });
  } catch (error) {
    return error.code === "ENOTDIR" ? [path] : [];
  }
  return entries.flatMap((entry) =>
    entry.isDirectory() ? filesUnder(`${path}/${entry.name}`) : [`${path}/${entry.name}`],
  );
};

const stampOf = (files, facts) => {
  const hash = createHash("sha256");
  for (const fact of facts) hash.update(`${fact}\0`);
  for (const file of files)
    hash
      .update(`${file}\0`)
      .update(readFileSync(at(file)))
      .update("\0");
  return hash.digest("hex");
};

const read = (path) => {
  try {
    return readFileSync(at(path), "utf8");
  } catch {
    return undefined;
  }
};

/** Beside what is built: an installation may empty node_modules. */
const lock = "packages/cli/dist/.stamp.lock";

/** Runs `work` unless `path` holds `stamp` and every file of `made` is there, or does once another set-up is done. */
const unlessDone = async (path, stamp, made, work) => {
  const isDone = () => read(path) === stamp && made.every((file) => existsSync(at(file)));
  if (isDone()) return;
  await whileLocked(at(lock), say, async () => {
    if (isDone()) return;
    rmSync(at(path), { force: true });
    await work();
    mkdirSync(dirname(at(path)), { recursive: true });
    writeFileSync(at(path), stamp);
  });
};

/** The program that npm or pnpm started us with, else the npm beside this Node; always run by Node itself, never
 *  through a shell, so that a path may hold spaces and quotes. */
const packageManager = () => {
  const started = process.env.npm_execpath;
  const agent = /^(npm|pnpm)\//.exec(process.env.npm_config_user_agent || "");
  if (agent && started && /\.[cm]?js$/.test(started)) return { name: agent[1], program: started };
  const beside = dirname(process.execPath);
  const found = [join(beside, "..", "lib", "node_modules"), join(beside, "node_modules")]
    .map((folder) => join(folder, "npm", "bin", "npm-cli.js"))
    .find((program) => existsSync(program));
  return { name: "npm", program: found };
};

/** What npm tells its children about its own command line must not steer the install. */
const childEnvironment = () => {
  const env = { ...process.env, CI: "true", npm_config_update_notifier: "false" };
  delete env.NODE_ENV;
  for (const name of [
    "package",
    "call",
    "ignore_scripts",
    "omit",
    "only",
    "production",
    "workspace",
    "workspaces",
  ])
    delete env[`npm_config_${name}`];
  return env;
};

const install = (pnpmVersion) => {
  say("sealtrend: installing its packages; once, about 10 s with the network at hand ...");
  const manager = packageManager();
  const before =
    manager.name === "pnpm"
      ? []
      : [
          "exec",
          "--yes",
          "--prefer-offline",
          "--loglevel=error",
          `--package=pnpm@${pnpmVersion}`,
          "--",
          "pnpm",
        ];
  const quiet = ["--reporter=append-only", "--loglevel=warn"];
  const args = [...before, "install", "--frozen-lockfile", "--prefer-offline", "--prod=false", ...quiet];
  const [program, first] = manager.program ? [process.execPath, [manager.program]] : ["npm", []];
  const options = { cwd: root, env: childEnvironment(), stdio: ["ignore", 2, 2] };
  const { status, error } = spawnSync(program, [...first, ...args], options);
  if (status === 0) return;
  say(
    error
      ? `sealtrend: cannot start ${program}: ${error.message}`
      : "sealtrend: the installation did not finish.",
  );
  say(
    "Nothing is left half-done: mend what stands above, or wait for the network, and run the same command again.",
  );
  process.exit(1);
};

const bundle = async () => {
  say("sealtrend: building the command ...");
  try {
    const { build } = await import("./bundle.mjs");
    await build();
  } catch (error) {
    say(`sealtrend: the command could not be built: ${error.message}`);
    process.exit(1);
  }
};

const main = async () => {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (!((major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22)) {
    say(
      `sealtrend needs Node 20.19 or later (of the 22 line, 22.12 or later); this is ${process.versions.node}.`,
    );
    process.exit(1);
  }
  const pinned = JSON.parse(readFileSync(at("package.json"), "utf8")).packageManager;
  const pnpmVersion = pinned.replace(/^pnpm@/, "").replace(/\+.*$/, "");
  const platform = [process.versions.node, process.platform, process.arch, pnpmVersion];
  const packages = ["pnpm-lock.yaml", "pnpm-workspace.yaml", ...manifests];
  await unlessDone("node_modules/.sealtrend-installed", stampOf(packages, platform), installed, () =>
    install(pnpmVersion),
  );
  const parts = [...sources.flatMap(filesUnder), ...packages].sort();
  await unlessDone("packages/cli/dist/.stamp", stampOf(parts, platform), bundled, bundle);
};

await main();
