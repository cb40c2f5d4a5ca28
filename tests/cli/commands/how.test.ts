// how: how to make a test, one screen. Contract: design.md §4; what the lines say is tested with the procedures.

import { expect, test } from "vitest";
import { type Desk, deskWithPump, newDesk } from "./desk.ts";

const withDemo = async (): Promise<Desk> => {
  const desk = newDesk();
  await desk.type(["demo", "logbook"]);
  return desk;
};

const kinds = ["dry", "wet", "first-stroke", "leak-down", "teardown"] as const;
const engines = ["tractor", "van", "boat", "mill", "pump", "ultralight"] as const;

test("every procedure fits one screen of 24 lines by 80 columns, with a line left for the prompt", async () => {
  const desk = await withDemo();
  for (const kind of kinds)
    for (const engine of engines) {
      const { exit, out } = await desk.type(["how", kind, engine]);
      const lines = out.trimEnd().split("\n");
      expect(
        [exit, lines.length <= 23, Math.max(...lines.map((line) => [...line].length)) <= 80],
        `${kind} ${engine}`,
      ).toEqual([0, true, true]);
    }
});

test("what can hurt stands before the steps, under a mark of its own", async () => {
  const desk = await withDemo();
  const { out } = await desk.type(["how", "leak-down", "ultralight"]);
  expect(out).toContain(
    "\nCARE    Aircraft: a licensed person does, judges and signs this work.\n        Air swings the propeller:",
  );
  expect(out.indexOf("CARE")).toBeLessThan(out.indexOf("do    1 Piston to top dead centre"));
});

test("the words come in either order, and dry is meant where no test is named", async () => {
  const desk = await withDemo();
  const { out } = await desk.type(["how", "wet", "tractor"]);
  expect((await desk.type(["how", "tractor", "wet"])).out).toBe(out);
  expect((await desk.type(["how", "tractor"])).out).toMatch(
    /^Dry compression test: tractor \(4 cylinders, spark\)\n/,
  );
});

test("the only engine need not be named", async () => {
  const desk = await deskWithPump();
  expect((await desk.type(["how"])).out).toMatch(/^Dry compression test: pump/);
});

test("a test that could harm the engine is refused, and another offered", async () => {
  const desk = await withDemo();
  const { exit, out } = await desk.type(["how", "wet", "pump"]);
  expect([exit, out]).toEqual([
    0,
    "No wet test: pump (2 cylinders, diesel)\n" +
      "Oil in the cylinders is ruled out for this engine (workshop book, invented: no\n" +
      "oil in the cylinders).\n" +
      "instead Leak-down tells more: sealtrend how leak-down pump\n" +
      "        Or the first stroke: sealtrend how first-stroke pump\n",
  ]);
});

test.each([[], ["logbook/.keep"]])(
  "without an engine in a logbook the text is for any, and says so",
  async (...files) => {
    const desk = newDesk();
    for (const file of files) desk.put(file, "");
    const { exit, out, err } = await desk.type(["how"]);
    expect([exit, out.split("\n")[0]]).toEqual([0, "Dry compression test: any engine, spark or diesel"]);
    expect(err).toBe(
      "no engine in a logbook yet: this holds for any of them; yours:\nsealtrend engine add pump --cylinders 4 --ignition spark\n",
    );
    expect(out).toContain("If spark: ");
    expect(out).toContain("If diesel: ");
  },
);

test.each([
  [["how"], "which engine: logbook holds 6"],
  [["how", "wet", "tracter"], '"tracter" is no engine here'],
  [["how", "drry", "tractor"], '"drry" is neither a test nor an engine here'],
  [["how", "tractor", "boat"], "two engines: tractor and boat"],
  [["how", "tracter"], '"tracter" is neither a test nor an engine here'],
])("refused: %j", async (line, found) => {
  const desk = await withDemo();
  const { exit, err } = await desk.type(line);
  expect([exit, err.split("\n")[0]]).toEqual([2, found]);
});

test("a faulty engine.json stops it, with the place of the fault", async () => {
  const desk = newDesk();
  desk.put("logbook/pump/engine.json", '{ "cylinders": ["1"] }');
  const { exit, err } = await desk.type(["how"]);
  expect([exit, err]).toEqual([1, expect.stringContaining("logbook/pump/engine.json:1:1 ")]);
});

test("--why puts a source under every line", async () => {
  const desk = await deskWithPump();
  const { out } = await desk.type(["how", "--why"]);
  expect(out).toContain(
    "Crank 5 or 6 strokes, always the same; 15 s at most; read.\n        (Ford, TM 5-4210-230-14&P-1 (5 or more, the same); GM Duramax (6);\n",
  );
});
