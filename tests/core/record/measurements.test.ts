// measurements.csv: the example rows of the contract (handbook teardown.md 1.2), other dialects, and every fault.

import { decimalsOf, dialectOf, readMeasurements, rowText } from "@sealtrend/core/parts";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { faults, header, read } from "./measurement-rows.ts";
import { engine } from "./sample.ts";

const mm = (value: number): unknown => expect.closeTo(value / 1000, 12);
const inches = (value: number): unknown => expect.closeTo(value * 0.0254, 12);

/** As the contract prints it. */
const example = `teardown,date,part,label,at,quantity,value,unit,instrument,resolution,by,state,note
1,2026-03-02,bore,3,top/thrust,diameter,86.62,mm,bore-gauge,0.01,owner,cleaned,set at 86.50 in the micrometer
1,2026-03-02,ring,3,1/bottom,end gap,0.35..0.40,mm,feeler,0.05,owner,cleaned,used ring; 0.35 goes 0.40 does not
1,2026-03-02,rod bearing,2,middle,thread clearance,0.0022,in,thread,0.0005,owner,as found,
1,2026-03-02,main,4,front/90,diameter,2.4986,in,micrometer,0.0001,owner,cleaned,
1,2026-03-02,head,,diagonal1/240,gap,<0.04,mm,feeler,0.01,owner,cleaned,thinnest leaf does not enter
1,2026-03-02,main bearing,4,lower,appearance,one-sided,,eye,,owner,as found,photo 0412
`;
const common = { teardown: 1, date: "2026-03-02", by: "owner" };
const expected = [
  {
    ...common,
    part: "bore",
    label: "3",
    at: "top/thrust",
    quantity: "diameter",
    value: { kind: "length", value: mm(86.62) },
    unit: "mm",
    decimals: 2,
    instrument: "bore-gauge",
    resolution: mm(0.01),
    state: "cleaned",
    note: "set at 86.50 in the micrometer",
    line: 2,
  },
  {
    ...common,
    part: "ring",
    label: "3",
    at: "1/bottom",
    quantity: "end gap",
    value: { kind: "between", low: mm(0.35), high: mm(0.4) },
    unit: "mm",
    decimals: 2,
    instrument: "feeler",
    resolution: mm(0.05),
    state: "cleaned",
    note: "used ring; 0.35 goes 0.40 does not",
    line: 3,
  },
  {
    ...common,
    part: "rod bearing",
    label: "2",
    at: "middle",
    quantity: "thread clearance",
    value: { kind: "length", value: inches(0.0022) },
    unit: "in",
    decimals: 4,
    instrument: "thread",
    resolution: inches(0.0005),
    state: "as found",
    line: 4,
  },
  {
    ...common,
    part: "main",
    label: "4",
    at: "front/90",
    quantity: "diameter",
    value: { kind: "length", value: inches(2.4986) },
    unit: "in",
    decimals: 4,
    instrument: "micrometer",
    resolution: inches(0.0001),
    state: "cleaned",
    line: 5,
  },
  {
    ...common,
    part: "head",
    at: "diagonal1/240",
    quantity: "gap",
    value: { kind: "between", low: 0, high: mm(0.04) },
    unit: "mm",
    decimals: 2,
    instrument: "feeler",
    resolution: mm(0.01),
    state: "cleaned",
    note: "thinnest leaf does not enter",
    line: 6,
  },
  {
    ...common,
    part: "main bearing",
    label: "4",
    at: "lower",
    quantity: "appearance",
    value: { kind: "word", word: "one-sided" },
    instrument: "eye",
    state: "as found",
    note: "photo 0412",
    line: 7,
  },
];

describe("what is read", () => {
  test("the rows that the contract prints, to the last value and nothing more", () => {
    expect(readMeasurements(example, "measurements.csv", engine)).toEqual({
      measurements: expected,
      problems: [],
    });
  });

  test("the same with line ends and a mark of another system, and without its last line end", () => {
    for (const text of [example.replaceAll("\n", "\r\n"), `\uFEFF${example}`, example.trimEnd()])
      expect(readMeasurements(text, "measurements.csv", engine)).toEqual({
        measurements: expected,
        problems: [],
      });
  });

  test("the same with semicolons and decimal commas, in the value, between feelers and in the resolution", () => {
    const text = example
      .replace("0.40 does not", "0.40 does not; so it is")
      .replaceAll(",", ";")
      .replaceAll(/(\d)\.(\d)/g, "$1,$2")
      .replace("used ring; 0,35 goes 0,40 does not; so it is", '"used ring; 0.35 goes 0.40 does not"')
      .replace("86,50", "86.50");
    expect(text).toContain("0,35..0,40");
    expect(readMeasurements(text, "measurements.csv", engine)).toEqual({
      measurements: expected,
      problems: [],
    });
  });

  test("columns in another order, left out or unknown", () => {
    const rows = "86.62,mm,diameter,TOP / Thrust,3,Bore,2026-03-02,blue";
    const { measurements, problems } = read(rows, "value,unit,quantity,at,label,part,date,colour");
    expect(problems).toEqual([]);
    expect(measurements).toEqual([
      {
        teardown: 1,
        date: "2026-03-02",
        part: "bore",
        label: "3",
        at: "top/thrust",
        quantity: "diameter",
        value: { kind: "length", value: mm(86.62) },
        unit: "mm",
        decimals: 2,
        state: "as found",
        line: 2,
      },
    ]);
  });

  test("a row can take the place of those before it, in the column instead", () => {
    const { measurements, problems } = read(
      "2026-03-02,pin,2,front/0,diameter,2.2485,in,yes\n2026-03-02,pin,2,front/0,diameter,2.2485,in,\n" +
        "2026-03-02,pin,2,front/0,diameter,2.2485,in,no",
      "date,part,label,at,quantity,value,unit,instead",
    );
    expect(problems).toEqual([]);
    expect(measurements.map(({ instead }) => instead)).toEqual([true, undefined, undefined]);
  });

  test("a zero that was written so that three decimals are no thousands tells of no digit", () => {
    const header = "date,part,label,at,quantity,value,unit";
    const row = "2026-03-02,bore,3,top/thrust,diameter,86.055,mm";
    const own = { delimiter: ";", decimalMark: ",", columns: header.split(",") } as const;
    const cells = Object.fromEntries(own.columns.map((name, i) => [name, row.split(",")[i] ?? ""]));
    expect(rowText(cells, own)).toContain("86,0550");
    const decimals = (rows: string, columns: string) => read(rows, columns).measurements[0]?.decimals;
    expect(decimals(rowText(cells, own), header.replaceAll(",", ";"))).toBe(3);
    expect(decimals(row, header)).toBe(3);
  });

  test("how many digits were written is kept, none of a fraction", () => {
    expect(["57.990", "58", "57,99", "0.35..0.4", "<0.04", "3-7/16", " 2.5 "].map(decimalsOf)).toEqual([
      3,
      0,
      2,
      2,
      2,
      undefined,
      1,
    ]);
  });

  test("an uncertainty of the owner's own stands in the column u", () => {
    const { measurements } = read(
      "2026-03-02,pin,2,front/0,diameter,2.0986,in,0.0001",
      "date,part,label,at,quantity,value,unit,u",
    );
    expect(measurements).toMatchObject([{ uncertainty: inches(0.0001) }]);
  });

  test("teardowns come one after the other, each by day", () => {
    const row = (teardown: number, date: string) => `${teardown},${date},crank,,,end play,0.15,mm,,,,,`;
    const rows = [row(2, "2026-03-02"), row(1, "2014-05-02"), row(1, "2014-05-01")].join("\n");
    expect(read(rows).measurements.map(({ date, line }) => `${date} ${line}`)).toEqual([
      "2014-05-01 4",
      "2014-05-02 3",
      "2026-03-02 2",
    ]);
  });

  test("volumes and forces in each of their units", () => {
    const rows = (["ml", "cm3", "in3"] as const)
      .map((unit) => `1,2026-03-02,chamber,3,,volume,2,${unit},burette,,,,`)
      .concat(["N", "kgf", "lbf"].map((unit) => `1,2026-03-02,spring,3in,outer/32.5,load,2,${unit},,,,,`))
      .join("\n");
    // 1 in = 25.4 mm, 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s2, all exact
    expect(read(rows).measurements.map(({ value }) => ("value" in value ? value.value : 0))).toEqual(
      [2e-6, 2e-6, 2 * 0.0254 ** 3, 2, 2 * 9.80665, 2 * 0.45359237 * 9.80665].map(
        (si) => expect.closeTo(si, 12) as number,
      ),
    );
  });

  test("thousandths by the names of the shop", () => {
    for (const unit of ["th", "TH", "thou", "mil"])
      expect(read(`1,2026-03-02,crank,,,end play,6,${unit},,,,,`).measurements).toMatchObject([
        { unit: "thou", value: { value: inches(0.006) } },
      ]);
  });

  test("a row that the program writes in a file with decimal commas is read as it was meant", () => {
    const file = `${header.replaceAll(",", ";")}\n1;2026-03-02;bore;3;top/thrust;diameter;86,62;mm;;;;;\n`;
    const cells = {
      date: "2026-03-02",
      part: "spring",
      label: "3ex",
      at: "32.5",
      quantity: "load",
      value: "1.234",
      unit: "kgf",
    };
    const row = rowText(cells, dialectOf(file, "measurements.csv"));
    const { measurements, problems } = readMeasurements(`${file}${row}\n`, "measurements.csv", engine);
    expect(problems).toEqual([]);
    expect(measurements[1]).toMatchObject({
      at: "32.5",
      value: { value: expect.closeTo(12.1014, 4) as number },
    });
  });
});

describe("what is wrong", () => {
  test.each([
    ["1,2026-03-02,bore,3,top/thrust,diameter,,mm,,,,,", ["measure-bad@2 ,"]],
    ["1,2026-03-02,bore,3,top/thrust,diameter,x,mm,,,,,", ["measure-bad@2 x"]],
    ["1,2026-03-02,bore,3,top/thrust,diameter,-,mm,,,,,", ["measure-bad@2 -"]],
    ["1,2026-03-02,bore,3,top/thrust,diameter,86.62,,,,,,", ["unit-missing@2 ,"]],
    ["1,2026-03-02,bore,3,top/thrust,diameter,86.62,bar,,,,,", ["unit-unknown@2 bar"]],
    ["1,2026-03-02,chamber,3,,volume,41,mm,,,,,", ["unit-unknown@2 mm"]],
    ["1,2026-03-02,chamber,3,,volume,41..42,ml,,,,,", ["measure-bad@2 41..42"]],
    ["1,2026-03-02,brog,3,top/thrust,diameter,86.62,mm,,,,,", ["word-unknown@2 brog"]],
    ["1,2026-03-02,bore,3,top/thrust,taper,0.1,mm,,,,,", ["word-unknown@2 taper"]],
    ["1,2026-03-02,bore,5,top/thrust,diameter,86.62,mm,,,,,", ["label-bad@2 5"]],
    ["1,2026-03-02,bore,3,left,diameter,86.62,mm,,,,,", ["place-bad@2 left"]],
    ["1,2026-03-02,bore,3,,crosshatch,gone,,,,,,", ["word-unknown@2 gone"]],
    ["1,2026-03-02,bore,3,,crosshatch,,,,,,,", ["word-unknown@2 ,"]],
    ["1,2026-03-02,bore,3,,crosshatch,part,mm,,,,,", ["caution measure-bad@2 mm"]],
    ["1,2.3.2026,crank,,,end play,0.15,mm,,,,,", ["date-bad@2 2.3.2026"]],
    ["1,,crank,,,end play,0.15,mm,,,,,", ["date-missing@2 ,"]],
    ["0,2026-03-02,crank,,,end play,0.15,mm,,,,,", ["number-range@2 0"]],
    ["1.5,2026-03-02,crank,,,end play,0.15,mm,,,,,", ["number-range@2 1.5"]],
    ["1,2026-03-02,crank,,,end play,0.15,mm,dial,fine,,,", ["measure-bad@2 fine"]],
    ["1,2026-03-02,crank,,,end play,0.15,mm,dial,0,,,", ["measure-bad@2 0"]],
    ["1,2026-03-02,crank,,,end play,0.15,mm,dial,10,,,", ["measure-bad@2 10"]],
    ["1,2026-03-02,crank,,,end play,0.15,mm,dial,0.01,,dirty,", ["word-unknown@2 dirty"]],
    [
      "1,2026-03-02,crank,,,end play,0.15,mm,=dial,0.01,,,=1",
      ["caution text-formula@2 =dial", "caution text-formula@2 =1"],
    ],
  ])("%s", (row, found) => {
    expect(faults(row)).toEqual(found);
    expect(read(row).problems.every(({ mend, expected: wanted }) => mend !== "" && wanted !== "")).toBe(true);
    expect(read(row).measurements.length).toBe(found.every((one) => one.startsWith("caution")) ? 1 : 0);
  });

  test("all faults of a row are named, and the rows without one are there", () => {
    const rows = [
      "1,3.5.2026,bore,9,side,diameter,+86,mm,,fine,,dirty,",
      "1,2026-03-02,crank,,,end play,0.15,mm,,,,,",
    ].join("\n");
    expect(faults(rows)).toEqual([
      "date-bad@2 3.5.2026",
      "word-unknown@2 dirty",
      "label-bad@2 9",
      "place-bad@2 side",
      "measure-bad@2 +86",
    ]);
    expect(read(rows).measurements.length).toBe(1);
  });

  test("a table without the columns that a figure needs is not read", () => {
    expect(faults("2026-03-02,bore,86.62", "date,part,value")).toEqual(["column-missing@1"]);
  });

  test("a near word is suggested, a unit is asked for in the units of the quantity", () => {
    const mend = (row: string) => read(row).problems[0]?.mend;
    expect(mend("1,2026-03-02,boer,3,top/thrust,diameter,86.62,mm,,,,,")).toBe("write bore");
    expect(mend("1,2026-03-02,bore,3,,score,nail catch,,,,,,")).toBe("write nail catches");
    expect(mend("1,2026-03-02,guide,3,top,bore,8,mm,,,,,")).toBe(
      "write 3in for the intake valve of cylinder 3, 3ex for its exhaust valve",
    );
    expect(read("1,2026-03-02,spring,3in,32,load,300,,,,,,").problems[0]?.expected).toBe(
      "one of: N, kgf, lbf",
    );
  });
});

test("whatever stands in a row, it becomes a measurement or is told, never both and never neither", () => {
  const cell = fc.oneof(
    fc.string({ maxLength: 12 }).map((text) => text.replace(/[",\r\n]/g, "")),
    fc.constantFrom(
      "bore",
      "ring",
      "3",
      "1/top",
      "top/thrust",
      "diameter",
      "end gap",
      "86.62",
      "mm",
      "x",
      "<0.1",
    ),
  );
  fc.assert(
    fc.property(fc.array(cell, { minLength: 13, maxLength: 13 }), (cells) => {
      const row = ["1", "2026-03-02", ...cells.slice(2)].join(",");
      const { measurements, problems } = read(row);
      expect(measurements.length === 1).toBe(problems.every(({ severity }) => severity === "caution"));
    }),
    { numRuns: 3_000 },
  );
});
