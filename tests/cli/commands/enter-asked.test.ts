// `enter`: on a terminal, what is missing is asked. Readings invented; expected cells are what a person would write on the sheet.

import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";
import { answers, rowsOf } from "./entered.ts";

test("on a terminal everything is asked in turn, and the spread shows as it grows", async () => {
  const desk = await deskWithPump();
  const { exit, out, asked } = await desk.type(
    ["enter", "pump"],
    answers("red", "psi", "150", "148", "152", "131?", "warm", "6", "230rpm", "350m", "open", ""),
  );
  expect(exit).toBe(0);
  expect(asked.slice(0, 3)).toEqual([
    "gauge (a name for it; Enter = not recorded): ",
    "unit (psi, kPa, bar, MPa, kgf/cm2): ",
    "cylinder 1: ",
  ]);
  expect(out).toContain("  1:150 2:148 psi   lowest/highest 0.99\n");
  expect(out).toContain("  1:150 2:148 3:152 4:131? psi   lowest/highest 0.86\n");
  expect(rowsOf(desk)).toMatchObject([
    {
      gauge: "red",
      unit: "psi",
      c4: "131?",
      engine_temp: "warm",
      strokes: "6",
      crank_rpm: "230",
      altitude_m: "350",
      throttle: "open",
    },
  ]);
});

test("a wrong answer is asked again, of a cylinder, a unit and a condition alike", async () => {
  const desk = await deskWithPump();
  const { exit, out, asked } = await desk.type(
    ["enter", "pump", "--gauge", "red"],
    answers(
      "pounds",
      "psi",
      "150",
      "l48",
      "148",
      "152",
      "x",
      "hot",
      "warm",
      "many",
      "6",
      "",
      "",
      "shut",
      "open",
      "lots",
      "1412",
    ),
  );
  expect(exit).toBe(0);
  expect(asked).toHaveLength(17);
  expect(out).toContain("one of psi, kPa");
  expect(out).toContain("a number such as 131");
  expect(out).toContain("expected warm, part-warm, cold");
  expect(rowsOf(desk)).toMatchObject([
    { c2: "148", c4: "x", engine_temp: "warm", throttle: "open", meter: "1412" },
  ]);
});

test("b goes back one, as often as wanted, and no further than the first question", async () => {
  const desk = await deskWithPump();
  const { asked } = await desk.type(
    ["enter", "pump", "--gauge", "red", "--unit", "psi"],
    answers("b", "105", "b", "150", "148", "152", "149", "cold", "b", "warm", "", "", "", "", ""),
  );
  expect(asked.slice(0, 4)).toEqual(["cylinder 1: ", "cylinder 1: ", "cylinder 2: ", "cylinder 1 [105]: "]);
  expect(rowsOf(desk)).toMatchObject([{ c1: "150", c2: "148", engine_temp: "warm" }]);
});

test("q and the end of input leave without saving, and give back what was typed", async () => {
  for (const last of [["q"], []]) {
    const desk = await deskWithPump();
    const { exit, err } = await desk.type(["enter", "pump"], answers("red", "psi", "150", "148", ...last));
    expect(exit).toBe(2);
    expect(err).toContain("nothing was saved");
    expect(err).toContain("typed so far: 150 148");
    expect(rowsOf(desk)).toEqual([]);
  }
});

test("a gauge named nearly as a known one is asked about once, and its unit is then not asked for", async () => {
  const desk = await deskWithPump();
  await desk.type(["gauge", "add", "yellow", "--kind", "compression", "--unit", "psi"]);
  const { out, asked } = await desk.type(
    ["enter", "pump"],
    answers("yelow", "yellow", "150", "148", "152", "149", "", "", "", "", "", ""),
  );
  expect(out).toContain("did you mean yellow?");
  expect(asked[0]).toBe("gauge (yellow; Enter = not recorded): ");
  expect(asked[2]).toBe("cylinder 1: ");
  expect(rowsOf(desk)).toMatchObject([{ gauge: "yellow", unit: "psi" }]);
});

test.each([1, 28])("an engine of %i cylinders is asked through", async (count) => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "big", "--cylinders", String(count), "--ignition", "compression"]);
  const readings = Array.from({ length: count }, (_, i) => String(400 + (i % 3)));
  const { exit } = await desk.type(["enter", "big"], answers("", "psi", ...readings, "", "", "", "", ""));
  expect(exit).toBe(0);
  const shown = await desk.type(["show", "big"]);
  expect(shown.exit).toBe(0);
  for (const line of shown.out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
});

test("a reading that no gauge shows is refused where it is typed", async () => {
  const desk = await deskWithPump();
  const { exit, asked } = await desk.type(
    ["enter", "pump", "--gauge", "red", "--unit", "psi"],
    answers("150", "148", "99999", "149", "151", "", "", "", "", "", ""),
  );
  expect(exit).toBe(0);
  expect(asked.slice(2, 5)).toEqual(["cylinder 3: ", "cylinder 3: ", "cylinder 4: "]);
  expect(rowsOf(desk)).toMatchObject([{ c3: "149", c4: "151" }]);
});

test("a reading past the end of the dial is refused with the way to write a pegged needle", async () => {
  const desk = await deskWithPump();
  await desk.type([
    "gauge",
    "add",
    "red",
    "--kind",
    "compression",
    "--unit",
    "psi",
    "--full-scale",
    "160psi",
  ]);
  const { out } = await desk.type(
    ["enter", "pump", "--gauge", "red"],
    answers("150", "170", ">160", "152", "149", "", "", "", "", "", ""),
  );
  expect(out).toContain("more than the gauge can show");
  expect(out.replace(/\s+/g, " ")).toContain("write >160 if the needle was pegged");
  expect(rowsOf(desk)).toMatchObject([{ c2: ">160" }]);
});

test("--no-input never asks, on a terminal either", async () => {
  const desk = await deskWithPump();
  const { exit, asked } = await desk.type(["enter", "pump", "--no-input"], answers("red"));
  expect(exit).toBe(2);
  expect(asked).toEqual([]);
});
