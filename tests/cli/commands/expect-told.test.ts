// expect: how the answer is told: the owner's units, the maker's figure in the same air, narrow and plain terminals.

import { expect, test } from "vitest";
import { type Desk, deskWithPump, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const ten = "--compression-ratio 10";
const told = async (line: string, width = 80, desk: Desk = newDesk()): Promise<string> =>
  (await desk.type(["expect", ...line.split(" ").filter((word) => word !== "")], { width })).out;

/** An engine with sizes and the figures of an invented manual. */
const withLimits = async (): Promise<Desk> => {
  const desk = await deskWithPump();
  const fields = {
    "geometry.bore": "102mm",
    "geometry.stroke": "120mm",
    "geometry.compressionRatio": "8.5",
    "limits.compression.new": "131psi",
    "limits.compression.speed": "230rpm",
  };
  for (const [field, value] of Object.entries(fields))
    await desk.type(["engine", "set", "pump", field, value]);
  return desk;
};

test("what was typed is shown as it was typed, and the rest in the owner's units", async () => {
  const out = await told(`${ten} --units us --bore 3.4in --altitude 9000ft --air 40F --hose 2ml --why`);
  expect(out).toContain("at 9000 ft (21.4 inHg of air)");
  expect(out).toContain("taken as given: bore 3.4 in, air 40 F\n");
  expect(out).toMatch(/hose ahead of the valve 2 ml +given +± 0.2 ml/);
  // 35 C and 12 K
  expect(out).toMatch(/air when the intake closes 96 F +assumed +± 21 F/);
  expect(out).not.toMatch(/\d (mm|C|m)\b/);
});

test("without a height a reading loses 3.6 % for each 1000 ft, 1.2 % for each 100 m", async () => {
  // the standard atmosphere has 97.72 kPa at 1000 ft, 100.13 kPa at 100 m, 101.325 kPa at sea level
  expect(await told(`${ten} --units us`)).toContain("3.6 % less for each 1000 ft");
  expect(await told(ten)).toContain("1.2 % less for each 100 m");
  const { air } = (await newDesk().json("expect", ...ten.split(" "))) as { air: { lessPer100m: number } };
  expect(air.lessPer100m).toBeCloseTo(1 - 100.13 / 101.325, 4);
});

test("psi is read in inches and in millimetres: what was typed tells which", async () => {
  expect(await told(`${ten} --units psi`)).toContain("size of the cylinder 30.5 in3");
  expect(await told(`${ten} --units psi --bore 86mm --why`)).toMatch(/stroke|connecting rod 142 mm/);
  expect(await told(`${ten} --bore 3.4in --why`)).toContain("connecting rod 5.61 in");
});

test("--why tells pressures in the unit of the answer, and sizes in the owner's", async () => {
  const out = await told(`${ten} --units psi --why`);
  // 500 cm3 = 30.51 in3
  expect(out).toContain("sizes: sweeps 30.51 in3 over a chamber of 3.39 in3");
  expect(out).toMatch(/reading: 189(\.\d)? psi,/);
  expect(out).toMatch(/peak: 203\.8 psi above vacuum, .* F;/);
  expect(out).toContain("A narrower band: --intake-closes, --bore and --speed.");
  expect(out).not.toContain("kPa");
});

test("the speed that the answer holds for is told, and never folded away", async () => {
  expect(await told(`${ten} --speed 300`)).toMatch(/cranked at 300 rpm,[^]*\ncranking speed 300 rpm +given/);
  expect(await told(ten)).toContain("cranked at 250 rpm\n(assumed)");
  const out = await told("pump", 80, await withLimits());
  expect(out).toContain("cranked at 230 rpm (the maker's)");
  expect(out).toMatch(/\ncranking speed 230 rpm +maker's +± 7 rpm/);
});

test("the maker's figure is brought to the air of the answer, and both are told with their speed", async () => {
  const desk = await withLimits();
  // 131 psi x 70.11/101.325, the standard atmosphere at 3000 m
  const high = await told("pump --altitude 3000m --units psi", 80, desk);
  expect(high).toContain(
    "The maker's figure for a new engine: 131 psi at sea level, here 90.6 psi. It\nholds for 230 rpm.",
  );
  expect(await told("pump --units psi", 80, desk)).toContain("131 psi at sea level. It holds for 230 rpm.");
  const document = await desk.json("expect", "pump", "--altitude", "3000m");
  expect(misfits(document, schemaOf("expect"))).toEqual([]);
  expect(document).toMatchObject({ makersSpeed_rpm: 230 });
  expect(Number(document.makersNewHere_kPa) / Number(document.makersNew_kPa)).toBeCloseTo(70.11 / 101.325, 4);
});

test("the name of an engine stays as it is at the start of a sentence", async () => {
  expect(await told("pump", 80, await withLimits())).toContain("\npump: spark, engine warm");
});

test.each([60, 66, 72, 80])("at %i columns the inputs stand in a table, within the width", async (width) => {
  const lines = (await told(`${ten} --units us`, width)).split("\n");
  expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(width);
  const head = lines.find((line) => line.includes("if off by")) ?? "";
  const last = lines
    .filter((line) => line.endsWith(" %") && !line.startsWith("("))
    .map(({ length }) => length);
  expect([...new Set(last)]).toEqual([head.length]);
});

test.each(["", "--why", "--units us"])("in ASCII the columns keep their places: %s", async (more) => {
  const lines = (await told(`${ten} ${more} --ascii`)).split("\n");
  const head = lines.find((line) => line.includes("if off by")) ?? "";
  const rows = lines.slice(lines.indexOf(head) + 1).filter((line) => line.endsWith(" %"));
  expect(rows.length).toBeGreaterThan(8);
  expect([...new Set(rows.map(({ length }) => length))]).toEqual([head.length]);
  expect(lines.join("")).toMatch(/^[\x20-\x7e]*$/);
});
