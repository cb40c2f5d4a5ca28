// Findings that no sound cylinder gives, where the chances say that there is none. Readings invented.

import { expect, test } from "vitest";
import type { TestAssessment } from "@sealtrend/core";
import { type Row, type Written, assessed } from "./records.ts";

const day = (cells: string, more: Partial<Row> = {}): Row => ({ test: "2026-05-02a", cells, ...more });
const leak = { what: "leak-down", regulated_psi: "80", gauge: "tester" };
const gauges =
  "gauge,kind,unit,full_scale,division,restrictor_mm,dial\ntester,leak-down,psi,100,1,1.016,pressure\n";
const found = (tests: readonly Row[], written: Partial<Written> = {}): TestAssessment =>
  assessed({
    gauges,
    ...written,
    tests,
    engine: {
      banks: [["1", "2", "3", "4"]],
      cooling: "liquid",
      geometry: { bore: "86mm", stroke: "86mm", compressionRatio: 8.5 },
      ...written.engine,
    },
  });
const heard = (cells: string): Row => day(cells, { what: "heard", unit: "" });
const texts = ({ nextTests }: TestAssessment) => nextTests.map(({ text }) => text);
const codes = ({ nextTests }: TestAssessment) => nextTests.map(({ code }) => code);

// lost: 1 - 40/80 and 1 - 75/80; trade.md C2: every leak so large has a path. The chances stay those of the handbook's model
// (tests/outside/diagnosis.py gives the same .96); what is said stops short of them.
test("a large leak that was heard nowhere on a cylinder that cranks well is not waved away", () => {
  const odd = found([day("150 152 149 149"), day("75 74 75 40", leak), heard("none none none none")]);
  expect(odd.diagnosis?.groups.nothing).toBeGreaterThan(0.9);
  expect(odd.unexplained).toMatchObject([
    { label: "4", finding: "leak-heard-nowhere", own: 0.5, others: expect.closeTo(0.0625, 12) as unknown },
  ]);
  expect(texts(odd)).toEqual([
    "bring 4 to top dead centre on compression again, tap its valves, then leak-down again and listen",
  ]);
  const forbidden = found([day("150 152 149 149"), day("75 74 75 40", leak), heard("none none none none")], {
    engine: { leakDownTest: { allowed: false } },
  });
  expect(texts(forbidden)).toEqual([]);
});

test("a large leak that was heard is one, a faint hiss of a small one is none", () => {
  const two = {
    cylinders: 2,
    engine: { cycle: "two-stroke", banks: [["1", "2"]], sharedGasket: false, cooling: "air" },
  };
  const bare = { what: "leak-down", regulated_psi: "80" };
  const large = found([day("74 50", bare), heard("none crankcase")], two);
  expect(large.unexplained).toMatchObject([{ label: "2", finding: "leak-heard", own: 0.375 }]);
  expect(found([day("74 70", bare), heard("none crankcase:faint")], two).unexplained).toEqual([]);
  expect(found([day("75 74 75 40", leak)]).unexplained).toEqual([]);
});

// trade.md C2: bubbles in the coolant come from gasket or crack alone
test("air in the coolant is told however even the cylinders are, and looked for until somebody has", () => {
  const tests = [day("150 151 149 150"), day("75 74 74 75", leak), heard("none none coolant none")];
  const bubbles = found(tests);
  expect(bubbles.unexplained).toEqual([{ label: "3", finding: "air-in-coolant" }]);
  expect(codes(bubbles)).toEqual(["coolant"]);
  const looked = found(tests, { notes: ["2026-05-03,,combustion gas in coolant,none,,"] });
  expect(looked.unexplained).toHaveLength(1);
  expect(codes(looked)).toEqual([]);
  expect(found(tests, { engine: { cooling: "air" } }).nextTests).toEqual([]);
});

// trade.md A6: low on the snap is a restriction or a lazy intake valve. 45/75 = .60, 70/111 = .63
test("a cylinder that cranks well and reads low running does not fill: lift and intake are looked at", () => {
  const tests = [
    day("150 150 149 149"),
    day("75 74 45 76", { what: "running" }),
    day("110 112 70 111", { what: "snap-throttle" }),
  ];
  const lazy = found(tests);
  expect(lazy.unexplained).toMatchObject([
    { label: "3", finding: "running-low", own: expect.closeTo(0.6, 9) as unknown },
  ]);
  expect(lazy.nextTests[0]).toMatchObject({
    code: "lash",
    text: "look at valve lift, lifter and intake of 3",
  });
  expect(found([day("150 150 149 149"), day("75 74 68 76", { what: "running" })]).unexplained).toEqual([]);
});

// 172/149 - 1 = .154 beside 152/150, 153/151 and 151/150; trade.md B3: from 10 % over a sound one oil speaks of rings, and
// rings read low without it
test("oil that raises one even cylinder far more than the others is told", () => {
  const oiled = (wet: string) => found([day("150 151 149 150"), day(wet, { what: "wet" })]);
  const odd = oiled("152 153 172 151");
  expect(odd.unexplained).toMatchObject([{ label: "3", finding: "oil-rise" }]);
  expect(odd.unexplained[0]?.own).toBeCloseTo(172 / 149 - 1, 9);
  expect(odd.unexplained[0]?.others).toBeCloseTo((2 / 150 + 2 / 151 + 1 / 150) / 3, 9);
  expect(codes(odd)).toEqual(["wet"]);
  expect(oiled("152 153 158 151").unexplained).toEqual([]);
});
