import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

import { siblingsThatLookLikeCopies } from "../../../packages/cli/src/logbook/copies.ts";
import {
  bareFolders,
  engineFolder,
  engineIdFault,
  engineIds,
  newEngineFault,
} from "../../../packages/cli/src/logbook/engine-id.ts";
import { findLogbook, userFolder } from "../../../packages/cli/src/logbook/find-logbook.ts";
import type { World } from "../../../packages/cli/src/logbook/world.ts";
import { newPlace, stopOf, systemError } from "./place.ts";

describe("names of engines", () => {
  test.each(["pump", "ab", "boat-port", "tb4_b", `ab${"c".repeat(38)}`])("%s is good", (id) => {
    expect(engineIdFault(id)).toBeUndefined();
  });

  test.each([
    "",
    "a",
    "1a",
    "a1",
    "..",
    ".",
    "a/b",
    "ab/c",
    "ab\\c",
    "C:x",
    "Pump",
    "ab ",
    "ab.",
    "ab\0",
    "ab\u202Ec",
    "pümp",
    "-ab",
    "__proto__",
    "ab\n",
    `ab${"c".repeat(39)}`,
    "ＡＢ",
    "ab:c",
    "ab*",
  ])("%j is refused", (id) => {
    expect(engineIdFault(id)?.code).toBe("engine-id");
  });

  test.each(["con", "nul", "prn", "aux", "com1", "lpt9"])("%s names a device in Windows", (id) => {
    expect(engineIdFault(id)?.code).toBe("engine-id-device");
  });

  test("a name is taken by a folder that differs in capitals only", () => {
    const place = newPlace();
    place.put("Pump/engine.json", "{}");
    place.put("boat/engine.json", "{}");
    mkdirSync(join(place.root, "empty"));
    const code = (id: string): string | undefined => newEngineFault(place.world(), place.root, id)?.code;
    expect(["pump", "boat", "empty", "new", "con"].map(code)).toEqual([
      "engine-id-taken",
      "engine-id-taken",
      undefined,
      undefined,
      "engine-id-device",
    ]);
  });

  test("a plain file, and a link to itself, are no engines, and their names are taken", () => {
    const place = newPlace();
    place.put("notes", "a loose file");
    symlinkSync("spares", join(place.root, "spares"));
    place.put("pump/engine.json", "{}");
    const world = place.world();
    expect([engineIds(world, place.root), bareFolders(world, place.root)]).toEqual([["pump"], []]);
    expect(["notes", "spares"].map((id) => newEngineFault(world, place.root, id)?.code)).toEqual([
      "engine-id-file",
      "engine-id-file",
    ]);
  });

  test("engines are the folders with an engine.json, in order", () => {
    const place = newPlace();
    for (const name of ["pump/engine.json", "boat/engine.json", "photos/a.txt", ".hidden/engine.json"])
      place.put(name, "{}");
    expect(engineIds(place.world(), place.root)).toEqual(["boat", "pump"]);
    expect(engineIds(place.world(), join(place.folder, "none"))).toEqual([]);
  });

  test("the folder of an engine lies in the logbook", async () => {
    const place = newPlace();
    symlinkSync(place.folder, join(place.root, "out"));
    expect(engineFolder(place.world(), place.root, "pump")).toBe(join(place.root, "pump"));
    expect(await stopOf(() => engineFolder(place.world(), place.root, "out"))).toBe("3: path-outside");
    expect(() => engineFolder(place.world(), place.root, "..")).toThrow(RangeError);
  });
});

describe("finding the logbook", () => {
  test("the option comes first, then the environment, ./logbook, the user's folder, and the demo to read", async () => {
    const place = newPlace();
    const cwd = join(place.folder, "cwd");
    const user = join(place.folder, "data", "sealtrend");
    mkdirSync(cwd);
    const env = { XDG_DATA_HOME: join(place.folder, "data") };
    const world = place.world({ cwd, env });
    expect(await stopOf(() => findLogbook(world, "read"))).toBe("3: logbook-none");
    expect(findLogbook(world, "write")).toEqual({ root: user, by: "user", state: "new" });
    mkdirSync(join(cwd, "sealtrend-demo"));
    expect(findLogbook(world, "read")).toMatchObject({
      by: "demo",
      aside: expect.stringContaining("demo") as string,
    });
    expect(findLogbook(world, "write").root).toBe(user);
    mkdirSync(user, { recursive: true });
    expect(findLogbook(world, "read")).toEqual({ root: user, by: "user", state: "there" });
    mkdirSync(join(cwd, "logbook"));
    expect(findLogbook(world, "read")).toEqual({ root: join(cwd, "logbook"), by: "here", state: "there" });
    const named = place.world({ cwd, env: { ...env, SEALTREND_LOGBOOK: "sealtrend-demo" } });
    expect(findLogbook(named, "read").by).toBe("environment");
    expect(findLogbook(named, "read", "logbook").by).toBe("option");
  });

  test("a named logbook that does not exist is a fault to read and new to write; a file is a fault", async () => {
    const place = newPlace();
    expect(await stopOf(() => findLogbook(place.world(), "read", "none"))).toBe("3: logbook-missing");
    expect(findLogbook(place.world(), "write", "none").state).toBe("new");
    writeFileSync(join(place.folder, "file"), "");
    expect(await stopOf(() => findLogbook(place.world(), "write", "file"))).toBe("3: logbook-missing");
  });

  test("a logbook that is there and cannot be looked at is a fault, not a reason to take another", async () => {
    const place = newPlace();
    const statSync = (() => {
      throw systemError("EACCES");
    }) as unknown as World["fs"]["statSync"];
    for (const purpose of ["read", "write"] as const)
      expect(await stopOf(() => findLogbook(place.failing({ statSync }), purpose))).toBe("3: file-system");
  });

  test("the user's folder is where each system keeps such things, and a relative setting is ignored", () => {
    const place = newPlace();
    const at = (platform: string, env: Record<string, string>): string =>
      userFolder(place.world({ platform, env, home: "/home/me" }));
    expect(at("linux", {})).toBe("/home/me/.local/share/sealtrend");
    expect(at("linux", { XDG_DATA_HOME: "data" })).toBe("/home/me/.local/share/sealtrend");
    expect(at("linux", { XDG_DATA_HOME: "/data" })).toBe("/data/sealtrend");
    expect(at("darwin", {})).toBe("/home/me/Library/Application Support/sealtrend");
    expect(at("win32", { APPDATA: "/appdata" })).toBe("/appdata/sealtrend");
  });
});

describe("copies beside our files", () => {
  test("what a sync folder, a file manager or an editor leaves is recognised; all else is not", () => {
    const place = newPlace();
    const copies = [
      "#tests.csv#",
      ".tests.csv.swp",
      "Copy of tests.csv",
      "Tests.csv",
      "engine (2).json",
      "gauges - Copy.csv",
      "notes 2.csv",
      "tests (1).csv",
      "tests (conflicted copy 2026-05-02).csv",
      "tests.csv.bak",
      "tests.csv~",
      "tests.sync-conflict-20260502-101500.csv",
      "tests_old.csv",
    ];
    const others = [
      "tests.csv",
      "engine.json",
      "tests.csv.lock",
      ".tests.csv.4711.tmp",
      ".~lock.tests.csv#",
      "photo.jpg",
      "contests.csv",
      "testsuite.csv",
      "tests.ods",
    ];
    for (const name of [...copies, ...others]) place.put(name, "x");
    const found = siblingsThatLookLikeCopies(place.world(), place.root);
    expect(found.map(({ path }) => path.slice(place.root.length + 1))).toEqual(copies);
    expect(found[0]).toEqual({ path: join(place.root, "#tests.csv#"), of: "tests.csv" });
  });
});
