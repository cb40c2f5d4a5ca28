import { gaugeColumns, gaugeHeader, readGauges } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { marked } from "./sample.ts";

const read = (rows: string) =>
  readGauges(
    `gauge,kind,unit,full_scale,class_percent,division,dial,restrictor_mm,note\n${rows}\n`,
    "gauges.csv",
  );
const faults = (rows: string) =>
  marked(
    read(rows).problems,
    `gauge,kind,unit,full_scale,class_percent,division,dial,restrictor_mm,note\n${rows}\n`,
  );

test("a gauge is kept in SI: full scale and division in Pa, restrictor in m", () => {
  const { gauges, problems } = read(
    "red,compression,bar,20,2.5,0.5,,,lent out\ntester,Leak-down,kPa,700,,,pressure,1.0,",
  );
  expect(problems).toEqual([]);
  expect(gauges).toEqual([
    {
      id: "red",
      kind: "compression",
      unit: "bar",
      fullScale: 2_000_000,
      classPercent: 2.5,
      division: 50_000,
      note: "lent out",
    },
    { id: "tester", kind: "leak-down", unit: "kPa", fullScale: 700_000, dial: "pressure", restrictor: 0.001 },
  ]);
});

test("a name and a kind are enough; a restrictor that is unknown is not guessed", () => {
  expect(read("red,compression,,,,,,,\ntester,leak-down,%,,,,percent-lost,unknown,").gauges).toEqual([
    { id: "red", kind: "compression" },
    { id: "tester", kind: "leak-down", dial: "percent-lost" },
  ]);
});

test("a new gauges.csv has every column, and reads as no gauges", () => {
  expect(gaugeHeader).toBe(gaugeColumns.join(","));
  expect(readGauges(`${gaugeHeader}\n`, "gauges.csv")).toEqual({ gauges: [], problems: [] });
});

test.each([
  ["a kind that is not known", "red,compresion,,,,,,,", "word-unknown@2 compresion"],
  ["no kind", "red,,,,,,,,", "word-unknown@2 ,"],
  ["no name", ",compression,,,,,,,", "id-missing@2 ,"],
  ["a unit that is no gauge's", "red,compression,inHg,,,,,,", "unit-unknown@2 inHg"],
  ["a full scale without a unit", "red,compression,,300,,,,,", "unit-missing@2 300"],
  ["a class out of reason", "red,compression,psi,300,25,,,,", "number-range@2 25"],
  ["a dial that is not known", "red,leak-down,psi,,,,percent,,", "word-unknown@2 percent"],
  ["a restrictor out of reason", "red,leak-down,psi,,,,,40,", "number-range@2 40"],
])("%s is a fault, and the row is left out", (_, row, fault) => {
  expect(faults(row)).toEqual([fault]);
  expect(read(row).gauges).toEqual([]);
});

test("a gauge that stands twice is a fault at the second, which tells the line of the first", () => {
  const { gauges, problems } = read(
    "red,compression,psi,,,,,,\nblue,compression,psi,,,,,,\nred,compression,bar,,,,,,",
  );
  expect(gauges.map(({ id }) => id)).toEqual(["red", "blue"]);
  expect(problems).toMatchObject([
    { code: "gauge-twice", line: 4, column: 1, found: 'the gauge "red" stands on line 2 already' },
  ]);
});
