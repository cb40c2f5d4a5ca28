// What is done before any test of the tables: readings invented, traps of the trade.

import { expect, test } from "vitest";
import type { TestAssessment } from "@sealtrend/core";
import { type Row, type Written, assessed } from "./records.ts";

const day = (cells: string, more: Partial<Row> = {}): Row => ({ test: "2026-05-02a", cells, ...more });
const leak = { what: "leak-down", regulated_psi: "80" };
const heard = (cells: string): Row => day(cells, { what: "heard", unit: "" });
const found = (tests: readonly Row[], written: Partial<Written> = {}): TestAssessment =>
  assessed({
    ...written,
    tests,
    engine: { banks: [["1", "2", "3", "4"]], cooling: "liquid", ...written.engine },
  });
const texts = ({ nextTests }: TestAssessment) => nextTests.map(({ text }) => text);
const codes = ({ nextTests }: TestAssessment) => nextTests.map(({ code }) => code);

test("where nothing held in any cylinder there is nothing to compare: the gauge comes before the engine", () => {
  const dead = found([day("0 0 0 0")]);
  expect(dead.diagnosis).toBeUndefined();
  expect(texts(dead)).toEqual([
    expect.stringMatching(/^see that the gauge moves at all.*the camshaft turns with the crank/),
  ]);
  expect(found([day("0 0 0 0"), day("74 73 74 72", leak)]).diagnosis).toBeDefined();
  expect(found([day("150 0 151 149")]).diagnosis).toBeDefined();
});

// trade.md C4: two or more at zero, bent or stuck valves or the timing drive .80
test("two cylinders at zero: the timing marks before it is cranked again, and no oil", () => {
  const bent = found([day("150 0 151 0")]);
  expect(texts(bent)[0]).toMatch(/^do not crank it on.*timing marks/);
  expect(codes(bent)).not.toContain("wet");
  expect(codes(bent)).not.toContain("repeat");
  const ports = found([day("120 0 121 0")], { engine: { cycle: "two-stroke" } });
  expect(codes(ports)).not.toContain("timing-marks");
});

// trade.md C4: whole bank low, cam timing of that bank .50; one cranking test is no proof (handbook/diagnosis.md 5.2)
test("a whole bank low: its timing marks, though the chances are as sure as they can be", () => {
  const engine = {
    banks: [
      ["1", "3", "5", "7"],
      ["2", "4", "6", "8"],
    ],
  };
  const bank = found([day("150 108 149 104 151 106 152 107")], { cylinders: 8, engine });
  expect(bank.diagnosis).toMatchObject({ capped: true, enough: true });
  expect(texts(bank)).toEqual([
    "check the timing marks of the bank of 2, 4, 6 and 8, then read that bank again",
  ]);
});

test("air at the plug is the test's own leak: it is seated anew before anything else", () => {
  const plug = found([day("150 152 110 149"), day("74 75 56 74", leak), heard("none none plug none")]);
  expect(plug.diagnosis?.causes[0]?.code).toBe("plug-seal");
  expect(texts(plug)).toEqual([expect.stringMatching(/^seat plug or adapter of 3 anew/)]);
});

test("air in the coolant is looked for with the coolant tester, never with oil", () => {
  const gas = found([day("150 152 110 149"), day("75 74 66 75", leak), heard("none none coolant none")]);
  expect(codes(gas)[0]).toBe("coolant");
  expect(codes(gas)).not.toContain("wet");
});

// trade.md D: neighbours never by their numbers
test("air noted at a cylinder that is no neighbour, or at a port that is shut, is listened for again", () => {
  const far = found([day("150 152 110 149"), day("74 75 56 74", leak), heard("none none neighbour:1 none")]);
  expect(texts(far)[0]).toMatch(/^listen on 3 again at the cylinders that stand next to it/);
  expect(codes(far).filter((code) => code === "leak-down-and-listen")).toHaveLength(1);
  const ports = found([day("120 85"), day("74 40", leak), heard("none exhaust")], {
    cylinders: 2,
    engine: { cycle: "two-stroke", banks: [["1", "2"]], sharedGasket: false },
  });
  expect(texts(ports)[0]).toMatch(/^listen on 2 again at top dead centre, where the ports are shut/);
  expect(codes(ports).filter((code) => code === "leak-down-and-listen")).toHaveLength(1);
});

test("nobody is sent to a running engine with a propeller", () => {
  const open = (use: string): readonly string[] =>
    found([day("75 74 50 75")], { engine: { use } }).diagnosis?.tests.map((one) => one.test.code) ?? [];
  expect(open("road")).toContain("running");
  expect(open("aircraft")).not.toContain("running");
});

test("three readings that contradict each other ask for the seal of the gauge, not for more of the same", () => {
  const torn = found(
    ["150 151 149 149", "151 60 150 150", "150 140 150 151"].map((cells, i) =>
      day(cells, { take: String(i + 1) }),
    ),
  );
  expect(texts(torn)[0]).toBe("see to seal and adapter of the gauge on 2, then read again three times");
  expect(texts(torn).join()).not.toContain("twice");
});
