// The talk of `enter`: going back, help, lists, slips and a narrow screen. Readings invented; the cells expected are those typed.

import { expect, test } from "vitest";
import { type Desk, deskWithPump } from "./desk.ts";
import { answers, rowsOf } from "./entered.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const red = ["enter", "pump", "--gauge", "red", "--unit", "psi"];
const open = ["", "", "", "", "", ""];

const typed = async (...lines: readonly string[]) => {
  const desk = await deskWithPump();
  return { desk, ...(await desk.type(red, answers(...lines))) };
};

test("back through gauge, unit, cylinders and conditions, Enter keeps each former answer", async () => {
  const desk = await deskWithPump();
  const { asked } = await desk.type(
    ["enter", "pump"],
    answers(
      ...["red", "psi", "150", "148", "147", "149", "warm"],
      ...["b", "b", "b", "b", "b", "b", "b", "black", "", "151", "", "146", "", "cold", ...open],
    ),
  );
  expect(asked.slice(8, 15).map(flat)).toEqual([
    "engine: warm, part-warm or cold [warm]: ",
    "cylinder 4 [149]: ",
    "cylinder 3 [147]: ",
    "cylinder 2 [148]: ",
    "cylinder 1 [150]: ",
    "unit (psi, kPa, bar, MPa, kgf/cm2) [psi]: ",
    "gauge (a name for it) [red]: ",
  ]);
  expect(rowsOf(desk)).toMatchObject([
    { gauge: "black", unit: "psi", c1: "151", c2: "148", c3: "146", c4: "149", engine_temp: "cold" },
  ]);
});

test("- takes an answer out that may stay open", async () => {
  const { desk } = await typed("150", "148", "147", "149", "warm", "b", "-", ...open);
  expect(rowsOf(desk)[0]).not.toHaveProperty("engine_temp");
});

test("? helps in a line at every question, and Enter alone is no reading", async () => {
  const { out, desk } = await typed("?", "", "150", "148", "147", "149", "?", "warm", ...open);
  expect(flat(out).split("131? if doubtful, >300 if pegged, 0 if dead")).toHaveLength(3);
  expect(out).toContain("such as warm");
  expect(rowsOf(desk)).toMatchObject([{ c1: "150", engine_temp: "warm" }]);
});

test("the help, going back and leaving are told at the start", async () => {
  const { out } = await typed("q");
  expect(flat(out)).toContain("b = back one, ? = help, q = leave; what you typed is kept");
});

test.each([
  [["150 148 147 149"], ["150", "148", "147", "149"]],
  [["150,148,147,149"], ["150", "148", "147", "149"]],
  [
    ["150", "148 147 x"],
    ["150", "148", "147", "x"],
  ],
])("a list %j answers all the cylinders that are left", async (lines, cells) => {
  const { desk, asked } = await typed(...lines, ...open);
  expect(asked[lines.length]).toContain("engine");
  expect(rowsOf(desk)).toMatchObject([Object.fromEntries(cells.map((cell, i) => [`c${i + 1}`, cell]))]);
});

test("a list of another length is refused, and a decimal comma is no list", async () => {
  const refused = await typed("150 148 147", "150", "148", "147", "149", ...open);
  expect(rowsOf(refused.desk)).toMatchObject([{ c1: "150", c4: "149" }]);
  const desk = await deskWithPump();
  await desk.type(
    ["enter", "pump", "--gauge", "red", "--unit", "bar"],
    answers("10,5", "10,4", "10,52", "10,6", ...open),
  );
  expect(rowsOf(desk)).toMatchObject([{ c3: "10.52", c4: "10.6" }]);
});

test.each([
  ["1310", "did you mean 131?"],
  ["311", "did you mean 131?"],
  ["13", "is a digit missing?"],
])("%s among 131s is asked once, and typed again it is taken", async (slip, question) => {
  const { desk, out, asked } = await typed("131", "129", slip, slip, "133", ...open);
  expect(flat(out)).toContain(question);
  expect(asked.slice(2, 4)).toEqual(["cylinder 3: ", "cylinder 3: "]);
  expect(rowsOf(desk)).toMatchObject([{ c3: slip }]);
});

test("Enter never stands for the reading that was meant", async () => {
  const { desk } = await typed("131", "129", "1310", "", "131", "133", ...open);
  expect(rowsOf(desk)).toMatchObject([{ c3: "131", c4: "133" }]);
});

test.each(["0", "5", "60", "104", "x"])("%s among 131s is taken without a question", async (reading) => {
  const { desk, asked } = await typed("131", "129", reading, "133", ...open);
  expect(asked[3]).toBe("cylinder 4: ");
  expect(rowsOf(desk)).toMatchObject([{ c3: reading }]);
});

test("a slip in the first reading is asked behind the last, when its fellows tell", async () => {
  const { desk, out, asked } = await typed("1310", "1310", "129", "132", "133", "131", ...open);
  expect(flat(out)).toContain("cylinder 1, 1310: about ten times the others; did you mean 131?");
  expect(asked[5]).toBe("cylinder 1: ");
  expect(asked[6]).toContain("engine");
  expect(rowsOf(desk)).toMatchObject([{ c1: "131", c2: "129", c4: "133" }]);
});

test("a unit in which no engine cranks is asked about at the first reading", async () => {
  const desk = await deskWithPump();
  const { out } = await desk.type(
    ["enter", "pump", "--gauge", "red"],
    answers("bar", "150", "b", "psi", "150", "148", "147", "149", ...open),
  );
  expect(flat(out)).toContain("150 bar is more than any engine cranks: is the unit right, is it psi?");
  expect(rowsOf(desk)).toMatchObject([{ unit: "psi", c1: "150" }]);
});

const narrowFaults = (text: string): readonly string[] =>
  text.split("\n").filter((line) => line.length > 40 && !line.includes("sealtrend "));

test("all of it fits a telephone of 40 columns", async () => {
  const desk: Desk = await deskWithPump();
  await desk.type(red, { ...answers("150", "148"), width: 40 });
  const { exit, out, err, asked } = await desk.type(["enter", "pump"], {
    ...answers(...["", "?", "l47", "1470", "147", "149", "?", "hot", ...open]),
    width: 40,
  });
  expect(exit).toBe(0);
  expect(narrowFaults([out, err, ...asked].join("\n"))).toEqual([]);
  // eslint-disable-next-line no-control-regex -- an escape is looked for
  expect([out, err, ...asked].join("")).not.toMatch(/[\r\x1b]/);
});

test("under --json the talk stays off stdout", async () => {
  const desk = await deskWithPump();
  const { out } = await desk.type([...red, "--json"], answers("150", "148", "147", "149", ...open));
  expect(JSON.parse(out)).toMatchObject({ schema: "sealtrend/enter@1" });
});
