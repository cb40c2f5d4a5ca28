// What is dated after today, folders whose names are refused, fuels for ignitions. Today is 2026-11-25 in these tests.

import { expect, test } from "vitest";
import { deskWithPump } from "./desk.ts";
import { dry, enter, file } from "./entered.ts";

const ahead = "test,date,what,unit,c1,c2,c3,c4\n2027-01-05a,2027-01-05,dry,psi,150,148,149,150\n";

test("a test dated after today is a fault to proofread; show says so and goes on", async () => {
  const desk = await deskWithPump();
  desk.put(file, ahead);
  const proof = await desk.type(["proofread"]);
  expect(proof.exit).toBe(1);
  expect(proof.out).toContain(
    "logbook/pump/tests.csv:2:13 the date 2027-01-05 lies ahead; today is 2026-11-25\n",
  );
  expect(proof.out).toContain("write the day that is meant, as year-month-day");
  for (const command of ["show", "history"]) {
    const { exit, err } = await desk.type([command, "pump"]);
    expect([exit, err]).toEqual([
      0,
      "dated after today (2026-11-25): test 2027-01-05a; see each:\nsealtrend proofread pump\n",
    ]);
  }
});

test("a table read as Windows-1252 is said aloud by show and by enter, once", async () => {
  const desk = await deskWithPump();
  const text = ahead
    .replaceAll("2027", "2026")
    .replace("c4\n", "c4,note\n")
    .replace("150\n", "150,caf\u00e9\n");
  desk.put(file, Buffer.from(text, "latin1"));
  const said = /^logbook\/pump\/tests\.csv is not UTF-8 and was read as Windows-1252;[^;]*;[^;]*$/;
  expect((await desk.type(["show", "pump"])).err).toMatch(said);
  expect((await enter(desk, ...dry)).err).toMatch(said);
});

test("a folder whose name is refused is named, with the name it could have", async () => {
  const desk = await deskWithPump();
  desk.put("logbook/v4/engine.json", desk.text("logbook/pump/engine.json"));
  const { exit, err } = await desk.type(["show", "v4"]);
  expect([exit, err]).toEqual([
    2,
    "the folder logbook/v4 is not read: its name cannot be that of an engine\n" +
      "    expected 2 to 40 small letters, digits, - or _, the first two letters\n" +
      "    rename it, to engine-v4 perhaps: mv logbook/v4 logbook/engine-v4\n",
  ]);
  expect((await desk.type(["engine", "list"])).err).toContain("logbook/v4 is not read");
});

test("a name that cannot be one is refused before anything is asked", async () => {
  const desk = await deskWithPump();
  const { exit, err, asked } = await desk.type(["engine", "add", "v8"], { answers: ["4", "spark"] });
  expect([exit, asked]).toEqual([2, []]);
  expect(err).toContain("write engine-v8, or a name such as pump or boat-port");
});

test.each([
  ["diesel", "compression"],
  ["petrol", "spark"],
  ["gas", "spark"],
])("--ignition %s is taken as %s", async (typed, stored) => {
  const desk = await deskWithPump();
  await desk.type(["engine", "add", "baler", "--cylinders", "2", "--ignition", typed]);
  await desk.type([
    "enter",
    "mower",
    "--new",
    "--cylinders",
    "1",
    "--ignition",
    typed,
    "--dry",
    "90",
    "--unit",
    "psi",
  ]);
  await desk.type(["engine", "set", "pump", "ignition", typed]);
  for (const name of ["baler", "mower", "pump"])
    expect(JSON.parse(desk.text(`logbook/${name}/engine.json`))).toMatchObject({ ignition: stored });
});

test("a test on the day of the work is said to count as after it", async () => {
  const desk = await deskWithPump();
  await enter(desk, ...dry);
  const one = await desk.type(["service", "pump", "--what", "valve job"]);
  expect(one.out.replace(/\s+/g, " ")).toContain(
    "The test of that day, 2026-11-25a, counts as after the work",
  );
  await enter(desk, ...dry);
  const two = await desk.type(["service", "pump", "--what", "head off"]);
  expect(two.out.replace(/\s+/g, " ")).toContain(
    "Of the tests of that day 2026-11-25a counts as before the work, 2026-11-25b as after it.",
  );
});

test("undo, engine set and long answers keep to 80 columns", async () => {
  const desk = await deskWithPump();
  const long = "workshop manual of the maker, second edition, page 30 and the table after it";
  const set = await desk.type(["engine", "set", "pump", "limits.compression.source", long]);
  const undone = await desk.type(["undo"]);
  for (const line of `${set.out}${undone.out}`.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
});
