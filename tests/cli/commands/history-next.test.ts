// What `history` says of the years to come: the chance of staying above a limit, and what to measure to know more. Readings
// invented; the numbers behind the words are checked in tests/core/history.

import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { newDesk } from "./desk.ts";
import { numbersLost } from "./numbers.ts";
import { deskWith, said, yearly } from "./years.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));
const even = (count: number): readonly string[] => new Array<string>(count).fill("150 148 152 149");
const next = (out: string): string => /^next {3}(.*)$/m.exec(out)?.[1] ?? "";

test("a steady engine is told how many more tests would show a loss, and what three readings would change", async () => {
  // the same plan as in tests/core/history/tests-until-shown.test.ts, with the smaller scatter of these readings
  expect(next(await said(await deskWith(yearly(2023, even(4)))))).toMatch(
    /^a cylinder losing 3 % a year from now on shows after (three|four|five) more tests, one a year \(8 chances in 10\)(; after (two|three|four) with three readings each)?$/,
  );
});

test("the screen holds the numbers of the document", async () => {
  const desk = await deskWith(yearly(2019, even(7)));
  const { further } = (await desk.json("history", "pump")) as {
    further: { asNow: { tests: number; years: number }; spacing_months: number };
  };
  const words = ["no", "one", "two", "three", "four", "five", "six"];
  expect(next(await said(desk))).toContain(
    `after ${words[further.asNow.tests] ?? ""} more tests, one a year`,
  );
  expect(further.spacing_months).toBeCloseTo(12, 1);
  expect(further.asNow.years).toBeCloseTo(further.asNow.tests, 1);
});

test("with two tests the course comes first, and the loss may be there all along", async () => {
  expect(next(await said(await deskWith(yearly(2025, even(2)))))).toMatch(
    /^two more tests give a course; read each cylinder three times, that tells most\. A cylinder losing 3 % a year shows after \w+ more tests, one a year \(8 chances in 10\)/,
  );
});

test("tests every sixteen months are planned every sixteen months", async () => {
  const dates = ["2020-01-03", "2021-05-03", "2022-09-03", "2024-01-03", "2025-05-03"];
  expect(next(await said(await deskWith(dates.map((date) => `${date}: 150 148 152 149`))))).toContain(
    "one every 16 months",
  );
});

test("a leak-down speaks of leaks", async () => {
  const { out } = await newDesk().type(["history", "ultralight", "--logbook", demo], { width: 200 });
  expect(next(out)).toMatch(/^a cylinder leaking 3 % more a year from now on shows after/);
});

test("where something was found, more of the same tests are not what is next", async () => {
  const falling = [150, 147, 144, 141, 138, 135].map((value) => `150 148 ${String(value)} 149`);
  // the step is that of `show`, and what is behind it is for `show`
  expect(next(await said(await deskWith(yearly(2020, falling))))).toBe(
    "read 3 again, twice, before you believe it, 5 minutes; how, and what it may be: sealtrend show pump",
  );
  const dropped = [...even(5), "150 148 128 149"];
  expect(next(await said(await deskWith(yearly(2020, dropped))))).toBe(
    "read 3 again, twice, before you believe it, 5 minutes; how: sealtrend show pump",
  );
});

test("a falling cylinder is said to be above its limits by one digit, and the sudden fault is left aside", async () => {
  const rows = [150, 148, 146, 143, 141, 138, 135, 133].map((value) => `150 149 ${String(value)} 150`);
  const desk = await deskWith(yearly(2019, rows));
  const out = await said(desk);
  expect(out).toMatch(/^Cylinder 3 is falling/);
  // the line passes 0.75 of the others, as R's interval says of the like in C.10, years after it stands at 0.89
  expect(out).toMatch(
    /^(More than|About) \d in 10 that 3 is above its limit in 20\d{2}-05; a sudden fault aside\.$/m,
  );
  expect(out).not.toContain("Wear only");
  expect(numbersLost(out, await desk.json("history", "pump"))).toEqual([]);
});

test("a steady engine is above its limits for years, as far as three times its history reaches", async () => {
  const out = await said(await deskWith(yearly(2019, even(8))));
  expect(out).toContain(
    "More than 9 in 10 that all four cylinders are above 0.75 of the others in 2031-05; a sudden fault aside.",
  );
  // four tests in nine months: two years and three months are three times that, so one year ahead at most
  const dates = ["2025-08-03", "2025-11-03", "2026-02-03", "2026-05-03"];
  const short = await said(await deskWith(dates.map((date) => `${date}: 150 148 152 149`)));
  expect(short).toMatch(/in 10 that .* in 2027-05; a sudden fault aside\./);
});

test("no chance is told of years that are over", async () => {
  const out = await said(await deskWith(yearly(2008, even(8))));
  expect(out).toMatch(/The last test is \w+ years old\./);
  expect(out).not.toContain("in 10 that");
});

test("a cylinder under its limit, in one step or doubted by its last reading, has no chance", async () => {
  const step = [...even(4), "150 148 128 149", "150 148 127 149", "149 148 128 149"];
  const under = new Array<string>(6).fill("150 148 108 149");
  const dropped = [...even(5), "150 148 128 149"];
  for (const rows of [step, under, dropped])
    expect(await said(await deskWith(yearly(2020, rows)))).not.toContain("in 10 that");
});

test("one cylinder is held against the maker's minimum", async () => {
  const desk = await deskWith(yearly(2019, ["160", "159", "158", "157", "156", "155", "154", "153"]));
  await desk.type(["engine", "set", "pump", "limits.compression.minimum", "120psi"]);
  expect(await said(desk)).toMatch(
    /(More than|About) \d in 10 that it is above (its limit|the maker's minimum) in 20\d{2}-05; a sudden fault aside\./,
  );
});

test("--cylinder tells the chance of the one asked for", async () => {
  const out = await said(await deskWith(yearly(2019, even(8))), "--cylinder", "2");
  expect(out).toContain(
    "More than 9 in 10 that 2 is above 0.75 of the others in 2031-05; a sudden fault aside.",
  );
});

test("--why tells how far the owner's repeats lie apart, how sure that is, and when to read again", async () => {
  // invented repeats; s, its limits and the limit between two readings computed with R 4.2.2 (statistics.md F)
  const desk = await deskWith([]);
  const takes = ["158 152 163 149", "161 150 162 153", "160 151 165 151"];
  for (const date of ["2025-05-03", "2026-05-03"]) {
    if (date !== "2026-05-03") {
      await desk.type(["enter", "pump", "--dry", "160 151 163 151", "--unit", "psi", "--date", date]);
      continue;
    }
    const dry = takes.flatMap((take) => ["--dry", take]);
    const { err } = await desk.type(["enter", "pump", ...dry, "--unit", "psi", "--date", date]);
    expect(err).toBe("");
  }
  const { out } = await desk.type(["history", "pump", "--why"], { width: 200 });
  expect(out).toContain(
    "Your own repeats scatter by 1.0 % (0.7 to 1.9 %, 19 chances in 20), by eight repeats beyond the first of each. Two that lie more than 2.8 % apart happen once in 20: read again.",
  );
  const { repeatability } = (await desk.json("history", "pump")) as { repeatability: object };
  expect(repeatability).toEqual({
    s: expect.closeTo(0.00997914711486511, 12) as number,
    df: 8,
    blended: expect.closeTo(0.0123827847581141, 12) as number,
    limit: expect.closeTo(0.0276607845738868, 12) as number,
    trend: "none",
    low: expect.closeTo(0.0067404851160601, 12) as number,
    high: expect.closeTo(0.0191177594792608, 12) as number,
  });
});

test("without repeats nothing is said of them", async () => {
  const desk = await deskWith(yearly(2020, even(5)));
  expect((await desk.type(["history", "pump", "--why"], { width: 200 })).out).not.toContain(
    "repeats scatter",
  );
});
