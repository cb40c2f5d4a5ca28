// Slips in measurements.csv: what the mend offers is near what was written.

import { readEngine, readMeasurements } from "@sealtrend/core/parts";
import { expect, test } from "vitest";

const { engine } = readEngine('{ "cylinders": ["1", "2"], "ignition": "spark" }', "engine.json", "pump");
if (engine === undefined) throw new Error("the engine of this test has a fault");

const faultOf = (row: string) => {
  const header = "date,part,label,at,quantity,value,unit,resolution";
  const [first] = readMeasurements(`${header}\n2026-03-02,${row}\n`, "measurements.csv", engine).problems;
  return `${first?.expected ?? ""} | ${first?.mend ?? ""}`;
};

test.each([
  ["bore,1,bottom/axiel,diameter,86.52,mm,", "write such as bottom/axial"],
  ["bore,1,botom/axial,diameter,86.52,mm,", "write such as bottom/axial"],
  ["pin,1,frnt/90,diameter,57.1,mm,", "write such as front/90"],
  ["head,,log1/40,gap,0.02,mm,", "write such as long1/40"],
  ["bore,1,sky,diameter,86.52,mm,", "write such as top/thrust"],
])("%s", (row, mend) => {
  expect(faultOf(row).split(" | ")[1]).toBe(mend);
});

test("a resolution with a sign is not told of feeler leaves", () => {
  expect(faultOf('bore,1,top,diameter,86.52,mm,"-0,01"')).toBe("a number above 0, up to 5 mm | write 0,01");
});
