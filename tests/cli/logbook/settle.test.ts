import { utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

import { deltaBetween } from "../../../packages/cli/src/logbook/delta.ts";
import { pendingPath, writePending } from "../../../packages/cli/src/logbook/pending.ts";
import { settle } from "../../../packages/cli/src/logbook/settle.ts";
import { write } from "../../../packages/cli/src/logbook/write.ts";
import { newPlace, stopOf, systemError, type Place } from "./place.ts";

/** The note of a process that does not run any more, over one file. */
const note = (
  place: Place,
  path: string,
  before: string | undefined,
  after: string | undefined,
  host?: string,
): string => {
  const bytes = (text: string | undefined): Uint8Array | undefined =>
    text === undefined ? undefined : Buffer.from(text);
  const delta = deltaBetween(join(place.root, path), bytes(before), bytes(after));
  const owner = { pid: 2 ** 22 + 1, host: host ?? place.world().host, nonce: "n" };
  const pending = { owner, command: "enter pump", deltas: delta === undefined ? [] : [delta], folders: [] };
  writePending(place.world(), place.root, pending);
  return pendingPath(place.root, owner);
};

describe("after a kill or a power cut", () => {
  test.each([
    ["an append that was not begun", "h\n", "h\nabc\n", "h\n", "h\n"],
    ["an append half done", "h\n", "h\nabc\n", "h\nab", "h\n"],
    ["an append whose bytes did not reach the disk", "h\n", "h\nabc\n", "h\na\0\0\0", "h\n"],
    ["an append that was done", "h\n", "h\nabc\n", "h\nabc\n", "h\n"],
    ["a replacement that was done", "h\na\n", "h\nb\n", "h\nb\n", "h\na\n"],
    ["a replacement that was not begun", "h\na\n", "h\nb\n", "h\na\n", "h\na\n"],
    ["rows cut off by an undo", "h\nabc\n", "h\n", "h\n", "h\nabc\n"],
  ])("%s is taken back, and that is said", async (_, before, after, found, expected) => {
    const place = newPlace();
    place.put("tests.csv", found);
    note(place, "tests.csv", before, after);
    const said = await settle(place.world(), place.root, "read");
    expect(said.join()).toContain("nothing of it was saved: enter pump");
    expect([place.text("tests.csv"), place.names()]).toEqual([expected, ["tests.csv"]]);
  });

  test.each([
    ["whole", "{}\n"],
    ["half", "{"],
  ])("a file made %s is removed", async (_, found) => {
    const place = newPlace();
    place.put("a.json", found);
    note(place, "a.json", undefined, "{}\n");
    await settle(place.world(), place.root, "write");
    expect(place.names()).toEqual([]);
  });

  test("a file removed by an undo is put back", async () => {
    const place = newPlace();
    note(place, "pump/engine.json", "{}\n", undefined);
    await settle(place.world(), place.root, "write");
    expect(place.text("pump/engine.json")).toBe("{}\n");
  });

  test("a file that somebody changed since is left as it is, and named", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\nby hand\n");
    note(place, "tests.csv", "h\n", "h\nabc\n");
    expect((await settle(place.world(), place.root, "read")).join()).toContain(
      "tests.csv was changed since by hand",
    );
    expect([place.text("tests.csv"), place.names()]).toEqual(["h\nby hand\n", ["tests.csv"]]);
  });

  test("the next command that writes takes it back first, then writes", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\nab");
    note(place, "tests.csv", "h\n", "h\nabc\n");
    const changes = [{ kind: "append", path: "tests.csv", rows: () => ["new"] }] as const;
    const written = await write(place.world(), { root: place.root, command: "enter", changes });
    expect(place.text("tests.csv")).toBe("h\nnew\n");
    expect(written.asides.join()).toContain("is taken back");
  });

  test("a command at work is left alone, on another computer for 10 minutes", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\nab");
    const path = note(place, "tests.csv", "h\n", "h\nabc\n", "barn-pc");
    expect(await settle(place.world(), place.root, "read")).toEqual([]);
    const then = Date.now() / 1000 - 660;
    utimesSync(path, then, then);
    expect(await settle(place.world(), place.root, "read")).toHaveLength(1);
    expect(place.text("tests.csv")).toBe("h\n");
  });

  test("a note in a stranger's logbook cannot reach a file outside", async () => {
    const place = newPlace();
    const outside = join(place.folder, "mine.txt");
    writeFileSync(outside, "mine, and more");
    note(place, "../mine.txt", "mine", "mine, and more");
    expect((await settle(place.world(), place.root, "read")).join()).toContain("is damaged");
    expect(place.world().fs.statSync(outside).size).toBe(14);
  });

  test("a note that cannot be read is said and stands in nobody's way", async () => {
    const place = newPlace();
    place.put(".sealtrend.1.x.pending", "{");
    place.put("tests.csv", "h\n");
    const changes = [{ kind: "append", path: "tests.csv", rows: () => ["a"] }] as const;
    const written = await write(place.world(), { root: place.root, command: "enter", changes });
    expect(written.asides.join()).toContain("is damaged");
    expect(place.text("tests.csv")).toBe("h\na\n");
  });

  test("a reader who may not write is told and reads on, a writer is stopped", async () => {
    const place = newPlace();
    place.put("tests.csv", "h\nab");
    note(place, "tests.csv", "h\n", "h\nabc\n");
    const ftruncateSync = (): void => {
      throw systemError("EROFS");
    };
    const world = place.failing({ ftruncateSync });
    expect((await settle(world, place.root, "read")).join()).toContain("not taken back yet");
    expect(await stopOf(() => settle(world, place.root, "write"))).toBe("3: file-system");
  });

  test("litter of ours is swept away after an hour, and nothing else", async () => {
    const place = newPlace();
    const litter = [".tests.csv.4711.tmp", "tests.csv.lock-0123456789ab.lock"];
    for (const name of [...litter, ".mine.tmp", ".tests.csv.swp"]) {
      const path = place.put(name, "x");
      utimesSync(path, Date.now() / 1000 - 3_700, Date.now() / 1000 - 3_700);
    }
    place.put(".gauges.csv.4711.tmp", "young");
    const changes = [{ kind: "create", path: "a.csv", text: "x" }] as const;
    await write(place.world(), { root: place.root, command: "enter", changes });
    expect(place.names()).toEqual([".gauges.csv.4711.tmp", ".mine.tmp", ".tests.csv.swp", "a.csv"]);
  });
});
