// `teardown` a second time on the same teardown: what goes on, what is there already, what takes the place of what.
// Contract: design.md §4 (nothing typed is lost, nothing is said twice in silence). Figures invented.

import { expect, test } from "vitest";
import { misfits, schemaOf } from "./fits-schema.ts";
import type { Desk } from "./desk.ts";
import { deskWithSix, measurements, rods } from "./teardown-desk.ts";

const enter = (desk: Desk, input: string, words: readonly string[] = []) =>
  desk.type(["teardown", "tractor", ...words], { input });
const flat = (text: string): string => text.replace(/\s+/g, " ");

test("a second sitting goes on in the state and the unit of the last row, said in one line", async () => {
  const desk = await deskWithSix();
  await enter(desk, "in\nstate cleaned\nwith micrometer 0.0001\npin 1: 2.2483\n");
  const { exit, err } = await enter(desk, "pin 2: 2.2484\n");
  expect(exit).toBe(0);
  expect(err.split("\n")[0]).toBe(
    "goes on as the last row of teardown 1: state cleaned, figures without a unit",
  );
  expect(err.split("\n")[1]).toBe("in inches");
  expect(measurements(desk)[1]).toBe("1,2026-11-25,pin,2,front/0,diameter,2.2484,in,,,,cleaned,");
});

test("what the options say is not taken from the last row, and a new teardown takes nothing", async () => {
  const desk = await deskWithSix();
  await enter(desk, "in\nstate cleaned\npin 1: 2.2483\n");
  await enter(desk, "pin 2: 57.11\n", ["--unit", "mm", "--state", "as found"]);
  const fresh = await enter(desk, "pin 2: 57.11\n", ["--new-teardown"]);
  expect(measurements(desk)[1]).toBe("1,2026-11-25,pin,2,front/0,diameter,57.11,mm,,,,as found,");
  expect([fresh.exit, fresh.err.includes("no unit")]).toEqual([1, true]);
});

test("on a terminal the same is said before the first prompt", async () => {
  const desk = await deskWithSix();
  await enter(desk, "in\nstate cleaned\npin 1: 2.2483\n");
  const { out } = await desk.type(["teardown", "tractor"], { answers: ["pin 2: 2.2484", "done"] });
  expect(flat(out)).toContain(
    "goes on as the last row of teardown 1: state cleaned, figures without a unit in inches",
  );
});

test("the same file entered twice saves nothing the second time, and --again keeps it as repeats", async () => {
  const desk = await deskWithSix();
  desk.put("rods.txt", rods);
  const from = ["teardown", "tractor", "--from", "rods.txt"];
  await desk.type(from);
  const twice = await desk.type(from);
  expect(twice.exit).toBe(0);
  expect(flat(twice.err)).toContain(
    "these six figures are recorded already; nothing was saved (--again adds them as repeats)",
  );
  expect(twice.out).toMatch(/^Rod bearing 6 is too close to tell/);
  expect(measurements(desk)).toHaveLength(6);
  const document = JSON.parse((await desk.type([...from, "--json"])).out) as Record<string, unknown>;
  expect(document).not.toHaveProperty("written");
  const again = await desk.type([...from, "--again"]);
  expect(again.out).toMatch(/^saved {2}tractor teardown 1, six figures/);
  expect(measurements(desk)[6]).toBe(
    "1,2026-11-25,rod bearing,1,,thread clearance,0.0015,in,thread,,,as found,measured again",
  );
});

test("of a file with new lines only these are saved, on another day all", async () => {
  const desk = await deskWithSix();
  await enter(desk, rods);
  const { out, err } = await enter(desk, `${rods}rod side 1: 0.008\n`);
  expect(out).toMatch(/^saved {2}tractor teardown 1, one figure/);
  expect(measurements(desk)).toHaveLength(7);
  expect(err).toContain("rod bearing 6: recorded already, to the letter");
  expect(flat(err)).toContain("these six figures are recorded already; only the others were saved");
  const later = await enter(desk, "date 2026-11-24\nwith thread\nrod bearing 6: 0.0022in\n");
  expect(measurements(desk)).toHaveLength(8);
  expect(flat(later.err)).toContain(
    "rod bearing 6 was 0.0022 in already: counted as a repeat (rod bearing 6 instead: … takes its place)",
  );
});

test("a figure that is there already is named with the way to replace it, and instead replaces it", async () => {
  const desk = await deskWithSix();
  await enter(desk, "in\nwith micrometer 0.0001\npin 2: 2.2235\n");
  const repeat = await desk.type(["teardown", "tractor"], {
    answers: ["pin 2: 2.2485", "back", "pin 2 instead: 2.2485", "done"],
  });
  expect(flat(repeat.out)).toContain(
    "pin 2 front/0 was read 2.2235 and 2.2485 in: they cannot both be right",
  );
  expect(repeat.out).not.toContain("counted as a repeat");
  expect(flat(repeat.out)).toContain("pin 2 front/0 takes the place of 2.2235 in");
  expect(desk.text("logbook/tractor/measurements.csv").split("\n")[0]).toMatch(/,note,instead$/);
  expect(measurements(desk)[1]).toBe("1,2026-11-25,pin,2,front/0,diameter,2.2485,in,,,,as found,,yes");
  const { out } = await desk.type(["teardown", "tractor", "--no-input"]);
  expect(out).toMatch(/diameter +in +- +2\.2485/);
  expect(flat(out)).toContain("left out: pin 2 front/0 2.2235 in: 2.2485 stands instead");
  const document = await desk.json("teardown", "tractor", "--no-input");
  expect(misfits(document, schemaOf("teardown"))).toEqual([]);
});

test("instead in the first line of a new file has a column, and says that nothing was there", async () => {
  const desk = await deskWithSix();
  const { exit, err } = await enter(desk, "pin 2 instead: 2.2485in\n");
  expect(exit).toBe(0);
  expect(flat(err)).toContain("pin 2 front/0: nothing was there to take the place of");
  expect(measurements(desk)).toEqual(["1,2026-11-25,pin,2,front/0,diameter,2.2485,in,,,,as found,,yes"]);
});

test("of repeats typed after instead the first takes the place, the others count with it", async () => {
  const desk = await deskWithSix();
  await enter(desk, "in\nwith micrometer 0.0001\npin 2: 2.2235\n");
  const { err } = await enter(desk, "pin 2 instead: 2.2485/2.2483\n");
  expect(flat(err)).toContain("pin 2 front/0 takes the place of 2.2235 in");
  expect(err).not.toContain("counted as a repeat");
  expect(measurements(desk).map((row) => row.split(",").at(-1))).toEqual(["", "yes", ""]);
});

test("a line of several repeats is told as one", async () => {
  const desk = await deskWithSix();
  const line = "pin 1: 2.2483 2.2482 2.2483 2.2482\n";
  await enter(desk, `in\n${line}`);
  const { err } = await enter(desk, `by shop\n${line}`);
  expect(flat(err)).toContain(
    "pin 1: four places were read already: counted as repeats (pin 1 instead: … takes their place)",
  );
});

test("a figure of an earlier state is said to be left out", async () => {
  const desk = await deskWithSix();
  await enter(desk, "mm\nstate cleaned\npin 2: 57.11\n");
  const { out, err } = await enter(desk, "state as found\npin 2: 57.05\n");
  expect(flat(err)).toContain("pin 2 front/0 as found 57.05 mm is left out: cleaned 57.11 counts");
  expect(flat(out)).toContain("left out: pin 2 front/0 as found 57.05 mm: cleaned 57.11 counts");
});

test("--new-teardown without a line is said to do nothing", async () => {
  const desk = await deskWithSix();
  await enter(desk, rods);
  const { exit, err } = await desk.type(["teardown", "tractor", "--new-teardown", "--no-input"]);
  expect(exit).toBe(0);
  expect(flat(err)).toContain("--new-teardown does nothing without a line to enter");
});
