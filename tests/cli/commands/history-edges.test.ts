// The shortest, oddest and longest logbooks: what `history` says of them is true each time. Readings invented.

import { expect, test } from "vitest";
import { misfits, schemaOf } from "./fits-schema.ts";
import { deskWith, said, yearly } from "./years.ts";

const first = (out: string): string => out.split("\n")[0] ?? "";

test("one reading: a single cylinder read once is one test, and no course", async () => {
  const noCourse = "One test only, so there is no course yet. What it says: sealtrend show pump";
  expect(first(await said(await deskWith(["2026-05-03: - 148 - -"])))).toBe(noCourse);
  expect(first(await said(await deskWith(["2026-05-03: 148"])))).toBe(noCourse);
});

test("one cylinder of four read every year is compared with nothing, and the screen says so", async () => {
  const rows = ["- 148 - -", "- 147 - -", "- 148 - -", "- 149 - -", "- 148 - -"];
  const out = await said(await deskWith(yearly(2022, rows)));
  expect(first(out)).toMatch(
    /^Too short to tell: no test that read two cylinders so far, and a course needs four\./,
  );
  expect(out).not.toContain("steady");
  expect(out).toMatch(/^next +read 1, 3 and 4, which were never read/m);
});

test("two tests: too short to tell, or a drop that asks for a repeat", async () => {
  expect(first(await said(await deskWith(yearly(2025, ["150 148 152 149", "149 149 151 150"]))))).toBe(
    "Too short to tell: two tests so far, and a course needs four.",
  );
  expect(first(await said(await deskWith(yearly(2025, ["150 148 152 149", "149 149 128 150"]))))).toMatch(
    /^Cylinder 3 has dropped about 1\d % .* read it again before you believe it\. Too short to tell/,
  );
});

test("all equal: two equal tests are too short, many are steady in the time that they span", async () => {
  const equal = (count: number): readonly string[] => new Array<string>(count).fill("150 150 150 150");
  expect(first(await said(await deskWith(yearly(2025, equal(2)))))).toMatch(
    /^Too short to tell: two tests so far/,
  );
  const out = await said(await deskWith(yearly(2019, equal(8))));
  expect(first(out)).toMatch(/^All four cylinders are steady\. The engine as a whole: no change shown/);
  expect(out).toMatch(/^1 .* 0\.0 +0\.0 +0\.0 +steady$/m);
  const one = await said(await deskWith(yearly(2000, new Array<string>(20).fill("150"))));
  expect(first(one)).toMatch(/^The cylinder is steady/);
});

test("one cylinder: nothing to compare it with, and no plan that compares", async () => {
  const out = await said(await deskWith(yearly(2020, ["150", "151", "149", "150", "150"])));
  expect(first(out)).toMatch(/^(The cylinder is steady|One cylinder: no change shown)/);
  expect(out).not.toContain("a cylinder losing");
});

test("all dates equal: five tests of one day are one test", async () => {
  const out = await said(await deskWith(new Array<string>(5).fill("2026-05-03: 150 148 152 149")));
  expect(first(out)).toMatch(/^The tests of one day count as one, so there is no course yet\./);
});

test("a gap of nine years: a fall across it is told, when it came is not, and the age of the last test is", async () => {
  const dates = ["2008-05-03", "2008-09-03", "2009-05-03", "2018-05-03", "2018-09-03", "2019-05-03"];
  const rows = dates.map((date, i) => `${date}: 150 148 ${i < 3 ? "152" : "133"} 149`);
  const out = await said(await deskWith(rows));
  expect(first(out)).toBe(
    "Cylinder 3 is falling against the others since 2008; suddenly or gradually cannot be told yet.",
  );
  expect(out).toContain("The last test is seven years old.");
  expect(out).not.toContain("in 10 that");
  const even = await said(await deskWith(dates.map((date) => `${date}: 150 148 152 149`)));
  expect(first(even)).toMatch(/^All four cylinders are steady\./);
});

test("28 cylinders and 60 tests: one screen of 24 lines, one cylinder found, every number one", async () => {
  const columns = Array.from({ length: 28 }, (_, i) => i);
  const lines = Array.from({ length: 60 }, (_, t) => {
    const cells = columns.map((i) =>
      String(150 + ((7 * i + 3 * t + i * t) % 4) - (i === 16 ? Math.floor(t / 4) : 0)),
    );
    const day = `${String(1996 + Math.floor(t / 2))}-${t % 2 === 0 ? "05" : "11"}-03`;
    return `${day},t${String(t)},dry,psi,${cells.join(",")}`;
  });
  const desk = await deskWith([`1995-05-03: ${columns.map(() => "150").join(" ")}`]);
  const header = `date,test,what,unit,${columns.map((i) => `c${String(i + 1)}`).join(",")}`;
  desk.put("logbook/pump/tests.csv", `${[header, ...lines].join("\n")}\n`);
  const { out, exit } = await desk.type(["history", "pump"]);
  expect(exit).toBe(0);
  expect(out).toMatch(/^Cylinder 17 is falling: 0\.\d % a year/);
  expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
  expect(out).toContain("about 1 healthy engine in 20");
  const document = await desk.json("history", "pump");
  expect(misfits(document, schemaOf("history"))).toEqual([]);
  expect(JSON.stringify(document)).not.toMatch(/NaN|Infinity/);
  expect((document as { tests: object[] }).tests).toHaveLength(60);
});

test("the same readings typed in bar, kPa or MPa tell the same history", async () => {
  const rows = [
    "10.3 10.2 10.5 10.3",
    "10.2 10.3 10.1 10.3",
    "10.4 10.2 9.8 10.3",
    "10.3 10.1 9.4 10.3",
    "10.3 10.2 9.1 10.4",
    "10.4 10.2 8.7 10.3",
  ];
  // 1 bar = 100 kPa = 0.1 MPa, so every digit stays
  const typed = async (unit: string, factor: number, digits: number): Promise<Record<string, unknown>> => {
    const desk = await deskWith([`2018-05-03: 150 150 150 150`]);
    const lines = rows.flatMap((row, i) => {
      const cells = row.split(" ").map((bar) => (Number(bar) * factor).toFixed(digits));
      const day = `${String(2019 + i)}-05-03`;
      return [`${day},${day}a,dry,${unit},${cells.join(",")}`];
    });
    desk.put("logbook/pump/tests.csv", `date,test,what,unit,c1,c2,c3,c4\n${lines.join("\n")}\n`);
    return desk.json("history", "pump");
  };
  const digits = (document: unknown): unknown =>
    JSON.parse(
      JSON.stringify(document, (_, value: unknown) =>
        typeof value === "number" ? Number(value.toFixed(7)) + 0 : value,
      ),
    );
  const bar = await typed("bar", 1, 1);
  expect(bar.cylinders).toHaveLength(4);
  expect(digits(await typed("kPa", 100, 0))).toEqual(digits(bar));
  expect(digits(await typed("MPa", 0.1, 2))).toEqual(digits(bar));
});
