// One set-up of a tree at a time: the second waits for the first and says so. A lock whose process has ended is taken over.

import { mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { setTimeout as pause } from "node:timers/promises";

/** Milliseconds between two looks, and after which a lock without a name was left half made. */
const look = 200;
const halfMade = 10_000;

/** Runs `work` while this process alone holds the lock. @param path - of the lock @param say - told once whom we wait for */
export const whileLocked = async (path, say, work) => {
  await take(path, say);
  const release = () => {
    if (holder(path) === String(process.pid)) rmSync(path, { force: true });
  };
  process.once("exit", release);
  try {
    return await work();
  } finally {
    process.off("exit", release);
    release();
  }
};

const take = async (path, say) => {
  mkdirSync(dirname(path), { recursive: true });
  let told = false;
  while (!made(path)) {
    const other = holder(path);
    if (other !== undefined && hasEnded(path, other)) remove(path, other);
    else if (other !== undefined) {
      if (!told)
        say(
          `sealtrend: another set-up of this folder is at work (process ${other || "?"}); waiting for it ...`,
        );
      told = true;
      await pause(look);
    }
  }
};

const made = (path) => {
  try {
    writeFileSync(path, String(process.pid), { flag: "wx" });
    return true;
  } catch (error) {
    if (error.code === "EEXIST") return false;
    throw error;
  }
};

/** Who holds it, empty where that is not written yet; undefined where nobody does. */
const holder = (path) => {
  try {
    return readFileSync(path, "utf8");
  } catch (error) {
    if (error.code === "ENOENT") return undefined;
    throw error;
  }
};

const hasEnded = (path, pid) => {
  if (!/^\d+$/.test(pid))
    return Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0) > halfMade;
  try {
    process.kill(Number(pid), 0);
    return false;
  } catch (error) {
    return error.code === "ESRCH";
  }
};

/** Takes a lock away from one that has ended. Of two that do so at once one may have moved a fresh lock: that is put back. */
const remove = (path, ended) => {
  const aside = `${path}.${process.pid}`;
  try {
    renameSync(path, aside);
  } catch (error) {
    if (error.code === "ENOENT") return;
    throw error;
  }
  if (holder(aside) === ended) rmSync(aside, { force: true });
  else renameSync(aside, path);
};
