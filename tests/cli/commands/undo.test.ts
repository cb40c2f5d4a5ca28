// undo: after each command that writes, the logbook is byte for byte what it was.

import { expect, test } from "vitest";
import { misfits, schemaOf } from "./fits-schema.ts";
import { boat, mendPlace } from "./mend-place.ts";

test.each([
  ["service", ["service", "boat", "--what", "valve job"]],
  ["note", ["note", "boat", "--what", "smoke", "--value", "blue"]],
  [
    "amend",
    [
      "amend",
      "boat",
      "--test",
      "latest",
      "--take",
      "1",
      "--cylinder",
      "4",
      "--to",
      "130",
      "--because",
      "paper says 130",
    ],
  ],
  ["enter", ["enter", "boat", "--dry", "126 125 111 127", "--unit", "psi"]],
])("undo takes back the whole of %s", async (name, words) => {
  const place = boat();
  const before = place.picture();
  expect((await place.run(words)).exit).toBe(0);
  expect(place.picture()).not.toEqual(before);
  const { exit, out } = await place.run(["undo"]);
  expect(exit).toBe(0);
  expect(out).toMatch(/^taken back, of 2026-11-25 10:00:\s+sealtrend \w+ boat [^]*\([^)]*file[^)]*\)\n$/);
  expect(out).toContain(`sealtrend ${name} boat`);
  expect(place.picture()).toEqual(before);
});

test("undo goes back command by command, and says when there is nothing left", async () => {
  const place = boat();
  const before = place.picture();
  await place.run(["note", "--what", "smoke", "--value", "blue"]);
  await place.run(["note", "--what", "smoke", "--value", "black"]);
  expect((await place.run(["undo"])).out).toContain("--value black");
  expect((await place.run(["undo"])).out).toContain("--value blue");
  expect(place.picture()).toEqual(before);
  const none = await place.run(["undo"]);
  expect([none.exit, none.out, none.err]).toEqual([
    1,
    "",
    expect.stringContaining("no command is known that could be taken back"),
  ]);
});

test("undo takes nothing back from a file that was changed since", async () => {
  const place = boat();
  await place.run(["note", "--what", "smoke", "--value", "blue"]);
  place.put("boat/notes.csv", `${place.text("boat/notes.csv")}2026-05-03,,smoke,white,,,,\n`);
  const before = place.picture();
  const { exit, err } = await place.run(["undo"]);
  expect([exit, err]).toEqual([3, expect.stringContaining("has changed since")]);
  expect(place.picture()).toEqual(before);
});

test("undo works where the gauges have faults, and where there is no logbook it says so", async () => {
  const place = boat();
  await place.run(["note", "--what", "smoke", "--value", "blue"]);
  place.put("gauges.csv", "gauge,kind\nred,pump\n");
  expect((await place.run(["undo"])).exit).toBe(0);
  const nowhere = mendPlace({});
  expect((await nowhere.run(["undo", "--logbook", "elsewhere"])).exit).toBe(3);
  expect((await nowhere.run(["undo"])).exit).toBe(1);
});

test("The document of undo is as its schema says", async () => {
  const place = boat();
  await place.run(["note", "--what", "smoke", "--value", "blue"]);
  const { json } = await place.run(["undo", "--json"]);
  expect(misfits(json(), schemaOf("undo"))).toEqual([]);
  expect(json()).toEqual({
    schema: "sealtrend/undo@1",
    command: "sealtrend note boat --what smoke --value blue",
    when: "2026-11-25T10:00:00",
    files: [{ file: "logbook/boat/notes.csv", what: "restored" }],
  });
  const none = await place.run(["undo", "--json"]);
  expect(misfits(none.json(), schemaOf("problems"))).toEqual([]);
});
