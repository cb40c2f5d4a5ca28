import { spawn } from "node:child_process";
import { existsSync, readFileSync, utimesSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

import { acquire, acquireAll, releaseAll } from "../../../packages/cli/src/logbook/lock.ts";
import type { World } from "../../../packages/cli/src/logbook/world.ts";
import { newPlace, stopOf, systemError, type Place } from "./place.ts";

/** A process that has ended, and been collected. */
const deadPid = async (): Promise<number> => {
  const child = spawn(process.execPath, ["-e", ""]);
  await new Promise((ended) => child.on("exit", ended));
  return child.pid ?? 0;
};

const minutes = (count: number): number => count * 60_000;

const leave = (place: Place, content: string, ageMs = 0): string => {
  const path = place.put("tests.csv.lock", content);
  const then = (Date.now() - ageMs) / 1000;
  utimesSync(path, then, then);
  return path;
};

const owner = (changes: object): string =>
  JSON.stringify({ pid: process.pid, host: hostname(), nonce: "n", ...changes });

/** A world whose clock runs a second with every look, so that no test waits. */
const quick = (place: Place, changes: Partial<World> = {}): World => {
  let ahead = 0;
  const sleep = async (): Promise<void> => {
    ahead += 1_000;
    await Promise.resolve();
  };
  return place.world({ clock: () => Date.now() + ahead, sleep, ...changes });
};

describe("locks", () => {
  test("a lock names its process and its computer, and goes when released", async () => {
    const place = newPlace();
    const lock = await acquire(place.world(), join(place.root, "tests.csv"));
    expect(JSON.parse(place.text("tests.csv.lock"))).toMatchObject({ pid: process.pid, host: hostname() });
    expect(lock.held()).toBe(true);
    lock.release();
    expect(place.names()).toEqual([]);
  });

  test.each([
    ["an empty lock", "", 11],
    ["a lock full of zeros", "\0".repeat(64), 11],
    ["a lock that is no text of ours", "locked", 11],
    ["a lock of another computer", owner({ host: "barn-pc" }), 11],
  ])("%s is removed after 10 minutes, and that is said", async (_, content, age) => {
    const place = newPlace();
    leave(place, content, minutes(age));
    (await acquire(place.world(), join(place.root, "tests.csv"))).release();
    expect(place.said.join("")).toContain("removed an old lock");
    expect(place.names()).toEqual([]);
  });

  test("a dead process's lock is taken over at once and silently", async () => {
    const place = newPlace();
    leave(place, owner({ pid: await deadPid() }));
    const sleep = (): Promise<void> => Promise.reject(new Error("must not wait"));
    (await acquire(place.world({ sleep }), join(place.root, "tests.csv"))).release();
    expect([place.said, place.names()]).toEqual([[], []]);
  });

  test("a process number that another process has now is dead too, where the system tells when it started", async () => {
    const place = newPlace();
    leave(place, owner({ start: "12" }));
    const processState = (): { alive: boolean; start: string } => ({ alive: true, start: "34" });
    (await acquire(place.world({ processState }), join(place.root, "tests.csv"))).release();
    expect(place.names()).toEqual([]);
  });

  test("where the system does not tell, a lock of a running process is old after 10 minutes", async () => {
    const place = newPlace();
    leave(place, owner({}), minutes(11));
    const world = place.world({ processState: () => ({ alive: true }) });
    (await acquire(world, join(place.root, "tests.csv"))).release();
    expect(place.said.join("")).toContain(`removed an old lock of process ${String(process.pid)}`);
  });

  test.each([
    ["a running process", owner({}), `process ${String(process.pid)}`],
    [
      "another computer, within 10 minutes",
      owner({ host: "barn-pc" }),
      `process ${String(process.pid)} on barn-pc`,
    ],
    ["nobody knows whom, within 10 minutes", "", "an unknown process"],
  ])("a lock of %s is waited for some seconds, then named with what to do", async (_, content, who) => {
    const place = newPlace();
    const path = leave(place, content);
    const world = quick(place, { processState: () => ({ alive: true }) });
    const stopped = acquire(world, join(place.root, "tests.csv"));
    await expect(stopped).rejects.toMatchObject({ exit: 3, faults: [{ code: "file-locked" }] });
    const { faults } = (await stopped.catch((error: unknown) => error)) as {
      faults: { found: string; mend: string }[];
    };
    expect(faults[0]?.found).toContain(who);
    expect(faults[0]?.mend).toContain("tests.csv.lock");
    expect(place.said.join("")).toContain(`waiting for ${who}`);
    expect(readFileSync(path, "utf8")).toBe(content);
  });

  test("of many waiters for a dead process's lock, each has it alone", async () => {
    const place = newPlace();
    leave(place, owner({ pid: await deadPid() }));
    let inside = 0;
    const most: number[] = [];
    const one = async (): Promise<void> => {
      const lock = await acquire(place.world(), join(place.root, "tests.csv"));
      inside += 1;
      most.push(inside);
      await place.world().sleep(2);
      inside -= 1;
      lock.release();
    };
    await Promise.all(Array.from({ length: 20 }, one));
    expect(Math.max(...most)).toBe(1);
    expect(most).toHaveLength(20);
    expect(place.names()).toEqual([]);
  });

  test("a waiter killed while it removed a dead process's lock does not block the next", async () => {
    const place = newPlace();
    const dead = owner({ pid: await deadPid() });
    leave(place, dead);
    const world = place.failing({
      unlinkSync: (path) => {
        if (String(path).endsWith("tests.csv.lock")) throw systemError("EIO");
        if (/\.lock-[0-9a-f]+\.lock$/.test(String(path))) writeFileSync(path, dead);
        else place.world().fs.unlinkSync(path);
      },
    });
    expect(await stopOf(() => acquire(world, join(place.root, "tests.csv")))).toBe("3: file-system");
    expect(place.names().filter((name) => name.includes(".lock-"))).toHaveLength(1);
    (await acquire(place.world(), join(place.root, "tests.csv"))).release();
    expect(place.names()).toEqual([]);
  });

  test("a lock that was taken away is noticed, and the next owner's is not removed", async () => {
    const place = newPlace();
    const lock = await acquire(place.world(), join(place.root, "tests.csv"));
    place.put("tests.csv.lock", "another");
    expect(lock.held()).toBe(false);
    lock.release();
    expect(place.text("tests.csv.lock")).toBe("another");
  });

  test("several locks are taken in the order of their names, once each, and all or none", async () => {
    const place = newPlace();
    const at = (name: string): string => join(place.root, name);
    const locks = await acquireAll(place.world(), [at("b"), at("a"), at("b")]);
    expect(locks.map(({ target }) => target)).toEqual([at("a"), at("b")]);
    releaseAll(locks);
    place.put("b.lock", owner({ host: "barn-pc" }));
    expect(await stopOf(() => acquireAll(quick(place), [at("a"), at("b")]))).toBe("3: file-locked");
    expect(existsSync(at("a.lock"))).toBe(false);
  });

  test("a disk without hard links can be locked too", async () => {
    const place = newPlace();
    const world = place.failing({
      linkSync: () => {
        throw systemError("EPERM");
      },
    });
    const lock = await acquire(world, join(place.root, "tests.csv"));
    expect(lock.held()).toBe(true);
    lock.release();
    expect(place.names()).toEqual([]);
  });

  test("a folder that cannot be written to is named with the reason", async () => {
    const place = newPlace();
    const world = place.failing({
      openSync: () => {
        throw systemError("EROFS");
      },
    });
    expect(await stopOf(() => acquire(world, join(place.root, "tests.csv")))).toBe("3: file-system");
  });

  test("where it cannot be told whether there is a lock, that is said at once", async () => {
    const place = newPlace();
    const lstatSync = ((path: string, options: { throwIfNoEntry: false }) => {
      if (path.endsWith(".lock")) throw systemError("EIO");
      return place.world().fs.lstatSync(path, options);
    }) as World["fs"]["lstatSync"];
    const world = place.failing({ lstatSync });
    expect(await stopOf(() => acquire(world, join(place.root, "tests.csv")))).toBe("3: file-system");
    expect(place.names()).toEqual([]);
  });
});
