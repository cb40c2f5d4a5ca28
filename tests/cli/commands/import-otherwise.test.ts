// What the sheet says otherwise than the record, the map or the option: told, never passed over. Figures invented.

import { describe, expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { rowsOf } from "./import-desk.ts";

const head = "Date,Hours,Gauge,By,1,2,Remarks\n";
const first = `${head}2018-05-03,2100,red,me,128,127,\n2020-05-19,,red,me,127,126,\n`;
const typed = ["import", "old.csv", "--engine", "saw-mill", "--unit", "psi", "--what", "dry"];

/** A desk with a sheet that came in. */
const recorded = async (text: string, line: readonly string[] = typed): Promise<Desk> => {
  const desk = newDesk();
  desk.put("old.csv", text);
  expect((await desk.type([...line, "--write"])).exit).toBe(0);
  return desk;
};

const flat = (text: string): string => text.replace(/\s+/g, " ");
/** The commands that a screen offers, as they can be typed. */
const amendsIn = (text: string): readonly (readonly string[])[] =>
  [...flat(text).matchAll(/sealtrend (amend .*? --because "the sheet says so")/g)].map(([, line = ""]) =>
    [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, inQuotes, plain]) => inQuotes ?? plain ?? ""),
  );

describe("facts beside figures that are recorded", () => {
  const changed = `${head}2018-05-03,2110,red,me,128,127,\n2020-05-19,2350,blue,Jo,127,126,plugs new\n`;

  test("are told, with lines that make the record say the same", async () => {
    const desk = await recorded(first);
    desk.put("old.csv", changed);
    const told = await desk.type(typed);
    expect(told.exit).toBe(0);
    expect(flat(told.out)).toContain("at 2 places the sheet says more, or otherwise. Nothing was added.");
    expect(flat(told.out)).toContain("the sheet says meter 2110 (recorded: 2100)");
    expect(flat(told.out)).toContain(
      "meter 2350 (recorded: none), by Jo (recorded: me), gauge blue (recorded: red), note plugs new (recorded: none)",
    );
    const lines = amendsIn(told.out);
    expect(lines).toHaveLength(2);
    for (const line of lines) expect((await desk.type(line)).exit).toBe(0);
    expect(flat((await desk.type(typed)).out)).toContain("4 readings, 2018 to 2020. Nothing was added.");
    expect(rowsOf(desk, "saw-mill")[1]).toMatchObject({
      meter: "2350",
      gauge: "blue",
      by: "Jo",
      note: "plugs new",
    });
  });

  test("are not told again where the record was amended and the sheet is as it was", async () => {
    const desk = await recorded(first);
    const mend = ["--test", "2018-05-03a", "--meter", "2111", "--because", "misread"];
    expect((await desk.type(["amend", "saw-mill", ...mend])).exit).toBe(0);
    expect(flat((await desk.type(typed)).out)).toContain("4 readings, 2018 to 2020. Nothing was added.");
  });

  test("conditions, and remarks of one row among several, are told with what picks them", async () => {
    const line = ["import", "old.csv", "--engine", "duo", "--unit", "psi"];
    const sheet = (air: string, note: string): string =>
      `Date,Test,Air temp C,1,2,Remarks\n2020-03-01,dry,${air},100,101,\n2020-03-01,wet,${air},110,111,${note}\n`;
    const desk = await recorded(sheet("20", ""), line);
    desk.put("old.csv", sheet("22", "second"));
    const { out } = await desk.type(line);
    const lines = amendsIn(out);
    expect(lines.map((words) => words.slice(4, -2).join(" "))).toEqual([
      "--air 22C",
      "--what wet --take 1 --note second",
    ]);
    for (const words of lines) expect((await desk.type(words)).exit).toBe(0);
    expect((await desk.type(line)).out).not.toContain("worth a look");
  });

  test("stand in the document", async () => {
    const desk = await recorded(first);
    desk.put("old.csv", changed);
    const { out } = await desk.type([...typed, "--json"]);
    const { worthALook } = JSON.parse(out) as { readonly worthALook: readonly { readonly code: string }[] };
    expect(worthALook.map(({ code }) => code)).toEqual(["import-otherwise", "import-otherwise"]);
  });
});

test("a test whose day was corrected in the sheet is told before it comes in twice", async () => {
  const desk = await recorded(first);
  desk.put("old.csv", first.replace("2018-05-03", "2018-05-04"));
  const { out } = await desk.type(typed);
  expect(flat(out)).toContain(
    "the figures of saw-mill on 2018-05-04 are recorded on 2018-05-03 (2018-05-03a), a day that the sheet does not have",
  );
  for (const line of amendsIn(out)) expect((await desk.type(line)).exit).toBe(0);
  expect(flat((await desk.type(typed)).out)).toContain("is recorded already: 4 readings");
});

test("another test with the same figures, the first one still in the sheet, is none", async () => {
  const desk = await recorded(first);
  desk.put("old.csv", `${first}2022-05-03,2800,red,me,128,127,\n`);
  const { out } = await desk.type(typed);
  expect(out).toContain("Would add 2 readings");
  expect(out).not.toContain("worth a look");
});

describe("a sheet in another unit", () => {
  const inBar = ["import", "old.csv", "--engine", "saw-mill", "--unit", "bar", "--what", "dry"];
  const plain = "Date,1,2\n2021-01-05,140,142\n";

  // 140 psi are 9.653 bar, 142 psi 9.791 bar: 1 psi = 6.894757 kPa (exact by definition of pound-force and inch)
  test("has the same test where its figures are equal as far as they were read", async () => {
    const desk = await recorded(plain);
    desk.put("old.csv", "Date,1,2\n2021-01-05,9.7,9.8\n");
    expect(flat((await desk.type(inBar)).out)).toContain("is recorded already: 2 readings");
  });

  test("that differs is told with the figure in the unit of the record", async () => {
    const desk = await recorded(plain);
    desk.put("old.csv", "Date,1,2\n2021-01-05,9.2,9.8\n");
    const { exit, out } = await desk.type(inBar);
    expect(exit).toBe(1);
    expect(flat(out)).toContain(
      "amend saw-mill --test 2021-01-05a --what dry --cylinder 1 --to 133 --because sheet",
    );
  });
});

describe("--ignition", () => {
  const sheet = "Machine,Date,1,2\nPlough,2020-01-02,100,101\nMill,2020-01-02,99,98\n";
  const byMap = ["import", "old.csv", "--map", "map.json"];
  const desk = async (plough: string): Promise<Desk> => {
    const own = newDesk();
    own.put("old.csv", sheet);
    await own.type([...byMap, "--unit", "psi", "--what", "dry"]);
    own.put("map.json", own.text("map.json").replace('"unknown"', `"${plough}"`));
    return own;
  };

  test("fills what the map leaves open", async () => {
    const own = await desk("spark");
    expect((await own.type([...byMap, "--ignition", "spark", "--write"])).exit).toBe(0);
    const ignitions = ["plough", "mill"].map(
      (id) =>
        (JSON.parse(own.text(`data/sealtrend/${id}/engine.json`)) as { readonly ignition: string }).ignition,
    );
    expect(ignitions).toEqual(["spark", "spark"]);
  });

  test("goes before nothing that the map says", async () => {
    const own = await desk("compression");
    const { exit, err } = await own.type([...byMap, "--ignition", "spark", "--write"]);
    expect(exit).toBe(2);
    expect(err).toContain("--ignition spark, and the map says compression of plough");
    expect((await own.type([...byMap, "--write"])).exit).toBe(0);
    expect(own.text("data/sealtrend/plough/engine.json")).toContain('"ignition": "compression"');
  });
});

test("how many readings name their own unit or supply is on the screen and in the document", async () => {
  const desk = newDesk();
  desk.put("old.csv", "Date,Test,1,2\n2022-06-01,leak-down,76/80,71/80\n2022-06-01,Leak %,7,9\n");
  const line = ["import", "old.csv", "--engine", "glider", "--unit", "psi", "--regulated", "100psi"];
  const { out } = await desk.type(line);
  expect(flat(out)).toContain("unit psi, save for those that name their own: 2 in %");
  expect(flat(out)).toContain("regulated_psi 100, save for those that name their own: 2");
  expect(JSON.parse((await desk.type([...line, "--json"])).out)).toMatchObject({
    ownUnits: [{ unit: "%", readings: 2 }],
    ownSupplies: 2,
  });
});

test("help and manual say what a map may hold", async () => {
  const desk = newDesk();
  const help = flat((await desk.type(["import", "--help"])).out);
  const manual = flat((await desk.type(["manual"])).out);
  for (const word of ["lastRow", "sameDay", "notTaken", "take", "conditions"]) {
    expect(help).toContain(` ${word} `);
    expect(manual).toContain(` ${word} `);
  }
  expect(help).toContain("station_pressure_hPa");
});
