import {
  chmodSync,
  existsSync,
  linkSync,
  mkdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

import { Stop } from "../../../packages/cli/src/command.ts";
import { write, type Change } from "../../../packages/cli/src/logbook/write.ts";
import type { World } from "../../../packages/cli/src/logbook/world.ts";
import { newPlace, stopOf, type Place } from "./place.ts";

const rows = (...lines: string[]): Change => ({ kind: "append", path: "tests.csv", rows: () => lines });
const send = (
  place: Place,
  changes: readonly Change[],
  world: World = place.world(),
): ReturnType<typeof write> => write(world, { root: place.root, command: "enter pump", changes });

describe("appending", () => {
  test("all rows of one command stand at the end, and nothing else is left in the folder", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\na\n");
    const written = await send(place, [rows("b", "c")]);
    expect(place.text("tests.csv")).toBe("h\na\nb\nc\n");
    expect(written.files).toEqual([
      { path: join(place.root, "tests.csv"), kind: "append", rows: ["b", "c"] },
    ]);
    expect(written.undo).toBe("possible");
    expect(place.names()).toEqual(["tests.csv"]);
  });

  test.each([
    ["a last line that is open is closed first", "h\na", "h\na\nb\n"],
    ["CRLF stays CRLF", "h\r\na\r\n", "h\r\na\r\nb\r\n"],
    ["an open last line of a CRLF file is closed with CRLF", "h\r\na", "h\r\na\r\nb\r\n"],
    ["CR alone stays CR", "h\ra\r", "h\ra\rb\r"],
    ["the mark stays", "\uFEFFh\n", "\uFEFFh\nb\n"],
  ])("%s", async (_, before, after) => {
    const place = newPlace();
    place.put("tests.csv", before);
    await send(place, [rows("b")]);
    expect(place.text("tests.csv")).toBe(after);
  });

  test("a Windows-1252 file gets Windows-1252, and is refused what it cannot hold", async () => {
    const place = newPlace();
    place.put("tests.csv", Uint8Array.from([0xe9, 0x0d, 0x0a]));
    await send(place, [rows("5 €")]);
    expect([...place.bytes("tests.csv")]).toEqual([0xe9, 0x0d, 0x0a, 0x35, 0x20, 0x80, 0x0d, 0x0a]);
    expect(await stopOf(() => send(place, [rows("☃")]))).toBe("1: character-not-in-encoding");
    expect(place.bytes("tests.csv").length).toBe(8);
  });

  test("UTF-16 stays UTF-16", async () => {
    const place = newPlace();
    place.put("tests.csv", Buffer.from("\uFEFFh\n", "utf16le"));
    await send(place, [rows("é")]);
    expect(place.bytes("tests.csv").toString("utf16le")).toBe("\uFEFFh\né\n");
  });

  test("a missing or empty file gets its header first, if one is given; else a missing one is a fault", async () => {
    const place = newPlace();
    place.put("empty.csv", "");
    const add = (path: string): Change => ({ kind: "append", path, header: "h", rows: () => ["a"] });
    await send(place, [add("empty.csv"), add("pump/notes.csv")]);
    expect([place.text("empty.csv"), place.text("pump/notes.csv")]).toEqual(["h\na\n", "h\na\n"]);
    expect(await stopOf(() => send(place, [rows("a")]))).toBe("3: file-missing");
  });

  test("no rows leave the file untouched", async () => {
    const place = newPlace();
    place.put("tests.csv", "h");
    expect((await send(place, [rows()])).files).toEqual([]);
    expect(place.text("tests.csv")).toBe("h");
  });

  test("rows are made from the text as it is under the lock, in the order of the changes", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\n");
    place.put("amendments.csv", "h\n");
    let found = 0;
    const count: Change = {
      kind: "append",
      path: "tests.csv",
      rows: (current) => {
        expect(place.names()).toContain("tests.csv.lock");
        found = (current?.text ?? "").split("\n").length;
        return [String(found)];
      },
    };
    const trace: Change = { kind: "append", path: "amendments.csv", rows: () => [`from ${String(found)}`] };
    await Promise.all([
      send(place, [count, trace]),
      send(place, [count, trace]),
      send(place, [count, trace]),
    ]);
    expect(place.text("tests.csv")).toBe("h\n2\n3\n4\n");
    expect(place.text("amendments.csv")).toBe("h\nfrom 2\nfrom 3\nfrom 4\n");
  });

  test("a change that refuses stops the command with nothing changed and no lock left", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\n");
    const refuse: Change = {
      kind: "append",
      path: "notes.csv",
      header: "h",
      rows: () => {
        throw new Stop(1, []);
      },
    };
    expect(await stopOf(() => send(place, [rows("a"), refuse]))).toBe("1: ");
    expect([place.text("tests.csv"), place.names()]).toEqual(["h\n", ["tests.csv"]]);
  });

  test("a reading that could not be saved is given back", async () => {
    const place = newPlace();
    const request = { root: place.root, command: "enter", changes: [rows("a")], unsaved: "dry 152 150" };
    await expect(write(place.world(), request)).rejects.toMatchObject({
      exit: 3,
      after: "not saved: dry 152 150\n",
    });
  });
});

describe("replacing", () => {
  const swap = (path = "tests.csv"): Change => ({
    kind: "replace",
    path,
    text: (current) => current.text.replace("14O", "140"),
  });

  test("only the bytes of the record differ, whatever else the file holds", async () => {
    const place = newPlace();
    const before = Buffer.from('\uFEFFh;x\r\na;14O\r\n"b\n";  1,50;\r\nlast');
    place.put("tests.csv", before);
    await send(place, [swap()]);
    expect(place.bytes("tests.csv").toString()).toBe(before.toString().replace("14O", "140"));
    expect(place.names()).toEqual(["tests.csv"]);
  });

  test("Windows-1252 bytes and a character cut off at the end stay as they were", async () => {
    const place = newPlace();
    const odd = Buffer.concat([Buffer.from("14O,"), Uint8Array.from([0x81, 0xe9, 0x9d, 0x0a])]);
    place.put("tests.csv", odd);
    await send(place, [swap()]);
    expect(place.bytes("tests.csv").subarray(3)).toEqual(odd.subarray(3));
    const cut = Buffer.concat([Buffer.from("é,14O\nü").subarray(0, 8)]);
    place.put("tests.csv", cut);
    await send(place, [swap()]);
    expect(place.bytes("tests.csv").subarray(6)).toEqual(cut.subarray(6));
  });

  test("a file marked as UTF-8 with other bytes in it is not rewritten", async () => {
    const place = newPlace();
    place.put("tests.csv", Buffer.concat([Buffer.from("\uFEFF14O"), Uint8Array.from([0xe9, 0x0a])]));
    expect(await stopOf(() => send(place, [swap()]))).toBe("1: file-mixed-encoding");
  });

  test("the rights of the file are kept", async () => {
    const place = newPlace();
    chmodSync(place.put("tests.csv", "14O"), 0o640);
    await send(place, [swap()]);
    expect(statSync(join(place.root, "tests.csv")).mode & 0o777).toBe(0o640);
  });

  test("a hand edit between reading and renaming stops the command, and the edit stands", async () => {
    const place = newPlace();
    const path = place.put("tests.csv", "14O\n");
    const change: Change = {
      kind: "replace",
      path,
      text: (current) => {
        writeFileSync(path, "edited by hand\n");
        return current.text.replace("O", "0");
      },
    };
    expect(await stopOf(() => send(place, [change]))).toBe("3: file-changed");
    expect([place.text("tests.csv"), place.names()]).toEqual(["edited by hand\n", ["tests.csv"]]);
  });

  test("a hand edit meanwhile stops an append too", async () => {
    const place = newPlace();
    const path = place.put("tests.csv", "h\n");
    const change: Change = {
      kind: "append",
      path,
      rows: () => {
        writeFileSync(path, "x\n");
        return ["a"];
      },
    };
    expect(await stopOf(() => send(place, [change]))).toBe("3: file-changed");
    expect(place.text("tests.csv")).toBe("x\n");
  });

  test("a file with two names is appended to under both, and not parted by a replacement", async () => {
    const place = newPlace();
    linkSync(place.put("tests.csv", "14O\n"), join(place.folder, "other.csv"));
    await send(place, [rows("b")]);
    expect(readFileSync(join(place.folder, "other.csv"), "utf8")).toBe("14O\nb\n");
    expect(await stopOf(() => send(place, [swap()]))).toBe("3: file-hard-linked");
    expect(place.text("tests.csv")).toBe("14O\nb\n");
  });

  test("a file marked read-only is left alone", async () => {
    const place = newPlace();
    chmodSync(place.put("tests.csv", "14O\n"), 0o444);
    expect(await stopOf(() => send(place, [swap()]))).toBe("3: file-read-only");
    expect(await stopOf(() => send(place, [rows("b")]))).toBe("3: file-read-only");
    expect([place.text("tests.csv"), place.names()]).toEqual(["14O\n", ["tests.csv"]]);
  });
});

describe("creating", () => {
  const create = (path: string, text = "{}\n"): Change => ({ kind: "create", path, text });

  test("an engine is created with its folder, and never over an existing file", async () => {
    const place = newPlace();
    await send(place, [create("pump/engine.json"), create("pump/tests.csv", "h\na\n")]);
    expect(place.names("pump")).toEqual(["engine.json", "tests.csv"]);
    expect(await stopOf(() => send(place, [create("pump/engine.json", "other")]))).toBe("3: file-exists");
    expect([place.text("pump/engine.json"), place.names()]).toEqual(["{}\n", ["pump"]]);
  });

  test("a logbook that does not exist yet is made", async () => {
    const place = newPlace();
    const root = join(place.folder, "new", "logbook");
    const written = await write(place.world(), {
      root,
      command: "engine add",
      changes: [create("logbook.json")],
    });
    expect(written.root).toBe(root);
    expect(readFileSync(join(root, "logbook.json"), "utf8")).toBe("{}\n");
  });

  test("a logbook that was to be made is not left behind empty", async () => {
    const place = newPlace();
    const root = join(place.folder, "new");
    expect(await stopOf(() => write(place.world(), { root, command: "enter", changes: [rows("a")] }))).toBe(
      "3: file-missing",
    );
    expect(existsSync(root)).toBe(false);
  });

  test("of several that create the same engine at once exactly one succeeds", async () => {
    const place = newPlace();
    const tries = [1, 2, 3, 4].map((n) =>
      stopOf(() => send(place, [create("pump/engine.json", String(n)), create("pump/tests.csv", String(n))])),
    );
    expect((await Promise.all(tries)).sort()).toEqual([
      "3: file-exists",
      "3: file-exists",
      "3: file-exists",
      "nothing was thrown",
    ]);
    expect(place.text("pump/engine.json")).toBe(place.text("pump/tests.csv"));
    expect([place.names(), place.names("pump")]).toEqual([["pump"], ["engine.json", "tests.csv"]]);
  });

  test("if one file of a command cannot be written, the others are taken back with their folder", async () => {
    const place = newPlace();
    place.put("logbook.json", "{}\n");
    const changes = [create("pump/engine.json"), rows("a"), create("logbook.json", "other")];
    place.put("tests.csv", "h\n");
    expect(await stopOf(() => send(place, changes))).toBe("3: file-exists");
    expect(place.names()).toEqual(["logbook.json", "tests.csv"]);
    expect(place.text("tests.csv")).toBe("h\n");
  });
});

describe("links", () => {
  test("a link inside the logbook is written through", async () => {
    const place = newPlace();
    symlinkSync(place.put("real.csv", "14O\n"), join(place.root, "tests.csv"));
    await send(place, [rows("b")]);
    await send(place, [{ kind: "replace", path: "tests.csv", text: () => "140\n" }]);
    expect(place.text("real.csv")).toBe("140\n");
    expect(place.names()).toEqual(["real.csv", "tests.csv"]);
  });

  test("a link out of the logbook is not written through, be it a file, a folder or to nothing", async () => {
    const place = newPlace();
    const outside = join(place.folder, "outside");
    mkdirSync(outside);
    writeFileSync(join(outside, "tests.csv"), "h\n");
    symlinkSync(join(outside, "tests.csv"), join(place.root, "tests.csv"));
    symlinkSync(outside, join(place.root, "pump"));
    symlinkSync(join(outside, "none.csv"), join(place.root, "none.csv"));
    const to = (path: string): Change => ({ kind: "append", path, header: "h", rows: () => ["a"] });
    for (const path of [
      "tests.csv",
      "pump/tests.csv",
      "pump/new.csv",
      "../outside/tests.csv",
      outside,
      ".",
      "a/../../x",
    ])
      expect(await stopOf(() => send(place, [to(path)])), path).toBe("3: path-outside");
    expect(await stopOf(() => send(place, [to("none.csv")]))).toBe("3: link-to-nothing");
    expect(readFileSync(join(outside, "tests.csv"), "utf8")).toBe("h\n");
  });

  test("the logbook itself may be a link", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\n");
    symlinkSync(place.root, join(place.folder, "link"));
    const request = { root: join(place.folder, "link"), command: "enter", changes: [rows("a")] };
    expect((await write(place.world(), request)).root).toBe(place.root);
    expect(place.text("tests.csv")).toBe("h\na\n");
  });
});
