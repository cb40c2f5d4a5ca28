import {
  amendmentColumns,
  engineHeaders,
  jsonText,
  newLogbookText,
  readEngine,
  readLogbook,
  readNotes,
  readServices,
  readTests,
  testColumns,
} from "@sealtrend/core/parts";
import { expect, test } from "vitest";

const engineOf = (cylinders: readonly string[]) => {
  const text = jsonText({ cylinders, ignition: "unknown" });
  const { engine } = readEngine(text, "engine.json", "pump");
  if (engine === undefined) throw new Error("no engine");
  return engine;
};

test("the files of a new engine are read without a word: nothing in them yet", () => {
  for (const labels of [["1"], ["1", "2", "3", "4"], ["L1", "R1", "L2", "R2"]]) {
    const engine = engineOf(labels);
    const headers = engineHeaders(labels);
    const file = (name: string): string => `${headers[name] ?? ""}\n`;
    expect(readTests(file("tests.csv"), "tests.csv", engine, [])).toMatchObject({ tests: [], problems: [] });
    expect(readServices(file("services.csv"), "services.csv", engine)).toEqual({
      services: [],
      problems: [],
    });
    expect(readNotes(file("notes.csv"), "notes.csv", engine)).toEqual({ notes: [], problems: [] });
  }
});

test("tests.csv begins with what a paper sheet has first: test, date, meter, kind, take, gauge, unit, cylinders", () => {
  expect(testColumns(["1", "2"]).slice(0, 9).join(",")).toBe("test,date,meter,what,take,gauge,unit,c1,c2");
  expect(testColumns(["1", "2"]).slice(-3).join(",")).toBe("by,set_aside,note");
  expect(new Set(testColumns(["1", "2"])).size).toBe(testColumns(["1", "2"]).length);
});

test("the trace of corrected entries has the columns of the contract", () => {
  expect(amendmentColumns.join(",")).toBe("when,file,row,column,old,new,because");
  expect(Object.keys(engineHeaders(["1"]))).toEqual([
    "tests.csv",
    "services.csv",
    "notes.csv",
    "measurements.csv",
    "amendments.csv",
  ]);
});

test("a new logbook holds nothing invented", () => {
  expect(readLogbook(newLogbookText(), "logbook.json")).toEqual({ logbook: { demo: false }, problems: [] });
  expect(newLogbookText().endsWith("}\n")).toBe(true);
});
