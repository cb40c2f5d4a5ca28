// What `history` may not claim: a date that is over, a loss of more than all, a cylinder not read, a rate of a step.
// Readings invented.

import { expect, test } from "vitest";
import { misfits, schemaOf } from "./fits-schema.ts";
import { numbersLost } from "./numbers.ts";
import { deskWith, oneSpeed, said, yearly } from "./years.ts";

const third = (values: readonly (number | string)[]): readonly string[] =>
  values.map((value, i) => `150 ${String(148 + (i % 2))} ${String(value)} 149`);

test("a cylinder under its limit is said to be, with no date on which it was reached", async () => {
  const desk = await deskWith(yearly(2016, third([150, 144, 138, 132, 126, 120, 115, 110])), [], oneSpeed);
  const out = await said(desk);
  // 110 to the middle of 150, 149 and 149
  expect(out).toContain("Cylinder 3 last read 0.74 of the others, under 0.75.");
  expect(out).not.toMatch(/By this line|At this rate/);
  expect(numbersLost(out, await desk.json("history", "pump"))).toEqual([]);
});

test("a day that is over is no forecast", async () => {
  const desk = await deskWith(yearly(2008, ["150 148 152", "151 148 150", "149 148 151", "150 147 152"]));
  await desk.type(["engine", "set", "pump", "limits.compression.minimum", "120psi"]);
  const out = await said(desk);
  expect(out).toMatch(/last read 147 psi; the maker's minimum is 120 psi\./);
  expect(out).not.toContain("9 chances in 10");
});

test("a loss that would have shown is never more than all there is", async () => {
  const dates = ["2026-05-03", "2026-05-08", "2026-05-13", "2026-05-18", "2026-05-23"];
  const out = await said(await deskWith(dates.map((date, i) => `${date}: 150 ${String(148 + (i % 3))} 152`)));
  for (const [, loss = ""] of out.matchAll(/(\d+\.\d) %/g)) expect(Number(loss)).toBeLessThan(100);
  // five tests in three weeks carry no rate a year
  expect(out).toMatch(/^1 .* - +too short$/m);
});

test("a cylinder without a reading in the last test is named, with the day of its last one", async () => {
  const desk = await deskWith(yearly(2017, third([150, 151, 150, 149, 151, ">160", ">160"])), [], oneSpeed);
  const text = "Without a reading that counts in the last test: 3 (last 2021-05-03).";
  expect(await said(desk)).toContain(text);
  expect(await said(desk, "--cylinder", "3")).toContain(text);
  expect(await said(desk, "--cylinder", "1")).not.toContain("Without a reading");
});

test("one that fell steadily from the first test on is falling, however fast", async () => {
  const out = await said(
    await deskWith(yearly(2014, third([150, 139, 129, 121, 113, 105, 98, 91])), [], oneSpeed),
  );
  expect(out).toMatch(
    /^Cylinder 3 is falling: [67]\.\d % a year \(.*\) against the others since 2014, gradually\./,
  );
});

test("one that went between the first and the second test stepped down, and no rate is told of it", async () => {
  const out = await said(await deskWith(yearly(2018, third([150, 128, 129, 128, 129, 128])), [], oneSpeed));
  expect(out).toMatch(/^Cylinder 3 stepped down by about 14 % between 2018-05-03 and 2019-05-03\./);
  expect(out).toMatch(/^3 .* - +stepped down$/m);
});

test("one that went on down after its first low test is not said to have gone in one step", async () => {
  const desk = await deskWith(yearly(2018, third([150, 134, 118])), [], oneSpeed);
  const out = await said(desk);
  expect(out.replace(/\s+/g, " ")).toMatch(
    /^Cylinder 3 stepped down by about \d+ % between 2018-05-03 and 2019-05-03, and read 21 % under the others on 2020-05-03: a step or a steady loss, that cannot be told yet\./,
  );
  expect(numbersLost(out, await desk.json("history", "pump"))).toEqual([]);
  // the same low twice is one step
  expect(await said(await deskWith(yearly(2018, third([150, 128, 128])), [], oneSpeed))).not.toContain(
    "cannot be told yet",
  );
});

test("a slow fall across a repair is not laid to the repair", async () => {
  const desk = await deskWith(
    yearly(2016, third([150, 146, 142, 138, 134, 130, 126, 123, 119])),
    [],
    oneSpeed,
  );
  await desk.type(["service", "pump", "--what", "valve job", "--cylinders", "3", "--date", "2020-11-01"]);
  expect(await said(desk)).toMatch(
    /Valve job 2020-11-01: cylinder 3 fell \d+ % from the three tests before to the three tests after; wear of those years is in it\./,
  );
});

test("--cylinder gives the interval of the slope, and a lone cylinder what it loses at most", async () => {
  const desk = await deskWith(yearly(2016, third([150, 151, 150, 149, 151, 150, 150, 151])), [], oneSpeed);
  expect(await said(desk, "--cylinder", "1")).toMatch(
    /^Cylinder 1 is steady \(-?\d\.\d to \+?\d\.\d % a year\), 0\.\d % (over|under) the others on average\./,
  );
  const alone = await deskWith(yearly(2000, new Array<string>(20).fill("150")), [], oneSpeed);
  expect(await said(alone)).toMatch(/^The cylinder is steady: at most \d\.\d % a year lost \(/);
  expect(await said(alone, "--why")).toMatch(
    /^20 tests since 2000-05-03, 0\.00 % a year \(-.* to \+.* %, 90 % sure\)\.$/m,
  );
});

test("one and two cylinders are told how soon a loss of 3 % a year would show, and it stands in the document", async () => {
  const gauge = [...oneSpeed, "--gauge", "red"];
  const one = await deskWith(yearly(2010, new Array<string>(12).fill("150")), [], gauge);
  expect(await said(one)).toMatch(
    /^next {3}a loss of 3 % a year from now on shows after \w+ more tests, one a year, by the same gauge \(8 chances in 10\)$/m,
  );
  const two = await deskWith(yearly(2015, new Array<string>(8).fill("150 149")), [], gauge);
  expect(await said(two)).toMatch(
    /^next {3}a cylinder losing 3 % a year from now on shows after \w+ more tests, one a year \(8 chances in 10\).*; both alike after \w+ by the same gauge$/m,
  );
  for (const desk of [one, two]) {
    const document = await desk.json("history", "pump");
    expect(misfits(document, schemaOf("history"))).toEqual([]);
    expect(document).toMatchObject({ further: { whole: { began: "last-test", gauge: "red" } } });
  }
  const four = await deskWith(yearly(2015, new Array<string>(8).fill("150 149 151 150")), [], gauge);
  expect(await said(four)).not.toContain("alike");
  expect(await said(four, "--why")).toMatch(
    /^All four losing 3 % a year alike from now on show after \w+ more tests, one a year, by the same gauge \(8 chances in 10\)\.$/m,
  );
});

test("a cylinder that fell as another gauge came is to be read with the old one once more", async () => {
  const desk = await deskWith(
    yearly(2016, third([131, 130, 131, 130, 131, 130])),
    [],
    [...oneSpeed, "--gauge", "red"],
  );
  const words = ["--dry", "150 149 112 149", "--unit", "psi", "--date", "2022-05-03", ...oneSpeed];
  await desk.type(["enter", "pump", ...words, "--gauge", "black"]);
  expect(await said(desk)).toContain(
    "Cylinder 3 fell as gauge black came; a needle that does not start at zero can make a part of that: read it once more with red.",
  );
  const same = await deskWith(
    yearly(2016, third([131, 130, 131, 130, 131, 112])),
    [],
    [...oneSpeed, "--gauge", "red"],
  );
  expect(await said(same)).not.toContain("does not start at zero");
});

test("repeats that move one way in every cylinder are not counted as independent by --why", async () => {
  const desk = await deskWith([]);
  const takes = ["150 148 152 149", "152 150 153 151", "154 151 155 152"];
  for (const date of ["2025-05-03", "2026-05-03"])
    await desk.type([
      "enter",
      "pump",
      ...takes.flatMap((take) => ["--dry", take]),
      "--unit",
      "psi",
      "--date",
      date,
    ]);
  expect((await said(desk, "--why")).replace(/\s+/g, " ")).toContain(
    "They rise from the first to the last in every cylinder, as oil on the rings or a warming engine makes them: wait between them, or count them as one.",
  );
  expect(await desk.json("history", "pump")).toMatchObject({ repeatability: { trend: "up" } });
});

test("on the meter --why gives the rate by the meter beside that by the year", async () => {
  const desk = await deskWith([], ["--meter", "h"]);
  for (const i of [0, 1, 2, 3, 4, 5]) {
    const day = ["--date", `${String(2019 + i)}-05-03`, "--meter", String(4000 + 100 * i)];
    await desk.type([
      "enter",
      "pump",
      "--dry",
      `150 148 ${String(152 - 3 * i)} 149`,
      "--unit",
      "psi",
      ...day,
    ]);
  }
  // 100 h a year: ten times as much each 1000 h, in ln units
  const [, year = "", hours = ""] =
    /^3: .*?, (-\d+\.\d\d) % a year.*?, (-\d+\.\d\d) % each 1000 h;/m.exec(await said(desk, "--why")) ?? [];
  expect(Math.log1p(Number(hours) / 100) / Math.log1p(Number(year) / 100)).toBeCloseTo(10, 0);
});

test("two cylinders are steady against each other, and that is said", async () => {
  const out = await said(await deskWith(yearly(2015, new Array<string>(8).fill("150 149")), [], oneSpeed));
  expect(out).toMatch(
    /^Both cylinders are steady against each other\. The engine as a whole: no change shown/,
  );
});

test("60 columns: no line is longer, whatever the word of a cylinder", async () => {
  const desk = await deskWith(yearly(2019, third([155, 149, 152, 146, 145])), [], oneSpeed);
  const { out } = await desk.type(["history", "pump"], { width: 60 });
  expect(out).toMatch(/^3 .* leaning down$/m);
  for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(60);
});

test("where a cylinder leans down without an alarm, nobody is told that no decline is shown", async () => {
  const desk = await deskWith(yearly(2019, third([152, 150, 148, 146, 145])), [], oneSpeed);
  const { cylinders } = (await desk.json("history", "pump")) as {
    cylinders: { pooled: { p: number }; alarm: boolean }[];
  };
  expect(cylinders[2]?.alarm).toBe(false);
  expect(cylinders[2]?.pooled.p).toBeLessThan(0.05);
  const out = await said(desk);
  expect(out).toMatch(
    /^Cylinder 3 leans down, which chance alone does in one cylinder of 20; \d\.\d % a year in one cylinder, \d\.\d % in all would have shown\.$/m,
  );
  expect(out).not.toMatch(/no decline/i);
});
