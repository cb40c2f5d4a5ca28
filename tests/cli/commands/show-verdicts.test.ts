// What `show` may say of a cylinder, and what it may not: sentences on invented readings.

import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const deskOf = async (ignition: string, ...sets: readonly (readonly [string, string])[]): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--cylinders", "4", "--ignition", ignition]);
  for (const [field, value] of sets) await desk.type(["engine", "set", "pump", field, value]);
  return desk;
};

/** The screen in one line, and the document checked against its schema. */
const screen = async (desk: Desk, ...line: readonly string[]): Promise<string> => {
  const { exit, out, err } = await desk.type(["enter", "pump", ...line]);
  if (exit !== 0) throw new Error(err);
  expect(misfits(await desk.json("show", "pump"), schemaOf("show"))).toEqual([]);
  return out.replaceAll(/\s+/g, " ");
};

test("readings that contradict each other are not said to agree", async () => {
  const out = await screen(
    await deskOf("spark"),
    ...["--dry", "1250 1190 1245 1230", "--dry", "700 1190 1245 1230", "--unit", "kPa"],
  );
  expect(out).toContain("Cylinder 1 is suspect: its two readings contradict each other. Read it again.");
  expect(out).not.toContain("agree");
});

test("at a limit too close to call nobody lags, neither in words nor in the row", async () => {
  const desk = await deskOf("spark", ["limits.compression.minimum", "1200kPa"]);
  const out = await screen(desk, "--dry", "1190 1185 1195 1180", "--unit", "kPa", "--altitude", "0m");
  expect(out).toContain("All four read just below the maker's limit, too close to call");
  expect(out).toContain("standing just below just below just below just below");
  expect(out).not.toContain("lag");
});

test("a leak-down at the maker's limit is not said to be more than it", async () => {
  const desk = await deskOf("spark", ["limits.leakDown.lost", "0.25"]);
  const out = await screen(desk, "--leak-down", "60/80 60/80 58/80 61/80", "--unit", "psi");
  expect(out).toContain(
    "Cylinder 3 loses 28 % in the leak-down, just over the maker's limit: too close to call.",
  );
  expect(out).toContain(": near");
});

test("the wrong stroke in one cylinder costs the leak-down and not the cranking readings", async () => {
  const desk = await deskOf("spark");
  await desk.type(["enter", "pump", "--dry", "150 148 120 151", "--dry", "150 148 121 151", "--unit", "psi"]);
  const out = await screen(
    desk,
    ...["--same-test", "--leak-down", "30/80 74/80 74/80 75/80", "--unit", "psi"],
    ...["--heard", "carb+tailpipe none none none"],
  );
  expect(out).toContain("Cylinder 3 lags: 20 % under the others, two readings agree. The leak-down tells");
  expect(out).toContain("next turn cylinder 1 on to compression and repeat the leak-down there");
});

test("oil that lowered both is the battery or the gauge, and no valve", async () => {
  const out = await screen(
    await deskOf("spark"),
    ...["--dry", "150 148 149 110", "--wet", "120 x x 90", "--unit", "psi"],
  );
  expect(out).toContain("With oil 4 read 18 % lower, the control 1 20 % lower: oil lowers no reading");
  expect(out).not.toMatch(/valve, the gasket|net/);
});

test("oil in a diesel is cautioned as it is entered and under the screen, and is a weak sign", async () => {
  const out = await screen(
    await deskOf("compression"),
    ...["--dry", "28 28 20 28", "--wet", "28.3 x 27 x", "--oil", "2 x 2 x", "--unit", "bar"],
  );
  expect(out).toContain("a weak sign of rings (in a diesel a little oil is much of the chamber)");
  expect(out).toContain("CARE oil: a diesel gets none unless its maker allows it");
});

test("a first stroke that makes no sense is questioned though the cylinder is even", async () => {
  const out = await screen(
    await deskOf("spark"),
    ...["--dry", "150 148 149 145", "--first-stroke", "90 90 90 50", "--unit", "psi"],
  );
  expect(out).toContain(
    "First stroke of 4: 34 % of the last, the middle cylinder 60 %, though it is not low",
  );
});

test("a low cylinder whose leak-down is sound is not called leaking, whatever sizes are not known", async () => {
  const out = await screen(
    await deskOf("spark"),
    ...["--dry", "150 148 149 118", "--leak-down", "72/80 72/80 72/80 71/80", "--unit", "psi"],
  );
  expect(out).toContain("4 lost 11 % in the leak-down, the others 10 %: the low reading does not look like");
  expect(out).toContain("bore, stroke and compression ratio in engine.json would settle it");
  expect(out).not.toContain("oil test");
});

test("a limit in percent is told in percent", async () => {
  const desk = await deskOf("spark", ["use", "motorcycle"]);
  expect(await screen(desk, "--dry", "150 150 150 150", "--unit", "psi")).toContain(
    "lowest under highest 0 %, usual rule 10 %: met",
  );
});

test("the readings that are suggested for a diesel are those of a diesel", async () => {
  const desk = newDesk();
  const { out } = await desk.type([
    "engine",
    "add",
    "digger",
    "--cylinders",
    "4",
    "--ignition",
    "compression",
  ]);
  expect(out).toContain('sealtrend enter digger --dry "400 399 398 397" --unit psi');
});
