// yard and its neighbours over folders that are not what they should be; what is said of nothing. Readings invented.

import * as nodeFs from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { yardBooks } from "../../../packages/cli/src/yard/yard-logbooks.ts";
import { newPlace, systemError } from "../logbook/place.ts";
import { type Desk, deskWithPump, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const dry = ["--dry", "150 148 152 149", "--unit", "psi"];

test("a loose file beside the logbooks of a folder is passed over", async () => {
  const desk = await deskWithPump();
  desk.put("notes.txt", "a loose file");
  const { exit, out } = await desk.type(["yard", "."]);
  expect([exit, out.includes("logbook/pump")]).toEqual([0, true]);
});

test("an engine's folder without its engine.json is counted, and said wherever engines are", async () => {
  const desk = await deskWithPump();
  await desk.type(["enter", "pump", ...dry]);
  desk.put("logbook/boat/tests.csv", desk.text("logbook/pump/tests.csv"));
  const missing = "there is no logbook/boat/engine.json";
  const yard = await desk.type(["yard"]);
  expect([yard.exit, flat(yard.out).includes("2 engines, 1 read, 1 with a fault")]).toEqual([1, true]);
  expect(flat(yard.err)).toContain(missing);
  const list = await desk.type(["engine", "list"]);
  expect([list.exit, flat(list.err).includes(missing)]).toEqual([1, true]);
  const show = await desk.type(["show", "boat"]);
  expect(flat(show.err)).toContain(missing);
  expect(show.err).not.toContain("engine add");
});

test("a CSV without a column engine is told how its rows get one, and the mend works", async () => {
  const desk = newDesk();
  const rows = ["2026-05-03a,2026-05-03,dry,psi,150,148", "2026-06-03a,2026-06-03,dry,psi,151,149"];
  desk.put("fleet.csv", ["test,date,what,unit,c1,c2", ...rows, ""].join("\n"));
  const { exit, err } = await desk.type(["yard", "fleet.csv"]);
  expect(exit).toBe(1);
  expect(flat(err)).toContain('and begin every row with the name of its engine and ","');
  const header = /make this the first line:\s+(\S+)/.exec(err)?.[1] ?? "";
  desk.put("fleet.csv", [header, ...rows.map((row) => `pump,${row}`), ""].join("\n"));
  expect((await desk.type(["yard", "fleet.csv"])).exit).toBe(0);
});

test("nothing suspect is said in a word; --why tells of the quiet ones too", async () => {
  const desk = await deskWithPump();
  await desk.type(["enter", "pump", ...dry]);
  const plain = (await desk.type(["yard"])).out;
  expect(plain).toContain("None lagging, none suspect.");
  const why = (await desk.type(["yard", "--why"])).out;
  expect(why).toContain("one test, nothing shown");
  expect(plain).not.toContain("nothing shown");
});

test("an empty logbook has a next step", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  expect(flat((await desk.type(["yard"])).out)).toContain("next sealtrend engine add pump");
});

/** Two logbooks in a folder, each with an engine; the second is then spoilt. */
const withBroken = async (): Promise<Desk> => {
  const desk = await deskWithPump();
  await desk.type(["enter", "pump", ...dry]);
  for (const book of ["farm", "yonder"])
    for (const name of ["logbook.json", "pump/engine.json", "pump/tests.csv"])
      desk.put(`all/${book}/${name}`, desk.text(`logbook/${name}`));
  desk.put("all/yonder/logbook.json", "{bad");
  return desk;
};

test("a logbook that cannot be read is counted, has a line of its own, and its mend leads to JSON", async () => {
  const desk = await withBroken();
  const { exit, out, err } = await desk.type(["yard", "all"]);
  expect(exit).toBe(1);
  expect(flat(out)).toContain("One logbook could not be read: its engines are not counted.");
  expect(err).toContain("all/yonder/logbook.json:1:2");
  const lines = (await desk.type(["yard", "all", "--json"])).out.trim().split("\n");
  const documents = lines.map((line) => JSON.parse(line) as Record<string, unknown>);
  expect(documents.flatMap((one) => misfits(one, schemaOf("yard")))).toEqual([]);
  expect(documents).toMatchObject([
    { logbook: "yonder", problems: [{ code: "json-bad", mend: 'write "bad": and its value and a }' }] },
    { engine: "farm/pump" },
  ]);
  desk.put("all/yonder/logbook.json", '{"bad": 1}');
  expect(flat((await desk.type(["yard", "all"])).out)).toContain("2 engines.");
});

test("of several shards one tells of a logbook that cannot be read", async () => {
  const desk = await withBroken();
  const shards = await Promise.all(
    [1, 2, 3].map((k) => desk.type(["yard", "all", "--json", "--shard", `${String(k)}/3`])),
  );
  const whole = (await desk.type(["yard", "all", "--json"])).out;
  const lines = (text: string): readonly string[] => text.trim().split("\n").sort();
  expect(lines(shards.map(({ out }) => out).join(""))).toEqual(lines(whole));
});

test("a folder that nobody may look into is told in a line and passed over", async () => {
  const place = newPlace();
  place.put("all/farm/pump/engine.json", '{"cylinders": ["1", "2"], "ignition": "spark"}');
  place.put("all/lost/x", "");
  const world = place.failing({
    readdirSync: ((path: string) => {
      if (path.endsWith("lost")) throw systemError("EACCES");
      return nodeFs.readdirSync(path);
    }) as typeof nodeFs.readdirSync,
  });
  const found = await yardBooks(world, join(place.root, "all"), { today: "2026-05-02", decide: "never" });
  expect([found.engines.map(({ name }) => name), found.unread]).toEqual([["farm/pump"], []]);
  expect(found.asides).toEqual([expect.stringMatching(/lost could not be read.*; it is passed over$/)]);
});

/** A logbook kept under numbers. */
const numbered = async (count: number): Promise<Desk> => {
  const desk = await deskWithPump();
  for (let i = 0; i < count; i += 1)
    desk.put(`logbook/e${String(100 + i)}/engine.json`, desk.text("logbook/pump/engine.json"));
  return desk;
};

test.each([["yard"], ["engine", "list"]])(
  "folders whose names no engine can have are told a few at a time, with the rule: %s %s",
  async (...words) => {
    const desk = await numbered(40);
    const { exit, err } = await desk.type(words);
    expect([exit, err.match(/the folder/g)?.length]).toEqual([0, 3]);
    expect(flat(err)).toContain(
      "37 more such folders are not read; the name of an engine's folder: 2 to 40 small letters, digits, - or _, the first two letters",
    );
  },
);

test.each([["yard"], ["yard", "."], ["engine", "list"]])(
  "where nothing can be read for the names of the folders that is no answer: %s %s",
  async (...words) => {
    const desk = await numbered(40);
    nodeFs.rmSync(join(desk.folder, "logbook/pump"), { recursive: true });
    const { exit, out, err } = await desk.type(words);
    expect([exit, out.includes("engine add")]).toEqual([1, false]);
    expect(flat(err)).toContain("2 to 40 small letters, digits, - or _, the first two letters");
    expect(err.split("\n").length).toBeLessThan(24);
  },
);
