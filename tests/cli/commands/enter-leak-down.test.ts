// `enter`: pairs, percent and supplies of a leak-down, units and gauges. Readings invented; expected cells are what a person would write on the sheet.

import { expect, test } from "vitest";
import { deskWithPump } from "./desk.ts";
import { dry, enter, rowsOf } from "./entered.ts";

test("pairs of a leak-down leave the cylinder side in the row and the supply with it", async () => {
  const desk = await deskWithPump();
  await enter(desk, "--leak-down", "74/80 72/80 61/80 75/80", "--unit", "psi");
  expect(rowsOf(desk)).toMatchObject([
    { what: "leak-down", unit: "psi", c1: "74", c3: "61", regulated_psi: "80" },
  ]);
  const { cylinders } = (await desk.json("show", "pump")) as { cylinders: { leakDown: { lost: number } }[] };
  expect(cylinders.map(({ leakDown }) => leakDown.lost)).toEqual(
    [6, 8, 19, 5].map((less): unknown => expect.closeTo(less / 80, 12)),
  );
});

test("pairs with several supplies keep each cylinder its own", async () => {
  const desk = await deskWithPump();
  const { out } = await enter(desk, "--leak-down", "74/80 72/80 x 75/82", "--unit", "psi");
  expect(rowsOf(desk)).toMatchObject([
    { what: "leak-down", c1: "74", c3: "x" },
    { what: "regulated", unit: "psi", c1: "80", c3: "x", c4: "82" },
  ]);
  expect(out).toMatch(/^saved {2}pump 2026-11-25a, leak-down /);
  const { cylinders } = (await desk.json("show", "pump")) as { cylinders: { leakDown?: { lost: number } }[] };
  expect(cylinders[3]?.leakDown?.lost).toBeCloseTo(7 / 82, 12);
});

test("a leak-down in percent is taken as percent lost, --differential is another name for it", async () => {
  const desk = await deskWithPump();
  const { out } = await enter(desk, "--differential", "8 9 24 7", "--unit", "%");
  expect(rowsOf(desk)).toMatchObject([{ what: "leak-down", unit: "%", c3: "24" }]);
  expect(out).toContain("24 % lost in the leak-down");
});

test("a dial that shows percent held is read as such", async () => {
  const desk = await deskWithPump();
  await desk.type(["gauge", "add", "holder", "--kind", "leak-down", "--dial", "percent-held"]);
  await enter(desk, "--leak-down", "92 91 76 93", "--gauge", "holder");
  const { cylinders } = (await desk.json("show", "pump")) as { cylinders: { leakDown: { lost: number } }[] };
  expect(cylinders[2]?.leakDown.lost).toBeCloseTo(0.24, 12);
});

test("the supply of a leak-down tells the unit of the leak-down, never of a cranking reading", async () => {
  const desk = await deskWithPump();
  const { exit, err } = await enter(desk, "--dry", "150 148 152 149", "--regulated", "80psi");
  expect(exit).toBe(2);
  expect(err).toContain("in which unit?");
  expect((await enter(desk, "--leak-down", "74 72 61 75", "--regulated", "80psi")).exit).toBe(0);
});

test("a tester stands beside its leak-down only, and a gauge of the wrong kind is refused", async () => {
  const desk = await deskWithPump();
  await desk.type(["gauge", "add", "leaky", "--kind", "leak-down", "--unit", "psi"]);
  await enter(desk, ...dry, "--leak-down", "74/80 72/80 61/80 75/80", "--gauge", "leaky");
  expect(rowsOf(desk).map(({ what, gauge }) => [what, gauge])).toEqual([
    ["dry", undefined],
    ["leak-down", "leaky"],
  ]);
  const wrong = await enter(desk, ...dry, "--gauge", "leaky");
  expect(wrong.exit).toBe(2);
  expect(wrong.err).toContain("is a leak-down tester, but the readings are dry");
});
