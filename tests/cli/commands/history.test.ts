// The screen and the document of `history` on the demo; what it should say stands in data/demo/README.md.

import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { newDesk } from "./desk.ts";
import { numbersLost } from "./numbers.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));
const engines = ["tractor", "van", "boat", "mill", "pump", "ultralight"];

test("the demo says what its README says", async () => {
  const first = async (engine: string): Promise<string> =>
    (await newDesk().type(["history", engine, "--logbook", demo], { width: 200 })).out.split("\n")[0] ?? "";
  expect(await first("tractor")).toMatch(
    /^Cylinder 3 is falling: 1\.\d % a year \(.*\) against the others since 2014, gradually\.$/,
  );
  expect(await first("van")).toMatch(/^All four cylinders are steady\./);
  expect(await first("boat")).toBe(
    "Cylinder 5 stepped down by about 15 % between 2025-05-10 and 2026-05-09.",
  );
  expect(await first("pump")).toMatch(/^Too short to tell: three tests so far/);
  expect(await first("ultralight")).toMatch(/^All four cylinders are steady\./);
});

test("--cylinder draws one, and an unknown one is named with those there are", async () => {
  const desk = newDesk();
  const drawn = await desk.type(["history", "tractor", "--cylinder", "3", "--logbook", demo]);
  expect(drawn.out).toMatch(/^Cylinder 3 is falling/);
  expect(drawn.out).toContain("Cylinder 3 against the others, percent:");
  expect(drawn.out).not.toContain("first    last");
  expect(drawn.out).not.toContain("chart of one cylinder");
  expect(drawn.out.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
  const wrong = await desk.type(["history", "tractor", "--cylinder", "5", "--logbook", demo]);
  expect(wrong.exit).toBe(2);
  expect(wrong.err).toContain("one of: 1, 2, 3, 4");
});

test("--long lists every reading once, a leak-down without a sea level", async () => {
  const desk = newDesk();
  const rows = async (engine: string) =>
    (await desk.type(["history", engine, "--long", "--logbook", demo], { width: 120 })).out
      .split("\n")
      .filter((line) => /^\d{4}-\d{2}-\d{2}[a-z] /.test(line));
  // the cells of the rows that stand in its tests.csv
  expect(await rows("tractor")).toHaveLength(19 * 4);
  expect(await rows("boat")).toHaveLength(18 * 6);
  expect(await rows("ultralight")).toHaveLength(24);
  const { out } = await desk.type(["history", "ultralight", "--long", "--logbook", demo]);
  expect(out).not.toContain("sea level");
  expect(out).not.toContain("The engine as a whole");
});

test("--why tells what each word rests on", async () => {
  const { out } = await newDesk().type(["history", "tractor", "--why", "--logbook", demo], { width: 200 });
  expect(out).toMatch(
    /3: ten tests since 2014-10-04, -1\.\d\d % a year \(.* sure\).*alarm: both last readings below the first three, slope beyond chance\./,
  );
  expect(out).toMatch(/1: .*no alarm\./);
});

test("where the last test alone is low, the cylinder was steady until then and is not counted among the steady", async () => {
  const { out } = await newDesk().type(["history", "boat", "--as-of", "2026-05-10", "--logbook", demo], {
    width: 200,
  });
  expect(out).toMatch(
    /^Cylinder 5 has dropped about 1\d % against the others since the earlier tests: read it again before you believe it\. Until then it was steady\. The other five are steady\./,
  );
  expect(out).toMatch(/^5 .* steady, last low$/m);
  expect(out).not.toMatch(/no decline/i);
});

test("--as-of before the first test says so", async () => {
  const { out } = await newDesk().type(["history", "boat", "--as-of", "2010-01-01", "--logbook", demo]);
  expect(out).toBe("boat has no test up to 2010-01-01.\n");
});

test("a row begins where its own history does: after the work on the cylinder", async () => {
  const { out } = await newDesk().type(["history", "mill", "--logbook", demo]);
  // 2021-05-08, means of three: 131.3 against the median of 128.6, 127.7 and 128.0 (tests.csv of the demo)
  expect(out).toMatch(/^2 .* 2\.6 +3\.5 +-0\.2 +steady$/m);
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

test("every number on the screen stands in the document", async () => {
  for (const engine of engines)
    for (const words of [[], ["--why"]]) {
      const desk = newDesk();
      const { out } = await desk.type(["history", engine, ...words, "--logbook", demo], { width: 200 });
      expect(numbersLost(out, await desk.json("history", engine, "--logbook", demo)), engine).toEqual([]);
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
