// What `history` finds that no look at one test shows, and what it must not say. Readings invented.

import { expect, test } from "vitest";
import { deskWith, said, yearly } from "./years.ts";

const four = (level: number): string =>
  `${String(level)} ${String(level + 1)} ${String(level - 1)} ${String(level)}`;
const levels = [150, 147, 144, 141, 138, 135, 132, 129, 126, 123, 120, 117, 114, 111];

test("a fall of the whole engine stands first, with what is left above the maker's minimum", async () => {
  const desk = await deskWith(yearly(2012, levels.map(four)));
  await desk.type(["engine", "set", "pump", "limits.compression.minimum", "100psi"]);
  const out = await said(desk);
  expect(out).toMatch(
    /^The engine as a whole is falling: 2\.\d % a year, at least \d\.\d % \(.*\)\. All four cylinders are steady against one another\.\n/,
  );
  expect(out).toMatch(
    /Cylinder 3, the lowest, last read 110 psi; at this rate it reaches the maker's minimum of 100 psi about 20\d{2}-\d{2} \(.*8 chances in 10\)\./,
  );
  expect(out).toContain("Against one another no decline shown;");
});

test("an engine under the maker's minimum is said to be", async () => {
  const desk = await deskWith(yearly(2012, levels.map(four)));
  await desk.type(["engine", "set", "pump", "limits.compression.minimum", "111.5psi"]);
  expect(await said(desk)).toMatch(
    /Cylinder 3, the lowest, last read 110 psi, under the maker's minimum of 11\d psi, as three of four do\./,
  );
});

test("a word on the whole engine that only just passes says so", async () => {
  const slight = Array.from({ length: 14 }, (_, i) => four(Math.round(150 - 1.6 * i)));
  expect(await said(await deskWith(yearly(2012, slight)))).toMatch(
    /The engine as a whole seems to be falling: 1\.1 % a year \(about 1 in 4\d by chance; gauge not recorded, 14 tests\)/,
  );
});

test("a step up is told as a step, between its two tests, and gets no rate", async () => {
  const third = [149, 149, 175, 176, 174, 175, 175, 176];
  const rows = third.map((value, i) => `150 ${String(148 + (i % 2))} ${String(value)} 150`);
  const out = await said(await deskWith(yearly(2015, rows)));
  expect(out).toMatch(
    /^Cylinder 3 rose about 1[78] % against the others between 2016-05-03 and 2017-05-03: was there a service that is not written down\?\n/,
  );
  expect(out).toMatch(/^3 .* - +rising$/m);
});

test("a reading of 0 between sound ones is drawn, and named", async () => {
  const rows = ["150 148 152 149", "150 149 151 149", "150 148 0 149", "151 148 152 149", "150 149 152 149"];
  const desk = await deskWith(yearly(2020, rows));
  const out = await said(desk);
  expect(out).toMatch(/^3 .*0.*[▁-█]/m);
  expect(out).toContain("Cylinder 3 held nothing on 2022-05-03, which stands in no average and no slope.");
  expect(await said(desk, "--cylinder", "3")).toContain("below the scale");
});

test("a cylinder that held nothing in every test is named, and its row says so", async () => {
  const out = await said(await deskWith(yearly(2022, new Array<string>(4).fill("150 148 0 149"))));
  expect(out).toMatch(/^Cylinder 3 held nothing at the last test\./);
  expect(out).toMatch(/^3 .*held 0 +held 0/m);
});

test("100 % lost is named like a reading of 0", async () => {
  const desk = await deskWith([]);
  for (const [i, row] of ["8 7 9 8", "8 8 9 7", "8 7 100 8", "8 7 9 8"].entries())
    await desk.type([
      "enter",
      "pump",
      "--leak-down",
      row,
      "--unit",
      "%",
      "--date",
      `${String(2020 + i)}-05-03`,
    ]);
  expect(await said(desk)).toContain("Cylinder 3 held nothing on 2022-05-03");
});

test("another leak-down tester begins the history anew and no fall is told across it", async () => {
  const desk = await deskWith([]);
  const rows = ["8 7 9 8", "8 8 9 7", "8 7 9 8", "28 27 29 28", "28 28 29 27"];
  for (const [i, row] of rows.entries()) {
    const gauge = i < 3 ? "small" : "large";
    await desk.type([
      "enter",
      "pump",
      "--leak-down",
      row,
      "--unit",
      "%",
      "--date",
      `${String(2020 + i)}-05-03`,
      "--gauge",
      gauge,
    ]);
  }
  const out = await said(desk);
  expect(out).toMatch(/^Too short to tell: two tests since the tester changed/);
  expect(out).toContain(
    "Another tester from 2023-05-03 on: it reads otherwise, so the leak-down begins anew there",
  );
  expect(out).not.toMatch(/ fell | rose /);
});

test("a cylinder that stays low is said to, however steady", async () => {
  const desk = await deskWith(yearly(2020, new Array<string>(6).fill("150 149 122 151")));
  expect(await said(desk)).toMatch(
    /^All four cylinders are steady, but 3 has read 19 % under the others all along\./,
  );
});

test("a drop in one of two cylinders is told as such, and the other only mirrors it", async () => {
  const out = await said(await deskWith(yearly(2024, ["150 150", "150 128"])));
  expect(out).toMatch(
    /^Cylinder 2 has dropped about 15 % against 1 since the earlier tests, or 1 has gained: read both again/,
  );
});

test("a line that reached its limit after the last test would have, not has", async () => {
  const third = [150, 148, 144, 141, 137, 134, 130, 127, 124, 120];
  const rows = third.map((value) => `150 149 ${String(value)} 150`);
  const desk = await deskWith(yearly(2010, rows));
  const out = await said(desk);
  expect(out).toMatch(
    /By this line 3 would have reached 0\.75 of the others \(20\d{2}-\d{2} to 20\d{2}-\d{2}/,
  );
});

test("a meter crossing is given in three digits", async () => {
  const desk = await deskWith([], ["--meter", "h"]);
  for (const [i, value] of [150, 146, 142, 138, 134, 130, 126].entries())
    await desk.type(
      [
        "enter",
        "pump",
        "--dry",
        `150 149 ${String(value)} 151`,
        "--unit",
        "psi",
        "--date",
        `${String(2019 + i)}-05-03`,
      ].concat("--meter", String(4001 + 113 * i)),
    );
  expect(await said(desk)).toMatch(/reaches 0\.75 of the others at about \d{3}0 h \(\d{3}0 h to \d{3}0 h/);
});

test("the document holds no number that is none, whole-engine work included", async () => {
  const desk = await deskWith(yearly(2019, [150, 149, 150, 165, 166].map(four)));
  await desk.type(["service", "pump", "--what", "head off", "--cylinders", "all", "--date", "2021-10-01"]);
  const { out } = await desk.type(["history", "pump", "--json"]);
  expect(out).not.toMatch(/NaN|Infinity/);
  expect(out.replace(/"(?:contrasts|ratios|effects|corrected_kPa)": \[[^\]]*\]/g, "")).not.toContain("null");
  const { services } = (await desk.json("history", "pump")) as { services: { steps: object[] }[] };
  expect(services[0]?.steps[0]).not.toHaveProperty("df");
});
