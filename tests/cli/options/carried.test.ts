// What a printed command repeats: `--logbook` as it was typed, so that the command works when it is typed. Readings invented.

import { basename } from "node:path";
import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "../commands/desk.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const dry = ["--dry", "150 148 152 149", "--unit", "psi"];

/** A pump in a logbook of another name. */
const deskWith = async (folder: string) => {
  const desk = newDesk();
  desk.put(`${folder}/.keep`, "");
  await desk.type(["engine", "add", "pump", "--cylinders", "4", "--ignition", "spark", "--logbook", folder]);
  return desk;
};

test("a mend repeats the logbook, and works as it is printed", async () => {
  const desk = await deskWith("d1");
  const { err } = await desk.type(["enter", "pump", "--logbook", "d1"]);
  const line = /sealtrend (enter .*)$/m.exec(err)?.[1] ?? "";
  expect(line).toBe('enter --logbook d1 pump --dry "150 150 150 150" --unit psi');
  const words = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, inQuotes, bare]) => inQuotes ?? bare ?? "");
  expect((await desk.type(words)).exit).toBe(0);
});

test("the undo hint and the next step repeat it, on lines that fit", async () => {
  const desk = await deskWith("d1");
  const { out } = await desk.type(["enter", "pump", ...dry, "--logbook", "d1"]);
  expect(flat(out)).toContain("(sealtrend undo --logbook d1 takes it back)");
  const commands = [...flat(out).matchAll(/sealtrend \w+ (\S+)/g)].map(([, next]) => next);
  expect(new Set(commands)).toEqual(new Set(["--logbook"]));
  expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  expect((await desk.type(["undo", "--logbook", "d1"])).exit).toBe(0);
});

test("a name with a blank is quoted, in a document too", async () => {
  const desk = await deskWith("old iron");
  const line = ["enter", "pump", "--logbook=old iron"];
  expect((await desk.type(line)).err).toContain('sealtrend enter --logbook "old iron" pump');
  const { out } = await desk.type([...line, "--json"]);
  expect(JSON.parse(out)).toMatchObject({
    problems: [{ mend: expect.stringContaining('sealtrend enter --logbook "old iron" pump') as string }],
  });
});

test("who leaves a talk is told the whole line that goes on", async () => {
  const desk = await deskWith("d1");
  const { err } = await desk.type(["enter", "pump", "--logbook", "d1"], { answers: ["", "psi", "150", "q"] });
  expect(err).toContain("sealtrend enter --logbook d1 pump\n");
});

test("what repeats it already is left as it is, and without it nothing is added", async () => {
  const desk = await deskWith("d1");
  const back = await desk.type(["show", "pump", "extra", "--logbook", "d1"]);
  expect(back.err).not.toMatch(/--logbook.*--logbook/);
  const plain = await deskWithPump();
  expect((await plain.type(["enter", "pump", ...dry])).out).not.toContain("--logbook");
});

test("the folder is repeated by its shortest way from here", async () => {
  const desk = await deskWith("d1");
  for (const folder of ["./d1/", "../" + basename(desk.folder) + "/d1", "d1"]) {
    const { out } = await desk.type(["enter", "pump", ...dry, `--logbook=${folder}`]);
    expect(flat(out)).toContain("(sealtrend undo --logbook d1 takes it back)");
  }
});

test("with a long name no line is wider but a command, which is whole, and a screen stays one screen", async () => {
  const folder = "of a farm with a yard (old)/and a shed with engines that are looked at now and then";
  const desk = await deskWith(folder);
  for (const year of [2021, 2022, 2023, 2024, 2025]) {
    const line = [
      "enter",
      "pump",
      "--dry",
      `150 148 ${String(152 - 9 * (year - 2021))} 149`,
      "--unit",
      "psi",
    ];
    await desk.type([...line, "--date", `${String(year)}-05-03`, "--logbook", folder]);
  }
  for (const command of ["show", "history", "decide"]) {
    const { out } = await desk.type([command, "pump", "--logbook", folder]);
    const lines = out.trimEnd().split("\n");
    expect(lines.length).toBeLessThanOrEqual(24);
    const wide = lines.filter((line) => line.length > 80);
    expect(wide.length).toBeGreaterThan(0);
    for (const line of wide)
      expect(line).toMatch(/^ *\(?sealtrend [a-z ]+ --logbook "[^"]+"( (?!and|then)[^ ;.]+)*[).,;]*$/);
  }
});
