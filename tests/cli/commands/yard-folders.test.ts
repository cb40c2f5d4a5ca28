// yard and its neighbours over folders that are not what they should be; what is said of nothing. Readings invented.

import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";

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
