// A cylinder read again for a test that is there, its gauge left open: it counts with the others. Readings invented.

import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { answers, rowsOf } from "./entered.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");

/** One cylinder in doubt, read once. */
const desk = async (): Promise<Desk> => {
  const made = newDesk();
  made.put("logbook/.keep", "");
  made.put("logbook/gauges.csv", "gauge,kind,unit\nblue,compression,bar\nblack,compression,psi\n");
  made.put(
    "logbook/pump/engine.json",
    '{"cylinders": ["1", "2", "3", "4"], "ignition": "spark", "home_altitude": "200m"}',
  );
  const words = ["--dry", "118 121 117 99", "--gauge", "black"];
  await made.type(["enter", "pump", "--date", "2024-05-11", ...words]);
  return made;
};
const again = ["enter", "pump", "--same-test", "--dry", "x x x 104"];

test("readings added without a gauge are by the gauge of their kind in the test, and that is said", async () => {
  const pump = await desk();
  const { err, out } = await pump.type([...again, "--unit", "psi"]);
  expect(flat(err)).toContain("no gauge was named: black is taken, which read the dry ones of 2024-05-11a");
  expect(out).not.toContain("to compare only");
  expect(rowsOf(pump).map(({ gauge, take }) => [gauge, take])).toEqual([
    ["black", "1"],
    ["black", "2"],
  ]);
});

test("the second reading confirms what the first left in doubt", async () => {
  const pump = await desk();
  expect((await pump.type(["show", "pump"])).out).toContain("read 4 again");
  await pump.type([...again, "--unit", "psi"]);
  await pump.type(["enter", "pump", "--same-test", "--dry", "x x x 105"]);
  expect((await pump.type(["show", "pump"])).out).not.toContain("read 4 again");
});

test.each([
  ["in its line", ["--dry", "x x x 7.2bar"]],
  ["as an option", ["--dry", "x x x 7.2", "--unit", "bar"]],
])("another unit, %s, is another gauge", async (_, words) => {
  const pump = await desk();
  const { exit, err } = await pump.type(["enter", "pump", "--same-test", ...words]);
  expect(exit).toBe(0);
  expect(err).not.toContain("no gauge was named");
  expect(rowsOf(pump).map(({ gauge }) => gauge)).toEqual(["black", undefined]);
});

test("where two gauges read the test, none is taken, and only those two are proposed", async () => {
  const pump = await desk();
  pump.put(
    "logbook/gauges.csv",
    "gauge,kind,unit\nblue,compression,bar\nblack,compression,psi\nred,compression,psi\n",
  );
  await pump.type([...again, "--gauge", "red"]);
  const { exit, err } = await pump.type(again);
  expect(exit).toBe(2);
  expect(flat(err)).toContain("--gauge black or --gauge red");
  expect(err).not.toContain("blue");
});

test("on a terminal Enter is the gauge of the test; a dash leaves it open", async () => {
  const pump = await desk();
  const rest = ["", "", "", "", "", ""];
  const { asked } = await pump.type(["enter", "pump", "--same-test"], answers("", "x x x 104", ...rest));
  expect(asked[0]).toBe("gauge (blue, black; Enter = black, as in the test): ");
  expect(asked[1]).toBe("cylinder 1: ");
  const dash = ["enter", "pump", "--same-test", "--unit", "psi"];
  const { err } = await pump.type(dash, answers("-", "x x x 105", ...rest));
  expect(err).not.toContain("no gauge was named");
  expect(rowsOf(pump).map(({ gauge }) => gauge)).toEqual(["black", "black", undefined]);
});

test("of as many readings by a named gauge and by none, the named ones count", async () => {
  const pump = await desk();
  const [head = "", row = ""] = pump.text("logbook/pump/tests.csv").split("\n");
  const nameless = row.replace("black", "").replace("118,121,117,99", "117,120,116,98");
  pump.put("logbook/pump/tests.csv", `${head}\n${nameless}\n${row}\n`);
  const { cylinders } = await pump.json("show", "pump");
  // 118 psi * 6.894757 kPa
  expect(cylinders).toMatchObject([{ dry: { read_kPa: [expect.closeTo(813.58, 2)] } }, {}, {}, {}]);
});

test("a row by no named gauge is picked apart from those by one, and gets its name", async () => {
  const pump = await desk();
  await pump.type(["enter", "pump", "--same-test", "--dry", "x x x 7.2", "--unit", "bar"]);
  const amend = ["amend", "pump", "--test", "latest", "--gauge", "blue", "--because", "was left open"];
  const open = await pump.type(amend);
  expect([open.exit, open.err]).toEqual([2, expect.stringContaining("add --of-gauge -")]);
  const { exit, out } = await pump.type([...amend, "--of-gauge", "-"]);
  expect([exit, out]).toEqual([0, expect.stringContaining("dry take 1, gauge: nothing -> blue")]);
  expect(rowsOf(pump).map(({ gauge }) => gauge)).toEqual(["black", "blue"]);
});

test("where no row is by a gauge that was left open, that is said", async () => {
  const pump = await desk();
  const words = ["--test", "latest", "--of-gauge", "-", "--gauge", "blue", "--because", "was left open"];
  const { exit, err } = await pump.type(["amend", "pump", ...words]);
  expect([exit, flat(err)]).toEqual([
    2,
    expect.stringContaining("test 2024-05-11a has no row with its gauge left open"),
  ]);
});
