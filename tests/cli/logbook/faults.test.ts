// Every call that changes the disk fails once, at every place where it is made: nothing may be changed then.

import * as nodeFs from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

import { settle } from "../../../packages/cli/src/logbook/settle.ts";
import { write, type Change } from "../../../packages/cli/src/logbook/write.ts";
import type { FileSystem } from "../../../packages/cli/src/logbook/world.ts";
import { newPlace, stopOf, systemError, type Place } from "./place.ts";

const changes: readonly Change[] = [
  { kind: "append", path: "tests.csv", rows: () => ["b", "c"] },
  { kind: "replace", path: "gauges.csv", text: (current) => current.text.replace("14O", "140") },
  { kind: "create", path: "pump/engine.json", text: "{}\n" },
];
const request = (place: Place): Parameters<typeof write>[1] => ({
  root: place.root,
  command: "enter",
  changes,
});

const furnish = (): Place => {
  const place = newPlace();
  place.put("tests.csv", "h\na");
  place.put("gauges.csv", "x\n14O\ny\n");
  return place;
};
const old = { names: ["gauges.csv", "tests.csv"], tests: "h\na", gauges: "x\n14O\ny\n" };
const state = (place: Place): object => ({
  names: place.names(),
  tests: place.text("tests.csv"),
  gauges: place.text("gauges.csv"),
});

type Call =
  | "fsyncSync"
  | "linkSync"
  | "mkdirSync"
  | "openSync"
  | "renameSync"
  | "unlinkSync"
  | "writeSync"
  | "fchmodSync";

/** A file system of which the call number `nth` fails, and all later ones of that kind too if `lasting`. */
const failingAt = (call: Call, nth: number, code: string, how: "once" | "lasting"): Failing => {
  let count = 0;
  const real = nodeFs[call] as (...given: unknown[]) => unknown;
  const fake = (...given: unknown[]): unknown => {
    count += 1;
    if (count === nth || (how === "lasting" && count > nth)) throw systemError(code);
    return real(...given);
  };
  return { calls: { [call]: fake }, reached: () => count >= nth };
};

interface Failing {
  readonly calls: Partial<FileSystem>;
  /** Whether the call that fails was made at all: the last place is past then. */
  reached(): boolean;
}

/** Locks and unfinished files that such a disk would not let go of, and folders with nothing else in them. */
const removeLitter = (folder: string): void => {
  for (const entry of nodeFs.readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) removeLitter(path);
    if (/\.lock$|\.tmp$/.test(entry.name)) nodeFs.unlinkSync(path);
    else if (entry.isDirectory() && nodeFs.readdirSync(path).length === 0) nodeFs.rmdirSync(path);
  }
};

describe("a disk that fails", () => {
  test.each<[Call, string]>([
    ["writeSync", "ENOSPC"],
    ["writeSync", "EIO"],
    ["writeSync", "EDQUOT"],
    ["fsyncSync", "EIO"],
    ["fsyncSync", "ENOSPC"],
    ["renameSync", "EACCES"],
    ["renameSync", "EBUSY"],
    ["openSync", "EACCES"],
    ["openSync", "EMFILE"],
    ["openSync", "EROFS"],
    ["linkSync", "EIO"],
    ["mkdirSync", "ENOSPC"],
    ["fchmodSync", "EIO"],
  ])(
    "%s failing once with %s, at each place in turn: all is saved, or nothing and exit 3",
    async (call, code) => {
      let refused = 0;
      for (let nth = 1; ; nth += 1) {
        const place = furnish();
        const failing = failingAt(call, nth, code, "once");
        const result = await stopOf(() => write(place.failing(failing.calls), request(place)));
        if (result === "nothing was thrown") {
          expect(place.text("tests.csv"), `${call} ${String(nth)}`).toBe("h\na\nb\nc\n");
          expect([place.text("gauges.csv"), place.names("pump")]).toEqual(["x\n140\ny\n", ["engine.json"]]);
        } else {
          refused += 1;
          expect(result, `${call} ${String(nth)}`).toMatch(/^3: (file-system|file-locked|lock-lost)$/);
          expect(state(place), `${call} ${String(nth)}`).toEqual(old);
        }
        if (!failing.reached()) break;
      }
      expect(refused).toBeGreaterThan(0);
    },
  );

  test.each<[Call, string]>([
    ["writeSync", "ENOSPC"],
    ["fsyncSync", "EIO"],
    ["renameSync", "EIO"],
    ["openSync", "EACCES"],
  ])(
    "%s failing with %s from some place on: what cannot be put back now is put back by the next command",
    async (call, code) => {
      let refused = 0;
      for (let nth = 1; ; nth += 1) {
        const place = furnish();
        const failing = failingAt(call, nth, code, "lasting");
        const died = {
          ...place.failing(failing.calls),
          pid: 2 ** 22 + 1,
          processState: () => ({ alive: true }),
        };
        const result = await stopOf(() => write(died, request(place)));
        if (!failing.reached()) break;
        if (result === "nothing was thrown") continue;
        refused += 1;
        expect(result, `${call} ${String(nth)}`).toMatch(/^3: /);
        await settle(place.world(), place.root, "write");
        removeLitter(place.root);
        expect(state(place), `${call} ${String(nth)}`).toEqual(old);
      }
      expect(refused).toBeGreaterThan(0);
    },
  );

  test("a disk that takes a few bytes at a time still gets them all", async () => {
    const place = furnish();
    const writeSync = ((
      fd: number,
      bytes: Uint8Array,
      offset: number,
      length: number,
      position: number | null,
    ) => nodeFs.writeSync(fd, bytes, offset, Math.min(3, length), position)) as typeof nodeFs.writeSync;
    await write(place.failing({ writeSync }), request(place));
    expect(place.text("tests.csv")).toBe("h\na\nb\nc\n");
    expect(place.text("gauges.csv")).toBe("x\n140\ny\n");
  });

  test("a short write and then a full disk is cut back", async () => {
    const place = furnish();
    let calls = 0;
    const writeSync = ((
      fd: number,
      bytes: Uint8Array,
      offset: number,
      length: number,
      position: number | null,
    ) => {
      if (position === null || position < 3) return nodeFs.writeSync(fd, bytes, offset, length, position);
      calls += 1;
      if (calls > 1) throw systemError("ENOSPC");
      return nodeFs.writeSync(fd, bytes, offset, 2, position);
    }) as typeof nodeFs.writeSync;
    expect(await stopOf(() => write(place.failing({ writeSync }), request(place)))).toBe("3: file-system");
    expect(calls).toBe(2);
    expect(state(place)).toEqual(old);
  });

  test("if cutting back fails too, that is said, and the next command does it", async () => {
    const place = furnish();
    const writeSync = ((
      fd: number,
      bytes: Uint8Array,
      offset: number,
      length: number,
      position: number | null,
    ) => {
      if (position === 3 && offset === 0) return nodeFs.writeSync(fd, bytes, offset, 2, position);
      if (position === 5) throw systemError("EIO");
      return nodeFs.writeSync(fd, bytes, offset, length, position);
    }) as typeof nodeFs.writeSync;
    const ftruncateSync = (): void => {
      throw systemError("EIO");
    };
    const world = { ...place.failing({ writeSync, ftruncateSync }), pid: 2 ** 22 + 1 };
    const mine = { ...world, processState: () => ({ alive: true }) };
    expect(await stopOf(() => write(mine, request(place)))).toBe("3: file-system, not-put-back");
    expect(place.text("tests.csv")).toBe("h\na\nb");
    expect((await settle(place.world(), place.root, "read")).join()).toContain("is taken back");
    expect(state(place)).toEqual(old);
  });

  test("a lock lost while this process stood still stops it before it writes", async () => {
    const place = furnish();
    const change: Change = {
      kind: "append",
      path: "tests.csv",
      rows: () => {
        place.put("tests.csv.lock", "another");
        return ["b"];
      },
    };
    expect(await stopOf(() => write(place.world(), { ...request(place), changes: [change] }))).toBe(
      "3: lock-lost",
    );
    expect(place.text("tests.csv")).toBe("h\na");
  });

  test("where the note has lost its name for good it is saved, and the failing disk is told", async () => {
    const place = furnish();
    let isLast = false;
    const world = place.failing({
      renameSync: (from, to) => {
        if (isLast) throw systemError("EIO");
        isLast = String(from).endsWith(".pending");
        nodeFs.renameSync(from, to);
      },
      fsyncSync: (fd) => {
        if (isLast) throw systemError("EIO");
        nodeFs.fsyncSync(fd);
      },
    });
    const { asides } = await write(world, request(place));
    expect(asides.join()).toContain("saved, but the disk failed at the end (EIO)");
    expect([place.text("tests.csv"), place.text("gauges.csv")]).toEqual(["h\na\nb\nc\n", "x\n140\ny\n"]);
    expect(await settle(place.world(), place.root, "write")).toEqual([]);
    expect(place.text("tests.csv")).toBe("h\na\nb\nc\n");
  });

  test("the reason is given in plain words with what to do", async () => {
    const place = furnish();
    const world = place.failing(failingAt("writeSync", 3, "ENOSPC", "once").calls);
    await expect(write(world, request(place))).rejects.toMatchObject({
      exit: 3,
      faults: [
        {
          found: expect.stringContaining("the disk is full (ENOSPC)") as string,
          mend: expect.stringContaining("room") as string,
        },
      ],
    });
  });
});
