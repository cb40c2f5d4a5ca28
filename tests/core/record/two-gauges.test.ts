// Two gauges in one test: their rows may state different facts of the day, and each is held against its own.

import { dayOf, readEngine, readGauges, readTests } from "@sealtrend/core/parts";
import { expect, test } from "vitest";

const { engine } = readEngine('{ "cylinders": ["1", "2"], "ignition": "spark" }', "engine.json", "pump");
const gauges = readGauges(
  "gauge,kind,unit,regulated,reads_high\none,leak-down,psi,80,\ntwo,leak-down,psi,100,\nred,compression,psi,,3\n",
  "gauges.csv",
).gauges;
const read = (...rows: readonly string[]) => {
  if (engine === undefined) throw new Error("no engine");
  const text = ["test,date,what,gauge,unit,c1,c2,regulated_psi,engine_temp", ...rows, ""].join("\n");
  return readTests(text, "tests.csv", engine, gauges);
};
const psi = 6894.757293168;

test("what the rows of each gauge state is kept by gauge where it differs, and only there", () => {
  const { tests, problems } = read(
    "2026-05-03a,2026-05-03,leak-down,one,psi,70,72,80,warm",
    "2026-05-03a,2026-05-03,leak-down,two,psi,88,92,100,",
  );
  const [only] = tests;
  expect(problems).toEqual([]);
  if (only === undefined) throw new Error("no test");
  const supplies = ["one", "two", "three"].map((name) => (dayOf(only, name).regulated ?? 0) / psi);
  // the gauge whose name comes first speaks for the test
  expect(supplies).toEqual([80, 100, 80].map((value) => expect.closeTo(value, 9) as number));
  expect(dayOf(only, "two").engineTemp).toBe("warm");
  expect(read("2026-05-03a,2026-05-03,leak-down,one,psi,70,72,80,warm").tests[0]?.byGauge).toBeUndefined();
});

test("a reading above the supply of another tester is no fault where its own supply is higher", () => {
  const rows = (supply: string) => [
    "2026-05-03a,2026-05-03,leak-down,one,psi,70,72,80,",
    `2026-05-03a,2026-05-03,leak-down,two,psi,88,92,${supply},`,
  ];
  expect(read(...rows("100")).problems).toEqual([]);
  expect(read(...rows("80")).problems.map(({ code }) => code)).toEqual([
    "leak-over-supply",
    "leak-over-supply",
  ]);
});

test("where no row states the supply, what the testers are set to by gauges.csv stands in", () => {
  const { tests, problems } = read(
    "2026-05-03a,2026-05-03,leak-down,one,psi,70,72,,",
    "2026-05-03a,2026-05-03,leak-down,two,psi,88,92,,",
  );
  const [only] = tests;
  if (only === undefined) throw new Error("no test");
  expect(problems).toEqual([]);
  expect(["one", "two"].map((name) => Math.round((dayOf(only, name).regulated ?? 0) / psi))).toEqual([
    80, 100,
  ]);
});

test("a row carries what its gauge reads too high; its cells stay as read", () => {
  const [only] = read("2026-05-03a,2026-05-03,dry,red,psi,150,140,,").tests;
  const [row] = only?.rows ?? [];
  expect((row?.readsHigh ?? 0) / psi).toBeCloseTo(3, 9);
  expect(row?.cells[0]).toMatchObject({ value: expect.closeTo(150 * psi, 6) as number, text: "150" });
});
