// The second import: nothing comes twice, whatever happened to the record meanwhile. Figures invented.

import { expect, test } from "vitest";
import type { Desk } from "./desk.ts";
import { deskWith, rowsOf } from "./import-desk.ts";

const sheet = "one-engine.csv";
const line = ["import", sheet, "--unit", "psi", "--what", "dry", "--write"];

/** A desk with the sheet of one engine imported. */
const imported = async (): Promise<Desk> => {
  const desk = deskWith(sheet);
  expect((await desk.type([...line, "--engine", "tractor"])).exit).toBe(0);
  return desk;
};

const again = (desk: Desk, ...more: readonly string[]) =>
  desk.type([...line, "--engine", "tractor", ...more]);

const nothingNew = { exit: 0, out: expect.stringContaining("is recorded already: 12 readings") as string };
const tests = "data/sealtrend/tractor/tests.csv";

test("the same sheet again adds nothing", async () => {
  const desk = await imported();
  const before = desk.text(tests);
  expect(await again(desk)).toMatchObject(nothingNew);
  expect(desk.text(tests)).toBe(before);
});

test("nor after a spreadsheet saved the engine's file in its own way", async () => {
  const desk = await imported();
  const saved = desk.text(tests).replaceAll(",", ";").replaceAll("\n", "\r\n");
  desk.put(tests, `\uFEFF${saved};;;\r\n`);
  expect(await again(desk)).toMatchObject(nothingNew);
});

test("nor after a reading was amended: what the sheet still says does not come back", async () => {
  const desk = await imported();
  const amend = ["amend", "tractor", "--test", "2021-05-08a"];
  const mended = await desk.type([...amend, "--cylinder", "3", "--to", "118", "--because", "paper says 118"]);
  expect(mended.exit).toBe(0);
  await desk.type([...amend, "--cylinder", "3", "--to", "117", "--because", "looked again"]);
  expect(await again(desk)).toMatchObject(nothingNew);
});

test("nor after its day was amended, or its gauge named", async () => {
  const desk = await imported();
  const amend = ["amend", "tractor", "--test", "2021-05-08a", "--because", "the card says so"];
  expect((await desk.type([...amend, "--date", "2021-05-09", "--gauge", "red"])).exit).toBe(0);
  expect(await again(desk)).toMatchObject(nothingNew);
});

test("a figure changed by hand is told, kept out, and comes in only when asked", async () => {
  const desk = await imported();
  desk.put(tests, desk.text(tests).replace("125,124,108,126", "125,124,118,126"));
  const told = await again(desk);
  expect(told.exit).toBe(1);
  expect(told.err.replace(/\s+/g, " ")).toContain(
    "dry of tractor on 2021-05-08 is recorded with other figures: 2021-05-08a in data/sealtrend/tractor/tests.csv",
  );
  expect(told.err.replace(/\s+/g, " ")).toContain(
    "if the sheet is right: sealtrend amend tractor --test 2021-05-08a --what dry --cylinder 3 --to 108 --because sheet;",
  );
  expect(rowsOf(desk, "tractor")).toHaveLength(3);
  expect((await again(desk, "--again")).exit).toBe(0);
  expect(rowsOf(desk, "tractor").map(({ test: id }) => id)).toEqual([
    "2019-05-04a",
    "2021-05-08a",
    "2023-05-06a",
    "2021-05-08b",
  ]);
});

test("a sheet that has grown brings only what is new, at the end of the file", async () => {
  const desk = await imported();
  const before = desk.text(tests);
  desk.put(sheet, `${desk.text(sheet)}2025-05-03,1801,123,124,101,125,\n`);
  const { exit, out } = await again(desk);
  expect([exit, out]).toEqual([0, expect.stringContaining("saved  4 readings of tractor, of 2025-05-03")]);
  expect(out).toContain("recorded already, and not added again: 12 readings");
  expect(desk.text(tests).startsWith(before)).toBe(true);
  await desk.type(["undo"]);
  expect(desk.text(tests)).toBe(before);
});

test("a further take of a day that is recorded goes to the test of that day", async () => {
  const desk = await imported();
  desk.put(sheet, `${desk.text(sheet)}2023-05-06,1660,124,123,105,125,\n`);
  expect((await again(desk)).exit).toBe(0);
  expect(rowsOf(desk, "tractor").at(-1)).toMatchObject({ test: "2023-05-06a", take: "2", c3: "105" });
  expect((await again(desk)).out).toContain("is recorded already: 16 readings");
});

test("an engine that is there takes readings in the dialect of its file", async () => {
  const desk = deskWith(sheet);
  await desk.type(["engine", "add", "tractor", "--cylinders", "4", "--ignition", "compression"]);
  const header = desk.text(tests).replaceAll(",", ";").replace("\n", "\r\n");
  desk.put(tests, header);
  expect((await again(desk)).exit).toBe(0);
  const [, first = ""] = desk.text(tests).split("\r\n");
  expect(first).toMatch(/^2019-05-04a;2019-05-04;1412;dry;1;;psi;126;125;111;127;/);
  expect(JSON.parse(desk.text("data/sealtrend/tractor/engine.json"))).toMatchObject({
    ignition: "compression",
  });
});

test("a cylinder that an engine does not have is kept out, the others come in", async () => {
  const desk = deskWith(sheet);
  await desk.type(["engine", "add", "tractor", "--cylinders", "3", "--ignition", "spark"]);
  const { exit, out, err } = await again(desk);
  expect([exit, out]).toEqual([1, expect.stringContaining("saved  9 readings of tractor")]);
  expect(err).toContain('one-engine.csv:1:18 "4" is no cylinder of tractor');
  expect(rowsOf(desk, "tractor").map(({ c1, c2, c3 }) => [c1, c2, c3].join(" "))).toEqual([
    "126 125 111",
    "125 124 108",
    "124 124 104",
  ]);
});

test("an engine whose file has a fault takes nothing until it is mended", async () => {
  const desk = await imported();
  desk.put(tests, desk.text(tests).replace("108", "1O8"));
  const { exit, err } = await again(desk);
  expect(exit).toBe(1);
  expect(err.replace(/\s+/g, " ")).toContain("nobody can tell what of tractor is recorded already");
  expect(err).toContain("sealtrend proofread tractor");
});

test("nothing real goes into the demo", async () => {
  const desk = deskWith(sheet);
  await desk.type(["demo"]);
  const { exit, err } = await again(desk, "--logbook", "sealtrend-demo");
  expect([exit, err]).toEqual([2, expect.stringContaining("is the demo")]);
});

test("a meter that runs backwards comes in as the sheet has it, and is told with its mend", async () => {
  const desk = deskWith(sheet);
  desk.put(sheet, desk.text(sheet).replace("1660", "166"));
  const dry = await desk.type([...line.slice(0, -1), "--engine", "tractor"]);
  expect([dry.exit, dry.out]).toEqual([1, expect.stringContaining("to be mended before show and history")]);
  const { exit, out, err } = await again(desk);
  expect([exit, out]).toEqual([1, expect.stringContaining("saved  12 readings of tractor")]);
  expect(err).toContain("one-engine.csv:4:");
  expect(err).toContain("the meter reads 166, less than 1534 on 2021-05-08");
  const amend = [
    "amend",
    "tractor",
    "--test",
    "2023-05-06a",
    "--meter",
    "1660",
    "--because",
    "a digit short",
  ];
  expect((await desk.type(amend)).exit).toBe(0);
  expect(await again(desk)).toMatchObject(nothingNew);
});

test("two imports of one sheet at once: one adds it, the other adds nothing twice", async () => {
  const desk = deskWith(sheet);
  await desk.type(["engine", "add", "tractor", "--cylinders", "4", "--ignition", "spark"]);
  const both = await Promise.all([again(desk), again(desk)]);
  expect(both.map(({ exit }) => exit)).toEqual([0, 0]);
  expect(rowsOf(desk, "tractor")).toHaveLength(3);
});
