import { chmodSync, existsSync, linkSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

import { undo } from "../../../packages/cli/src/logbook/undo.ts";
import { write, type Change } from "../../../packages/cli/src/logbook/write.ts";
import type { World } from "../../../packages/cli/src/logbook/world.ts";
import { newPlace, stopOf, systemError, type Place } from "./place.ts";

const append = (path: string, ...rows: string[]): Change => ({ kind: "append", path, rows: () => rows });
const create = (path: string, text: string): Change => ({ kind: "create", path, text });
const swap = (path: string, from: string, to: string): Change => ({
  kind: "replace",
  path,
  text: (current) => current.text.replace(from, to),
});
const send = async (place: Place, command: string, changes: readonly Change[], world = place.world()) =>
  await write(world, { root: place.root, command, changes });
const back = (place: Place, world: World = place.world()): ReturnType<typeof undo> => undo(world, place.root);

describe("undo", () => {
  test("a command that created an engine and wrote to three files is taken back whole, with its folder", async () => {
    const place = newPlace();
    place.put("gauges.csv", "h\r\nred,14O\r\n");
    place.put("notes.csv", "h\nno end");
    await send(place, "enter pump --new", [
      create("pump/engine.json", "{}\n"),
      create("pump/tests.csv", "h\na\n"),
      swap("gauges.csv", "14O", "140"),
      append("notes.csv", "b"),
    ]);
    const undone = await back(place);
    expect(undone).toMatchObject({ command: "enter pump --new", when: "2026-05-02T10:00:00", asides: [] });
    expect(undone.files.map(({ what }) => what)).toEqual(["removed", "removed", "restored", "restored"]);
    expect(place.names()).toEqual(["gauges.csv", "notes.csv"]);
    expect([place.text("gauges.csv"), place.text("notes.csv")]).toEqual(["h\r\nred,14O\r\n", "h\nno end"]);
  });

  test("commands are taken back one after the other, the last first, and then there is nothing more", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\n");
    await send(place, "one", [append("tests.csv", "a")]);
    await send(place, "two", [swap("tests.csv", "a", "b")]);
    await send(place, "three", [append("tests.csv", "c")]);
    expect((await back(place)).command).toBe("three");
    expect((await back(place)).command).toBe("two");
    expect(place.text("tests.csv")).toBe("h\na\n");
    expect((await back(place)).command).toBe("one");
    expect(place.text("tests.csv")).toBe("h\n");
    expect(await stopOf(() => back(place))).toBe("1: undo-nothing");
  });

  test("a file that has changed since is not touched, and each such file is named", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\n");
    await send(place, "one", [append("tests.csv", "a"), create("new.csv", "x")]);
    place.put("tests.csv", "h\na\nby hand\n");
    place.put("new.csv", "y");
    expect(await stopOf(() => back(place))).toBe("3: undo-changed, undo-changed");
    expect([place.text("tests.csv"), place.names()]).toEqual(["h\na\nby hand\n", ["new.csv", "tests.csv"]]);
  });

  test("a folder with something else in it stays", async () => {
    const place = newPlace();
    await send(place, "engine add", [create("pump/engine.json", "{}")]);
    place.put("pump/photo.txt", "mine");
    await back(place);
    expect(place.names("pump")).toEqual(["photo.txt"]);
  });

  test("rows appended to a file with two names are taken back under both", async () => {
    const place = newPlace();
    linkSync(place.put("tests.csv", "h\n"), join(place.folder, "other.csv"));
    await send(place, "one", [append("tests.csv", "a")]);
    await back(place);
    expect(readFileSync(join(place.folder, "other.csv"), "utf8")).toBe("h\n");
  });

  test("the last 20 commands are kept", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\n");
    for (let n = 1; n <= 22; n += 1)
      await send(place, `command ${String(n)}`, [append("tests.csv", String(n))]);
    const [logbook = ""] = readdirSync(join(place.state, "sealtrend", "undo"));
    expect(readdirSync(join(place.state, "sealtrend", "undo", logbook))).toHaveLength(20);
    for (let n = 22; n > 2; n -= 1) expect((await back(place)).command).toBe(`command ${String(n)}`);
    expect(place.text("tests.csv")).toBe("h\n1\n2\n");
    expect(await stopOf(() => back(place))).toBe("1: undo-nothing");
  });

  test("two logbooks do not mix", async () => {
    const place = newPlace();
    const other = join(place.folder, "other");
    await write(place.world(), { root: other, command: "there", changes: [create("logbook.json", "{}")] });
    await send(place, "here", [create("logbook.json", "{}")]);
    expect((await undo(place.world(), other)).command).toBe("there");
    expect(place.names()).toEqual(["logbook.json"]);
  });

  test("where the state folder cannot be written, the reading is saved and an aside says that undo is not there", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\n");
    writeFileSync(place.state, "a file where the folder should be");
    const written = await send(place, "one", [append("tests.csv", "a")]);
    expect(place.text("tests.csv")).toBe("h\na\n");
    expect(written).toMatchObject({ undo: "not-possible" });
    expect(written.asides.join()).toContain("undo is not available");
    expect(await stopOf(() => back(place))).toBe("1: undo-nothing");
  });

  test("a relative state folder is ignored for the one in the home folder", async () => {
    const place = newPlace();
    const world = place.world({ env: { XDG_STATE_HOME: "state" }, home: place.folder });
    await send(place, "one", [create("a.csv", "x")], world);
    expect(existsSync(join(place.folder, ".local", "state", "sealtrend", "undo"))).toBe(true);
    const windows = { platform: "win32", env: { LOCALAPPDATA: join(place.folder, "local") } };
    await send(place, "two", [create("b.csv", "x")], place.world(windows));
    expect(existsSync(join(place.folder, "local", "sealtrend", "undo"))).toBe(true);
  });

  test("a note that could not be written whole is left, so that undo takes nothing else for the last command", async () => {
    const place = newPlace();
    await send(place, "one", [create("a.csv", "x")]);
    const full = place.failing({
      openSync: (path, flags, mode) => {
        const fd = place.world().fs.openSync(path, flags, mode);
        if (String(path).includes("/undo/") && flags === "wx") torn.add(fd);
        return fd;
      },
      writeSync: ((fd: number, bytes: Uint8Array, ...rest: [number, number, number]) => {
        if (torn.has(fd)) throw systemError("ENOSPC");
        return place.world().fs.writeSync(fd, bytes, ...rest);
      }) as World["fs"]["writeSync"],
    });
    const torn = new Set<number>();
    const written = await send(place, "two", [create("b.csv", "x")], full);
    expect(written).toMatchObject({ undo: "not-possible" });
    expect(await stopOf(() => back(place))).toBe("3: undo-unreadable");
    expect(place.names()).toEqual(["a.csv", "b.csv"]);
  });

  test("a command that was taken back leaves no note, whole or torn", async () => {
    const place = newPlace();
    place.put("a.csv", "h\n");
    await send(place, "one", [append("a.csv", "x")]);
    const failing = place.failing({
      renameSync: (from, to) => {
        if (String(from).endsWith(".pending")) throw systemError("EIO");
        place.world().fs.renameSync(from, to);
      },
    });
    expect(await stopOf(() => send(place, "two", [append("a.csv", "y")], failing))).toBe("3: file-system");
    expect((await back(place)).command).toBe("one");
  });

  test("an undo that fails half way changes nothing, and works the next time", async () => {
    const place = newPlace();
    place.put("a.csv", "h\n");
    place.put("b.csv", "14O\n");
    await send(place, "one", [swap("b.csv", "O", "0"), append("a.csv", "x")]);
    const world = place.failing({
      renameSync: (from, to) => {
        if (String(to).endsWith("b.csv")) throw systemError("EIO");
        place.world().fs.renameSync(from, to);
      },
    });
    expect(await stopOf(() => back(place, world))).toBe("3: file-system");
    expect([place.text("a.csv"), place.text("b.csv")]).toEqual(["h\nx\n", "140\n"]);
    await back(place);
    expect([place.text("a.csv"), place.text("b.csv")]).toEqual(["h\n", "14O\n"]);
  });

  test("an undo killed after its last file counts as done", async () => {
    const place = newPlace();
    place.put("a.csv", "h\n");
    await send(place, "zero", [append("a.csv", "w")]);
    await send(place, "one", [append("a.csv", "x")]);
    place.put("a.csv", "h\nw\n"); // what the killed undo left, with its entry still kept
    expect((await back(place)).command).toBe("one");
    expect((await back(place)).command).toBe("zero");
    expect(place.text("a.csv")).toBe("h\n");
  });

  test("a file that has been marked read-only is not taken back", async () => {
    const place = newPlace();
    await send(place, "one", [create("a.csv", "x")]);
    chmodSync(join(place.root, "a.csv"), 0o444);
    expect(await stopOf(() => back(place))).toBe("3: file-read-only");
    expect(place.names()).toEqual(["a.csv"]);
  });
});
