// Files that somebody else changes while a command is at work, or between a command and its undo: neither writes over them, neither
// guesses.

import {
  mkdirSync,
  readFileSync,
  readdirSync,
  renameSync,
  rmSync,
  truncateSync,
  unlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

import { undo } from "../../../packages/cli/src/logbook/undo.ts";
import { write, type Change } from "../../../packages/cli/src/logbook/write.ts";
import { newPlace, stopOf, type Place } from "./place.ts";

type Meddling = readonly [what: string, act: (place: Place) => void, left: string | undefined];

/** What others do to `pump/tests.csv`, which holds `h\n14O\n`, and what stands there then. */
const meddlings: readonly Meddling[] = [
  [
    "edited in its place",
    (place) => void place.put("pump/tests.csv", "h\n14O\nby hand\n"),
    "h\n14O\nby hand\n",
  ],
  ["edited to the same length", (place) => void place.put("pump/tests.csv", "h\n15O\n"), "h\n15O\n"],
  [
    "saved by a spreadsheet, which puts another file there",
    (place) => {
      renameSync(place.put("pump/saved.tmp", "h,\r\n14O,\r\n"), join(place.root, "pump", "tests.csv"));
    },
    "h,\r\n14O,\r\n",
  ],
  [
    "cut off",
    (place) => {
      truncateSync(join(place.root, "pump", "tests.csv"), 3);
    },
    "h\n1",
  ],
  [
    "deleted",
    (place) => {
      unlinkSync(join(place.root, "pump", "tests.csv"));
    },
    undefined,
  ],
  [
    "moved away with its folder",
    (place) => {
      renameSync(join(place.root, "pump"), join(place.root, "boat"));
    },
    undefined,
  ],
];

const begun = (): Place => {
  const place = newPlace();
  place.put("gauges.csv", "x\n14O\ny\n");
  place.put("pump/tests.csv", "h\n14O\n");
  return place;
};
const left = (place: Place): string | undefined =>
  place.names().includes("pump") && place.names("pump").includes("tests.csv")
    ? place.text("pump/tests.csv")
    : undefined;
const mended: Change = {
  kind: "replace",
  path: "gauges.csv",
  text: ({ text }) => text.replace("14O", "140"),
};

describe("while a command is at work", () => {
  test.each(
    meddlings.flatMap(([what, act, after]) =>
      (["append", "replace"] as const).map((kind) => ({ what, act, after, kind })),
    ),
  )("a file $what is not written over ($kind), and what was written before it is taken back", async ({ act, after, kind }) => {
    const place = begun();
    const last: Change =
      kind === "append"
        ? {
            kind,
            path: "pump/tests.csv",
            rows: () => {
              act(place);
              return ["more"];
            },
          }
        : {
            kind,
            path: "pump/tests.csv",
            text: ({ text }) => {
              act(place);
              return text.replace("14O", "140");
            },
          };
    const request = { root: place.root, command: "enter", changes: [mended, last], unsaved: "--dry 150" };
    expect(await stopOf(() => write(place.world(), request))).toMatch(/^3: (file-changed|lock-lost|file-system)$/);
    expect(left(place)).toBe(after);
    expect(place.text("gauges.csv")).toBe("x\n14O\ny\n");
    expect(place.names().filter((name) => name.endsWith(".pending"))).toEqual([]);
  }); // prettier-ignore
});

test("a file that another made meanwhile stays, though it is the same to the byte", async () => {
  const place = begun();
  const make: Change = { kind: "create", path: "boat/engine.json", text: "{}\n" };
  const meanwhile: Change = {
    kind: "append",
    path: "pump/tests.csv",
    rows: () => {
      place.put("boat/engine.json", "{}\n");
      return ["more"];
    },
  };
  const request = { root: place.root, command: "engine add", changes: [mended, make, meanwhile] };
  expect(await stopOf(() => write(place.world(), request))).toBe("3: file-exists");
  expect([place.text("boat/engine.json"), left(place)]).toEqual(["{}\n", "h\n14O\n"]);
  expect(await stopOf(() => write(place.world(), { ...request, changes: [make] }))).toBe("3: file-exists");
  expect(place.text("boat/engine.json")).toBe("{}\n");
});

describe("undo refuses, and changes nothing, where", () => {
  const entered = async (place: Place): Promise<void> => {
    const more: Change = { kind: "append", path: "pump/tests.csv", rows: () => ["more"] };
    await write(place.world(), { root: place.root, command: "enter pump", changes: [mended, more] });
  };

  test.each(meddlings)("a file was %s since", async (_, act) => {
    const place = begun();
    await entered(place);
    act(place);
    const [before, gauges] = [left(place), place.text("gauges.csv")];
    expect(await stopOf(() => undo(place.world(), place.root))).toBe("3: undo-changed");
    expect([left(place), place.text("gauges.csv")]).toEqual([before, gauges]);
  });

  test("a spreadsheet saved the file again with other line ends", async () => {
    const place = begun();
    await entered(place);
    const resaved = place.text("pump/tests.csv").replaceAll("\n", "\r\n");
    place.put("pump/tests.csv", resaved);
    expect(await stopOf(() => undo(place.world(), place.root))).toBe("3: undo-changed");
    expect(place.text("pump/tests.csv")).toBe(resaved);
  });

  /** The file that undo goes by. */
  const journal = (place: Place): string => {
    const folder = join(place.state, "sealtrend", "undo");
    const [logbook = ""] = readdirSync(folder);
    return join(folder, logbook, readdirSync(join(folder, logbook)).at(-1) ?? "");
  };

  test.each([
    ["was cut off", (text: string): string => text.slice(0, -9)],
    ["is empty", (): string => ""],
    ["is of another version", (text: string): string => text.replace("sealtrend/undo@1", "sealtrend/undo@2")],
    ["leads out of the logbook", (text: string): string => text.replace("pump/tests.csv", "../../tests.csv")],
  ])("what it goes by %s: the command before it is not taken for the last", async (_, changed) => {
    const place = begun();
    await entered(place);
    await entered(place);
    const path = journal(place);
    writeFileSync(path, changed(readFileSync(path, "utf8")));
    const before = place.text("pump/tests.csv");
    await expect(undo(place.world(), place.root)).rejects.toMatchObject({
      exit: 3,
      faults: [{ code: "undo-unreadable" }],
    });
    expect(place.text("pump/tests.csv")).toBe(before);
  });

  test("the logbook was moved: its commands are those of another place", async () => {
    const place = begun();
    await entered(place);
    const moved = join(place.folder, "moved");
    renameSync(place.root, moved);
    expect(await stopOf(() => undo(place.world(), moved))).toBe("1: undo-nothing");
    mkdirSync(place.root);
    expect(await stopOf(() => undo(place.world(), place.root))).toBe("3: undo-changed, undo-changed");
    rmSync(moved, { recursive: true });
  });

  test("there was an undo already and nothing before it", async () => {
    const place = begun();
    await entered(place);
    await undo(place.world(), place.root);
    expect(await stopOf(() => undo(place.world(), place.root))).toBe("1: undo-nothing");
    expect([left(place), place.text("gauges.csv")]).toEqual(["h\n14O\n", "x\n14O\ny\n"]);
  });
});
