// What lies in a logbook, or beside logbooks, under a name that an engine could have: a plain file, a link that leads nowhere.
// Readings invented.

import { symlinkSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { type Desk, deskWithPump } from "./desk.ts";

const dry = ["--dry", "150 148 152 149", "--unit", "psi"];

/** A logbook with one engine and its test, and loose things in it and beside it. */
const strayed = async (): Promise<Desk> => {
  const desk = await deskWithPump();
  await desk.type(["enter", "pump", ...dry]);
  for (const folder of ["logbook/", ""]) {
    desk.put(`${folder}notes`, "a loose file");
    symlinkSync("spares", join(desk.folder, folder, "spares"));
    symlinkSync("nowhere", join(desk.folder, folder, "gone"));
  }
  return desk;
};

test.each([
  ["show", []],
  ["show", ["pump"]],
  ["history", ["pump"]],
  ["decide", ["pump"]],
  ["proofread", []],
  ["engine", ["list"]],
  ["enter", ["pump", ...dry]],
  ["yard", []],
  ["yard", ["logbook"]],
  ["yard", ["."]],
])("%s %j passes over loose files", async (command, words) => {
  const desk = await strayed();
  const { exit, out, err } = await desk.type([command, ...words]);
  expect([exit, /notes|spares|gone/.test(out + err)]).toEqual([0, false]);
});

test("an engine may not take the name of a loose file, and is told why", async () => {
  const desk = await strayed();
  const { exit, err } = await desk.type("engine add notes --cylinders 4 --ignition spark".split(" "));
  expect([exit, err.split("\n")[0]]).toEqual([
    2,
    "logbook/notes is no folder, and stands where that of the engine would",
  ]);
  expect(desk.text("logbook/notes")).toBe("a loose file");
});
