// `enter`: the first write, and new engines. Readings invented; expected cells are what a person would write on the sheet.

import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";
import { dry } from "./entered.ts";

test("the first write makes the logbook of this user and says where", async () => {
  const desk = newDesk();
  const { exit, err } = await desk.type([
    "enter",
    "baler",
    "--new",
    "--cylinders",
    "2",
    "--ignition",
    "spark",
    "--dry",
    "118 121",
    "--unit",
    "psi",
  ]);
  expect(exit).toBe(0);
  expect(err).toContain(`your logbook is ${desk.folder}`);
  expect((await desk.type(["show", "baler"])).out).toContain("Both are even");
});

test("an engine can be begun with labels of one's own and without an ignition", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["enter", "twin", "--new", "--cylinders", "L R", "--dry", "118 121", "--unit", "psi"]);
  expect(JSON.parse(desk.text("logbook/twin/engine.json"))).toMatchObject({
    cylinders: ["L", "R"],
    ignition: "unknown",
  });
  expect(desk.text("logbook/twin/tests.csv").split("\n")[0]).toContain(",cL,cR,");
});

test("a new engine needs a name that is free and its cylinders", async () => {
  const desk = await deskWithPump();
  expect((await desk.type(["enter", "--new", "--cylinders", "2", ...dry])).err).toContain("has no name");
  expect((await desk.type(["enter", "baler", "--new", ...dry])).err).toContain("how many cylinders");
  expect((await desk.type(["enter", "pump", "--new", "--cylinders", "4", ...dry])).exit).toBe(2);
  expect((await desk.type(["enter", "a/b", "--new", "--cylinders", "4", ...dry])).exit).toBe(2);
});
