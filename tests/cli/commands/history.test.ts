// The screen and the document of `history`. Readings invented; what the demo should say stands in data/demo/README.md.

import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { numbersLost } from "./numbers.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));
const engines = ["tractor", "van", "boat", "mill", "pump", "ultralight"];

/** An engine with a dry test for each line `2020-05-03: 150 148`. */
const deskWith = async (lines: readonly string[], fields: readonly string[] = []): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  const count = lines[0]?.split(": ")[1]?.split(" ").length ?? 4;
  await desk.type(["engine", "add", "pump", "--cylinders", String(count), "--ignition", "spark", ...fields]);
  for (const line of lines) {
    const [date = "", readings = ""] = line.split(": ");
    const { exit, err } = await desk.type([
      "enter",
      "pump",
      "--date",
      date,
      "--dry",
      readings,
      "--unit",
      "psi",
    ]);
    if (exit !== 0) throw new Error(err);
  }
  return desk;
};
const said = async (desk: Desk, ...words: string[]): Promise<string> =>
  (await desk.type(["history", "pump", ...words], { width: 200 })).out;
const yearly = (from: number, rows: readonly string[]): string[] =>
  rows.map((row, i) => `${String(from + i)}-05-03: ${row}`);

test("no test: it says so, and what to type", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--cylinders", "4", "--ignition", "spark"]);
  expect(await said(desk)).toBe("pump has no test yet.\n");
});

test("one test gives no course", async () => {
  expect(await said(await deskWith(yearly(2026, ["150 148 152 149"])))).toBe(
    "One test only, so there is no course yet. What it says: sealtrend show pump\n\nnext   three more tests give a course; read each cylinder three times, that tells most\n",
  );
});

test("tests of one day count as one", async () => {
  const desk = await deskWith(["2026-05-03: 150 148 152 149", "2026-05-03: 151 149 150 148"]);
  expect(await said(desk)).toMatch(/^The tests of one day count as one, so there is no course yet\./);
});

test("two tests are too short to tell, and a drop between them asks for a repeat", async () => {
  expect(await said(await deskWith(yearly(2025, ["150 148 152 149", "149 149 151 150"])))).toMatch(
    /^Too short to tell: two tests so far, and a course needs four\.\n/,
  );
  expect(await said(await deskWith(yearly(2025, ["150 148 152 149", "149 149 128 150"])))).toMatch(
    /^Cylinder 3 has dropped about 1\d % against the others since the earlier tests: read it again before you believe it\. Too short to tell/,
  );
});

test("two tests nine years apart claim no rate and say how old they are", async () => {
  const desk = await deskWith(["2014-05-03: 150 148 152 149", "2023-05-03: 148 148 150 149"]);
  const out = await said(desk);
  expect(out).toContain("Too short to tell: two tests so far");
  expect(out).not.toMatch(/% a year/);
  expect(out).toContain("The last test is three years old.");
  const later = (await desk.type(["history", "pump", "--as-of", "2026-05-04"], { width: 200 })).out;
  expect(later).toContain("The last test is three years old.");
});

test("equal readings over the years are steady, and the screen tells what would have shown", async () => {
  const out = await said(await deskWith(yearly(2019, new Array<string>(8).fill("150 148 152 149"))));
  expect(out).toMatch(/^All four cylinders are steady\. The engine as a whole: no change shown/);
  expect(out).toMatch(/No decline shown; a loss of \d\.\d % a year would have shown\./);
});

test("a long gap between tests is no course by itself", async () => {
  const dates = ["2008-05-03", "2008-09-03", "2009-05-03", "2009-09-03", "2018-09-03", "2019-05-03"];
  const out = await said(await deskWith(dates.map((date) => `${date}: 150 148 152 149`)));
  expect(out).toMatch(/^All four cylinders are steady\./);
  expect(out).toContain("The last test is seven years old.");
});

test("one cylinder is told by itself", async () => {
  const desk = await deskWith(yearly(2018, ["160", "158", "155", "151", "147", "142", "138", "133"]));
  expect(await said(desk)).toMatch(
    /^The cylinder is falling: 2\.\d % a year \(gauge not recorded, eight tests\)\.\n/,
  );
  const short = await deskWith(yearly(2024, ["160", "158"]));
  expect(await said(short)).toMatch(
    /^One cylinder, so nothing to compare it with, and its own history is too short to tell\.\n/,
  );
});

test("two cylinders mirror each other, so one sentence says what is known and neither is called rising", async () => {
  const out = await said(
    await deskWith(
      yearly(2019, ["150 150", "150 147", "151 144", "150 140", "149 136", "150 133", "150 130", "151 127"]),
    ),
  );
  const [first = ""] = out.split("\n");
  expect(first).toMatch(/^Cylinder 2 is falling|^Cylinder 2 has lost against 1, or 1 has gained/);
  expect(out).not.toMatch(/1 is rising|Cylinder 1 (?:has|is)/);
});

test("a meter axis is said in its unit where the years are too few for a rate", async () => {
  const desk = await deskWith([], ["--meter", "h"]);
  await desk.type(["engine", "set", "pump", "meter", "h"]);
  const rows = [
    "150 148 152 149",
    "150 148 149 149",
    "151 149 146 150",
    "149 148 142 149",
    "150 148 139 150",
    "150 149 135 149",
  ];
  for (const [i, readings] of rows.entries()) {
    const line = [
      "--date",
      `2026-0${String(Math.min(5, 1 + i))}-0${String(i + 1 > 3 ? 3 : i + 1)}`,
      "--meter",
      String(1000 + 100 * i),
    ];
    const { exit, err } = await desk.type(["enter", "pump", "--dry", readings, "--unit", "psi", ...line]);
    expect(err).toBe("");
    expect(exit).toBe(0);
  }
  const out = await said(desk);
  expect(out).toMatch(/each 1000 h/);
  expect(out).not.toMatch(/% a year/);
});

test("a cylinder that held nothing at the last test stands first", async () => {
  const rows = [...new Array<string>(4).fill("150 148 152 149"), "150 148 0 149"];
  expect(await said(await deskWith(yearly(2022, rows)))).toMatch(
    /^Cylinder 3 held nothing at the last test\./,
  );
});

test("work shows what it did, against the cylinders left alone", async () => {
  const desk = await deskWith(
    yearly(2019, [
      "150 152 149 151",
      "147 148 140 147",
      "155 157 143 155",
      "149 151 133 150",
      "151 153 150 152",
      "148 150 149 149",
    ]),
  );
  await desk.type(["service", "pump", "--what", "valve job", "--cylinders", "3", "--date", "2022-10-01"]);
  // statistics.md L.11 5: "rose 8.3 %"
  expect(await said(desk)).toContain("Valve job 2022-10-01: cylinder 3 rose 8 %.");
});

test("the demo says what its README says", async () => {
  const first = async (engine: string): Promise<string> =>
    (await newDesk().type(["history", engine, "--logbook", demo], { width: 200 })).out.split("\n")[0] ?? "";
  expect(await first("tractor")).toMatch(
    /^Cylinder 3 is falling: 1\.\d % a year \(.*\) against the others since 2014, gradually\.$/,
  );
  expect(await first("van")).toMatch(/^All four cylinders are steady\./);
  expect(await first("boat")).toBe("Cylinder 5 stepped down by about 15 % at the test of 2026-05-09.");
  expect(await first("pump")).toMatch(/^Too short to tell: three tests so far/);
  expect(await first("ultralight")).toMatch(/^All four cylinders are steady\./);
});

test("--cylinder draws one, and an unknown one is named with those there are", async () => {
  const desk = newDesk();
  const drawn = await desk.type(["history", "tractor", "--cylinder", "3", "--logbook", demo]);
  expect(drawn.out).toContain("Cylinder 3 against the others, percent:");
  const wrong = await desk.type(["history", "tractor", "--cylinder", "5", "--logbook", demo]);
  expect(wrong.exit).toBe(2);
  expect(wrong.err).toContain("one of: 1, 2, 3, 4");
});

test("--long lists every reading once, a leak-down without a sea level", async () => {
  const desk = newDesk();
  const rows = async (engine: string) =>
    (await desk.type(["history", engine, "--long", "--logbook", demo], { width: 120 })).out
      .split("\n")
      .filter((line) => /^\d{4}-\d{2}-\d{2} /.test(line));
  expect(await rows("tractor")).toHaveLength(40);
  expect(await rows("ultralight")).toHaveLength(24);
  const { out } = await desk.type(["history", "ultralight", "--long", "--logbook", demo]);
  expect(out).not.toContain("sea level");
});

test("--why tells what each word rests on", async () => {
  const { out } = await newDesk().type(["history", "tractor", "--why", "--logbook", demo], { width: 200 });
  expect(out).toMatch(
    /3: ten tests since 2014-10-04, -1\.\d\d % a year \(.* sure\).*alarm: both last readings below the first three, slope beyond chance\./,
  );
  expect(out).toMatch(/1: .*no alarm\./);
});

test("--as-of tells the history as it stood", async () => {
  const document = await newDesk().json("history", "tractor", "--as-of", "2016-12-31", "--logbook", demo);
  const { tests } = document as { tests: { date: string }[] };
  expect(tests.every(({ date }) => date <= "2016-12-31")).toBe(true);
  expect(tests.length).toBeGreaterThan(0);
});

test.each([40, 60, 80, 120])("%i columns: no line is longer", async (width) => {
  for (const engine of engines)
    for (const words of [[], ["--why"], ["--cylinder", "1"]]) {
      const { out } = await newDesk().type(["history", engine, ...words, "--logbook", demo], { width });
      for (const line of out.split("\n")) expect([...line].length).toBeLessThanOrEqual(width);
    }
});

test("the demo's histories fit 24 lines of 80", async () => {
  for (const engine of engines) {
    const { out } = await newDesk().type(["history", engine, "--logbook", demo]);
    expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
  }
});

test("--ascii is ASCII, chart and list too", async () => {
  for (const engine of engines) {
    const { out } = await newDesk().type([
      "history",
      engine,
      "--ascii",
      "--why",
      "--long",
      "--cylinder",
      "1",
      "--logbook",
      demo,
    ]);
    expect(out).toMatch(/^[\x20-\x7e\n]*$/);
  }
});

test("every number on the screen stands in the document", async () => {
  for (const engine of engines)
    for (const words of [[], ["--why"]]) {
      const desk = newDesk();
      const { out } = await desk.type(["history", engine, ...words, "--logbook", demo], { width: 200 });
      expect(numbersLost(out, await desk.json("history", engine, "--logbook", demo)), engine).toEqual([]);
    }
});

test("28 cylinders, each with its line", async () => {
  const row = Array.from({ length: 28 }, (_, i) => String(150 - (i % 3))).join(" ");
  const desk = await deskWith(yearly(2020, new Array<string>(5).fill(row)));
  const { out } = await desk.type(["history", "pump"]);
  expect(out.split("\n").filter((line) => line.endsWith("   steady"))).toHaveLength(28);
});

// What a spreadsheet in a comma country makes of the file (tooling.md C.3).
test("a file saved by a spreadsheet, with ; and decimal commas, BOM, CRLF and rows sorted otherwise, says the same", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--cylinders", "6", "--ignition", "spark"]);
  const rows = [
    "10.3 10.2 10.5 10.3 10.4 10.2",
    "10.2 10.3 10.1 10.3 10.4 10.2",
    "10.4 10.2 9.8 10.3 10.4 10.1",
    "10.3 10.1 9.4 10.3 10.2 10.2",
    "10.3 10.2 9.1 10.4 10.4 10.2",
    "10.4 10.2 8.7 10.3 10.3 10.2",
  ];
  for (const [i, readings] of rows.entries())
    await desk.type([
      "enter",
      "pump",
      "--dry",
      readings,
      "--unit",
      "bar",
      "--date",
      `${String(2019 + i)}-05-03`,
      "--altitude",
      "350m",
      "--air",
      "12.5C",
      "--note",
      "by hand",
    ]);
  const before = [await desk.json("show", "pump"), await desk.json("history", "pump")];
  const [head = "", ...lines] = desk.text("logbook/pump/tests.csv").trimEnd().split("\n");
  const saved = [head, ...lines.toReversed()].map((line) =>
    line.replaceAll(",", ";").replace(/(\d)\.(\d)/g, "$1,$2"),
  );
  desk.put("logbook/pump/tests.csv", `\ufeff${saved.join("\r\n")}\r\n`);
  expect([await desk.json("show", "pump"), await desk.json("history", "pump")]).toEqual(before);
  const entered = await desk.type([
    "enter",
    "pump",
    "--dry",
    "10.3 10.2 8.6 10.3 10.4 10.2",
    "--unit",
    "bar",
    "--air",
    "11.5C",
  ]);
  expect(entered.exit).toBe(0);
  const last = desk.text("logbook/pump/tests.csv").trimEnd().split("\r\n").at(-1) ?? "";
  expect(last).toContain(";10,3;10,2;8,6;10,3;10,4;10,2;");
  expect(last).toContain(";11,5;");
});
