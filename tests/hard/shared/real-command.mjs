// The command as it is shipped, in a process of its own: a copy of what setup.mjs built, so that a build meanwhile changes nothing.

import { spawn, spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, realpathSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "./program.mjs";

/** @returns the scratch folder, gone when this process ends, and how to run the command from there */
export const realCommand = (name) => {
  const built = spawnSync(process.execPath, [join("packages", "cli", "setup.mjs")], {
    cwd: root,
    stdio: ["ignore", 2, 2],
  });
  if (built.status !== 0) throw new Error("the command could not be built");
  const scratch = realpathSync(mkdtempSync(join(tmpdir(), `sealtrend-${name}-`)));
  process.on("exit", () => {
    rmSync(scratch, { recursive: true, force: true });
  });
  for (const part of ["bin", "dist"])
    cpSync(join(root, "packages", "cli", part), join(scratch, "cli", part), { recursive: true });
  const file = join(scratch, "cli", "bin", "sealtrend.js");
  const env = {
    PATH: process.env.PATH,
    HOME: join(scratch, "home"),
    XDG_STATE_HOME: join(scratch, "state"),
    XDG_DATA_HOME: join(scratch, "data"),
  };

  /** @returns exit, out, err and milliseconds by the clock */
  const sealtrend = (words, { cwd = scratch, more = {}, stdio = ["ignore", "pipe", "pipe"] } = {}) =>
    new Promise((ended) => {
      const begun = performance.now();
      const child = spawn(process.execPath, [file, ...words], { cwd, env: { ...env, ...more }, stdio });
      const said = { out: "", err: "" };
      child.stdout?.on("data", (data) => (said.out += data));
      child.stderr?.on("data", (data) => (said.err += data));
      child.on("close", (exit, signal) => ended({ exit, signal, ...said, took: performance.now() - begun }));
    });
  /** A line of the shell in which $sealtrend is the command. */
  const shell = (line, { cwd = scratch } = {}) => {
    const whole = line.replaceAll("$sealtrend", '"$node" "$file"');
    const { status, stdout, stderr } = spawnSync("bash", ["-c", whole], {
      cwd,
      encoding: "utf8",
      env: { ...env, node: process.execPath, file },
    });
    return { exit: status, out: stdout, err: stderr };
  };
  return { scratch, env, file, sealtrend, shell };
};

/** The sentence without its line breaks. */
export const flat = (text) => text.replace(/\s+/g, " ");
