// What somebody types who enters a test for the first time: a unit in the gauge's place, 131psi, a name with a blank, a bare `?`.
// Readings invented; the cells expected are those meant.

import { expect, test } from "vitest";
import { type Desk, deskWithPump, newDesk } from "./desk.ts";
import { answers, rowsOf } from "./entered.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const open = ["", "", "", "", "", ""];

const deskOf = (cylinders: number, gauges = ""): Desk => {
  const desk = newDesk();
  const labels = Array.from({ length: cylinders }, (_, i) => `"${String(i + 1)}"`).join(", ");
  desk.put("logbook/gauges.csv", `gauge,kind,unit\n${gauges}`);
  desk.put("logbook/pump/engine.json", `{"cylinders": [${labels}], "ignition": "spark"}`);
  return desk;
};

test.each([
  ["psi", "psi is a unit: the gauge first, by its name, or Enter"],
  ["spark", "spark is a way to fire: the gauge first, by its name, or Enter"],
  ["warm", "warm is how warm it was: the gauge first, by its name, or Enter"],
])("%s is no gauge's name, typed twice neither", async (word, said) => {
  const desk = await deskWithPump();
  const { out } = await desk.type(
    ["enter", "pump"],
    answers(word, word, "red", "psi", "150 148 147 149", ...open),
  );
  expect(flat(out)).toContain(said);
  expect(rowsOf(desk)).toMatchObject([{ gauge: "red", unit: "psi", c1: "150" }]);
});

test("a reading may carry the unit that is known, another one is refused with what to do", async () => {
  const desk = await deskWithPump();
  const { out } = await desk.type(
    ["enter", "pump", "--gauge", "red", "--unit", "psi"],
    answers("150psi", "9bar", "148 psi", "147 149", ...open),
  );
  expect(flat(out)).toContain("9bar: readings here are in psi: leave bar off, or go back with b to the unit");
  expect(rowsOf(desk)).toMatchObject([{ c1: "150", c2: "148", c3: "147", c4: "149" }]);
});

test("a list that is too short for what is left counts what is left", async () => {
  const desk = await deskWithPump();
  const { out } = await desk.type(
    ["enter", "pump", "--gauge", "red", "--unit", "psi"],
    answers("150", "148 147", "148", "147", "149", ...open),
  );
  expect(flat(out)).toContain("2 readings, and 3 cylinders are left: one, or all of them");
});

test("of two readings that stand against each other the one that no engine cranks to is asked about, once", async () => {
  const desk = deskOf(2);
  const { out } = await desk.type(
    ["enter", "pump", "--gauge", "red", "--unit", "psi"],
    answers("120", "12", "12", ...open),
  );
  expect(out).not.toContain("cylinder 1, 120");
  expect(flat(out)).toContain("cylinder 2, 12: about a tenth of the other");
  expect(rowsOf(desk)).toMatchObject([{ c1: "120", c2: "12" }]);
});

test("who was asked about a reading and types much the same is not asked again", async () => {
  const desk = deskOf(3);
  const { asked } = await desk.type(
    ["enter", "pump", "--gauge", "red", "--unit", "psi"],
    answers("120", "121", "1200", "1210", ...open),
  );
  expect(asked.filter((question) => question.startsWith("cylinder 3"))).toHaveLength(2);
  expect(rowsOf(desk)).toMatchObject([{ c3: "1210" }]);
});

// by hand: 9.1 bar is 132 psi
test("what was last read in another unit is a slip of the unit, not of a digit", async () => {
  const desk = deskOf(1);
  await desk.type(["enter", "pump", "--date", "2026-09-01", "--dry", "9.1", "--unit", "bar"]);
  const { out } = await desk.type(
    ["enter", "pump", "--gauge", "red", "--unit", "psi"],
    answers("9.1", "bar", ...open),
  );
  expect(out).not.toContain("did you mean 91");
  const said = await desk.type(["enter", "pump", "--dry", "9.1", "--unit", "psi"]);
  expect(flat(said.err)).toContain("is psi right? If not: sealtrend amend pump");
});

const gauges = "red,compression,psi\nblue,compression,bar\ndrip,leak-down,psi\n";

test("without a unit the gauges that are known are named, and a new one by a name that is free", async () => {
  const known = await deskOf(2, gauges).type(["enter", "pump", "--dry", "120 121"]);
  expect(flat(known.err)).toContain("or the gauge that was used: --gauge red or --gauge blue");
  const none = await deskOf(2, "red,leak-down,psi\n").type(["enter", "pump", "--dry", "120 121"]);
  expect(flat(none.err)).toContain("sealtrend gauge add blue --kind compression --unit psi");
});

test.each([
  ["blue", { gauge: "blue", unit: "bar" }],
  ["PSI", { unit: "psi" }],
])("on a terminal the unit is asked for: %s", async (answer, row) => {
  const desk = deskOf(2, gauges);
  const { asked, exit } = await desk.type(
    ["enter", "pump", "--dry", "8.3 8.4"],
    answers("drip", answer, "", ""),
  );
  expect(flat(asked[0] ?? "")).toBe(
    "unit of the readings, or the gauge (red, blue, psi, kPa, bar, MPa, kgf/cm2): ",
  );
  expect(asked).toHaveLength(answer === "blue" ? 2 : 3);
  expect([exit, rowsOf(desk)]).toMatchObject([0, [row]]);
});

test("a name that no engine can have is refused before anything is asked", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  const { asked, exit, err } = await desk.type(["enter", "Old Tractor", "--new"], answers("2", "spark"));
  expect([exit, asked]).toEqual([2, []]);
  expect(err).toContain("Old Tractor");
});

test.each(["?", "x y x", "0"])("%s at the count of cylinders is answered in words", async (answer) => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  const { out } = await desk.type(["enter", "mule", "--new"], answers(answer, "q"));
  expect(out).toContain("  a number such as 4, or the name of each");
  expect(out).not.toContain("[");
});

test("a test is added to no engine that was only begun", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["enter", "mule", "--new"], answers("2", "spark", "red", "psi", "120"));
  const { err, exit } = await desk.type(
    ["enter", "mule", "--same-test", "--wet", "130 131", "--unit", "psi"],
    answers(),
  );
  expect(exit).not.toBe(0);
  expect(err).not.toContain("a new engine has no test");
  expect(err).toContain("mule");
});
