// The sentences of `history`: true of every logbook, short, odd or long. Readings invented.

import { expect, test } from "vitest";
import { newDesk } from "./desk.ts";
import { deskWith, oneSpeed, said, yearly } from "./years.ts";

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
  expect(out.replace(/^next .*$/m, "")).not.toMatch(/% a year/);
  expect(out).toContain("The last test is three years old.");
  const later = (await desk.type(["history", "pump", "--as-of", "2026-05-04"], { width: 200 })).out;
  expect(later).toContain("The last test is three years old.");
});

test("equal readings over the years are steady, and the screen tells what would have shown", async () => {
  const out = await said(await deskWith(yearly(2019, new Array<string>(8).fill("150 148 152 149"))));
  expect(out).toMatch(/^All four cylinders are steady\. The engine as a whole: no change shown/);
  expect(out).toMatch(
    /^No decline shown; \d\.\d % a year in one cylinder, \d\.\d % in all would have shown\.$/m,
  );
});

test("a long gap between tests is no course by itself", async () => {
  const dates = ["2008-05-03", "2008-09-03", "2009-05-03", "2009-09-03", "2018-09-03", "2019-05-03"];
  const out = await said(await deskWith(dates.map((date) => `${date}: 150 148 152 149`)));
  expect(out).toMatch(/^All four cylinders are steady\./);
  expect(out).toContain("The last test is seven years old.");
});

test("one cylinder is told by itself", async () => {
  const lines = yearly(2018, ["160", "158", "155", "151", "147", "142", "138", "133"]);
  const desk = await deskWith(lines, [], oneSpeed);
  expect(await said(desk)).toMatch(
    /^The cylinder is falling: 2\.\d % a year, at least \d\.\d % \(gauge not recorded, eight tests\)\.\n/,
  );
  expect(await said(desk)).toMatch(/^1 .* 160 +133 +-2\.\d +falling$/m);
  expect(await said(desk, "--cylinder", "1")).toContain("Cylinder 1, psi:");
  const short = await deskWith(yearly(2024, ["160", "158"]));
  expect(await said(short)).toMatch(
    /^One cylinder, so nothing to compare it with, and its own history is too short to tell\.\n/,
  );
});

test("of two cylinders the falling one is named where the engine does not rise, and the other only mirrors it", async () => {
  const out = await said(
    await deskWith(
      yearly(2019, ["150 150", "150 147", "151 144", "150 140", "149 136", "150 133", "150 130", "151 127"]),
    ),
  );
  expect(out).toMatch(
    /^Cylinder 2 is falling: 2\.\d % a year \(.*\) against the other since 2019, gradually\.\n/,
  );
  expect(out).toMatch(/^1 .* mirrors the other$/m);
  expect(out).not.toMatch(/rising/);
});

test("where the engine rises as a whole two cylinders cannot tell which one moved, and no date is foretold", async () => {
  const out = await said(
    await deskWith(
      yearly(2019, ["130 130", "134 131", "139 132", "143 132", "147 134", "152 134", "155 135", "160 136"]),
      [],
      oneSpeed,
    ),
  );
  expect(out).toMatch(
    /^Cylinder 2 has lost against 1, or 1 has gained, 2\.\d % a year \(.*\): two cylinders cannot tell which\.\n/,
  );
  expect(out.match(/one of the two$/gm)).toHaveLength(2);
  expect(out).not.toContain("At this rate");
});

test("after work on all cylinders the count begins anew", async () => {
  const desk = await deskWith(
    yearly(2019, [
      "150 148 140 149",
      "150 148 135 149",
      "150 148 130 150",
      "151 149 126 150",
      "165 168 166 167",
    ]),
  );
  await desk.type(["service", "pump", "--what", "re-ring", "--cylinders", "all", "--date", "2023-01-02"]);
  expect(await said(desk)).toMatch(
    /^Too short to tell: one test since the last work, and a course needs four\.(\n| The last test is)/,
  );
});

test("where every test is set aside there is no table to believe", async () => {
  const desk = await deskWith(yearly(2024, ["150 148 140 149", "150 148 135 149"]));
  for (const id of ["2024-05-03a", "2025-05-03a"])
    await desk.type([
      "amend",
      "pump",
      "--test",
      id,
      "--set-aside",
      "wrong adapter",
      "--because",
      "found later",
    ]);
  const out = await said(desk);
  expect(out).toMatch(
    /^No test counts yet, so no course\.\n\nShown but not counted: 2024-05-03a \(set aside\), 2025-05-03a \(set aside\)\./,
  );
  expect((await desk.type(["show", "pump"])).out).toMatch(/^Set aside.*wrong adapter/);
});

test("a meter axis is said in its unit where the tests span less than a year", async () => {
  const desk = await deskWith([], ["--meter", "h"]);
  const rows = [
    "2026-01-03: 150 148 152 149",
    "2026-02-03: 150 148 149 149",
    "2026-03-03: 151 149 146 150",
    "2026-04-03: 149 148 142 149",
    "2026-05-02: 150 148 139 150",
    "2026-05-03: 150 149 135 149",
  ];
  for (const [i, row] of rows.entries()) {
    const [date = "", readings = ""] = row.split(": ");
    const line = ["--dry", readings, "--unit", "psi", "--date", date, "--meter", String(1000 + 100 * i)];
    expect((await desk.type(["enter", "pump", ...line])).err).toBe("");
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
  expect(await said(desk)).toContain(
    "Valve job 2022-10-01: cylinder 3 rose 8 %, from the middle of the three tests before to the middle of the two tests after.",
  );
});

test("of many cylinders only those that stand out get a line, and --why gives one to each", async () => {
  const rows = Array.from({ length: 8 }, (_, test) =>
    Array.from({ length: 28 }, (_, i) => String(150 - (i % 3) - (i === 2 ? 2 * test : 0))).join(" "),
  );
  const desk = await deskWith(yearly(2018, rows));
  const { out } = await desk.type(["history", "pump"]);
  expect(out).toMatch(/^Cylinder 3 is falling: .*\nThe other 27 are steady\./s);
  expect(out).toMatch(/^the other 27: steady, -?\d\.\d to -?\d\.\d % at last/m);
  expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(20);
  const why = (await desk.type(["history", "pump", "--why"])).out;
  expect(why.split("\n").filter((line) => line.endsWith("   steady"))).toHaveLength(27);
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
