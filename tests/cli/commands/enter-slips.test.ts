// `enter`: a reading a decimal place away from its fellows. Readings invented; the reading meant is the one typed with
// its decimal point shifted by one place, worked out by hand.

import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";
import { answers, enter, rowsOf } from "./entered.ts";

const slipped = ["--dry", "131 1310 133 132", "--unit", "psi"];

test("where nobody can be asked it is saved as typed, and the command that mends it is named", async () => {
  const desk = await deskWithPump();
  const { exit, err } = await enter(desk, ...slipped);
  expect(exit).toBe(0);
  expect(rowsOf(desk)).toMatchObject([{ c2: "1310" }]);
  expect(err).toBe(
    "cylinder 2, dry 1310: about ten times the others; did you mean 131? If so:\n" +
      "sealtrend amend pump --test 2026-11-25a --what dry --cylinder 2 --to 131 --because mistyped\n",
  );
  const mend = err.split("\n")[1]?.replace("sealtrend ", "").split(" ") ?? [];
  expect((await desk.type(mend)).exit).toBe(0);
  expect(rowsOf(desk)).toMatchObject([{ c2: "131" }]);
});

test.each([
  [["1310"], "1310"],
  [["131"], "131"],
  [["y"], "131"],
  [["134"], "134"],
  // Enter alone is no answer: it is asked again
  [["", "131"], "131"],
])("on a terminal it is asked before it is saved: the answers %j leave %s", async (given, stored) => {
  const desk = await deskWithPump();
  const { exit, err, asked } = await desk.type(["enter", "pump", ...slipped], answers(...given));
  expect([exit, err]).toEqual([0, ""]);
  expect(asked[0]?.replace(/\s+/g, " ")).toBe(
    "cylinder 2, 1310: about ten times the others; did you mean 131? Type 131, or 1310 again: ",
  );
  expect(asked).toHaveLength(given.length);
  expect(rowsOf(desk)).toMatchObject([{ c2: stored }]);
});

test("q leaves it unsaved", async () => {
  const desk = await deskWithPump();
  const { exit } = await desk.type(["enter", "pump", ...slipped], answers("q"));
  expect([exit, rowsOf(desk)]).toEqual([2, []]);
});

test("a digit that is missing is asked for, never made up", async () => {
  const desk = await deskWithPump();
  const { err } = await enter(desk, "--dry", "131 13 133 132", "--unit", "psi");
  expect(err).toContain("cylinder 2, dry 13: about a tenth of the others; is a digit missing?");
  expect(err).toContain("--to … ");
});

test.each(["0", "x", "60", ">1300"])("a reading of %s is no slip", async (reading) => {
  const desk = await deskWithPump();
  expect((await enter(desk, "--dry", `131 ${reading} 133 132`, "--unit", "psi")).err).toBe("");
});

test("a row that stands as a whole ten times over the last one is questioned by its unit", async () => {
  const desk = await deskWithPump();
  await enter(desk, "--dry", "131 130 133 132", "--unit", "psi");
  const { err } = await enter(desk, "--dry", "1310 1300 1330 1320", "--unit", "psi");
  expect(err).toMatch(/^all readings of dry are about 10 times the last ones: is psi right\?/);
});

test("the lone reading of one cylinder is not called all readings", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type("engine add pump --cylinders 1 --ignition spark".split(" "));
  await enter(desk, "--dry", "45", "--unit", "psi");
  const { err } = await enter(desk, "--dry", "310", "--unit", "psi");
  expect(err).toMatch(/^the reading of dry is about 7 times the last one: is psi right\?/);
});

test("swapped digits are told with the reading that was meant, a low reading is not", async () => {
  const desk = await deskWithPump();
  const { err } = await enter(desk, "--dry", "131 311 133 103", "--unit", "psi");
  expect(err).toContain("cylinder 2, dry 311: far above the others; did you mean 131?");
  expect(err).not.toContain("cylinder 4");
});

test("a row in a unit in which no engine cranks is questioned, with the unit it would be usual in", async () => {
  const desk = await deskWithPump();
  const { err } = await enter(desk, "--dry", "131 130 133 132", "--unit", "kPa");
  expect(err.replace(/\s+/g, " ")).toContain("less than any engine starts with: is kPa right?");
  expect(err.replace(/\s+/g, " ")).toContain("--unit psi --because mistyped");
  const other = await deskWithPump();
  const asked = await other.type(
    ["enter", "pump", "--dry", "131 130 133 132", "--unit", "bar"],
    answers("psi"),
  );
  expect(asked.asked[0]?.replace(/\s+/g, " ")).toContain("is bar right, or is it psi?");
  expect(rowsOf(other)[0]).toMatchObject({ unit: "psi" });
});
