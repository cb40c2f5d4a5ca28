// `teardown` with lines from standard input or a file. Contract: design.md §4, handbook/teardown.md §1.3; figures invented, the
// chances of the rod bearings are row 3 of handbook/teardown.md §3.4 (computed by this project).

import { expect, test } from "vitest";
import { deskWithSix, measurements, rods, start, thirteen } from "./teardown-desk.ts";

const lined = (lines: readonly string[]): string => `${lines.join("\n")}\n`;

test("six pins and seven mains are thirteen typed lines, each echoed with its verdict", async () => {
  const desk = await deskWithSix();
  const { exit, out, err } = await desk.type(["teardown", "tractor", ...start], { input: lined(thirteen) });
  expect(exit).toBe(0);
  expect(thirteen).toHaveLength(13);
  const echoed = err
    .replace(/\n {2}(?! )(?!(?:pin|main) \d:)/g, " ")
    .trimEnd()
    .split("\n");
  expect(echoed).toHaveLength(13);
  expect(echoed[0]).toBe(
    "  pin 1: diameter 2.2482 in: inside wear, too close to tell as new; taper 0.0000, out-of-round +0.0001: inside",
  );
  expect(echoed[5]).toBe(
    "  pin 6: diameter 2.2441 in outside (new 2.2480 to 2.2490, wear from 2.2475); taper -0.0039 outside (wear up to 0.0010); out-of-round +0.0021 outside (wear up to 0.0010)",
  );
  for (const line of echoed) expect(line).toMatch(/inside|outside/);
  expect(out).toMatch(
    /^saved {2}tractor teardown 1, 52 figures +\(sealtrend undo takes it back\)\n\nPin 6 is outside; the rest is inside\. +13 of 13 measured\n/,
  );
  expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
  expect(measurements(desk)).toHaveLength(52);
  expect(measurements(desk)[0]).toBe(
    "1,2026-11-25,pin,1,front/0,diameter,2.2483,in,micrometer,0.0001,,as found,",
  );
});

test("a file is read with --from, and undo takes the whole of it back", async () => {
  const desk = await deskWithSix();
  desk.put("rods.txt", rods);
  const { exit, out, err } = await desk.type(["teardown", "tractor", "--from", "rods.txt"]);
  expect(exit).toBe(0);
  expect(err).toContain("rod bearing 6: thread clearance 0.0022 in close, about 9 in 10 inside (new\n");
  expect(out).toContain("Rod bearing 6 is too close to tell; the rest is inside.");
  expect(measurements(desk)).toHaveLength(6);
  expect((await desk.type(["undo"])).exit).toBe(0);
  expect(measurements(desk)).toEqual([]);
});

test("all faults are named with line, column and mend; no verdict follows the first, and nothing is written", async () => {
  const desk = await deskWithSix();
  const { exit, out, err } = await desk.type(["teardown", "tractor"], {
    input: "in\npin 1: 2.2482 2.2481\npin 2: 2.248O\n\npon 3: 2.2482\npin 4: 2.2482 2.2481\n",
  });
  expect([exit, out]).toEqual([1, ""]);
  expect(err).toContain("standard input:3:8 ");
  expect(err).toContain("write 2.2480");
  expect(err).toContain("standard input:5:1 ");
  expect(err).toContain("pin 1: diameter");
  expect(err).not.toContain("pin 4: diameter");
  expect(err.trimEnd().endsWith("nothing was saved")).toBe(true);
  expect(desk.has("logbook/tractor/measurements.csv") ? measurements(desk) : []).toEqual([]);
});

test("faults of a file carry its name, and --json tells them as problems", async () => {
  const desk = await deskWithSix();
  desk.put("rods.txt", "in\nrod bearing 1: 0.0O15\n");
  const { exit, out } = await desk.type(["teardown", "tractor", "--from", "rods.txt", "--json"]);
  expect(exit).toBe(1);
  expect(JSON.parse(out)).toMatchObject({
    schema: "sealtrend/problems@1",
    problems: [{ file: "rods.txt", line: 2, column: 16 }],
  });
});

test("a figure without a unit is refused, and the option gives one", async () => {
  const desk = await deskWithSix();
  const bare = await desk.type(["teardown", "tractor"], { input: "pin 1: 2.2482\n" });
  expect(bare.exit).toBe(1);
  expect((await desk.type(["teardown", "tractor", "--unit", "in"], { input: "pin 1: 2.2482\n" })).exit).toBe(
    0,
  );
});

test("what the options say holds from the first line until a line says otherwise", async () => {
  const desk = await deskWithSix();
  const words = [
    "--unit",
    "in",
    "--instrument",
    "thread",
    "--resolution",
    "0.0005in",
    "--by",
    "shop",
    "--state",
    "cleaned",
  ];
  const { exit } = await desk.type(["teardown", "tractor", ...words, "--date", "2026-11-03"], {
    input: "rod bearing 1: 0.0015\nby me\nstate new part\nrod bearing 2: 0.0016 ; second packet\n",
  });
  expect(exit).toBe(0);
  expect(measurements(desk)).toEqual([
    "1,2026-11-03,rod bearing,1,,thread clearance,0.0015,in,thread,0.0005,shop,cleaned,",
    "1,2026-11-03,rod bearing,2,,thread clearance,0.0016,in,thread,0.0005,me,new part,second packet",
  ]);
});

test.each([
  ["a resolution of nothing", ["--resolution", "0.01mm"], "--instrument micrometer --resolution 0.01mm"],
  ["a resolution that is none", ["--instrument", "feeler", "--resolution", "3m"], "--instrument"],
  ["a day to come", ["--date", "2027-01-01"], "lies ahead"],
  ["a number that is none", ["--teardown", "x"], "--teardown 1"],
  ["a number far ahead", ["--teardown", "5"], "none is recorded yet"],
  ["both numbers", ["--teardown", "1", "--new-teardown"], "leave --new-teardown out"],
  ["an unknown state", ["--state", "dirty"], "as found"],
])("%s is refused, and nothing is written", async (_, words, said) => {
  const desk = await deskWithSix();
  const { exit, err } = await desk.type(["teardown", "tractor", ...words], { input: rods });
  expect(exit).toBe(2);
  expect(err.replace(/\s+/g, " ")).toContain(said);
  expect(measurements(desk)).toEqual([]);
});

test("a file of comments alone holds no figure, and one that is not there is said to be missing", async () => {
  const desk = await deskWithSix();
  desk.put("empty.txt", "# later\nmm\n");
  expect(await desk.type(["teardown", "tractor", "--from", "empty.txt"])).toMatchObject({ exit: 1, out: "" });
  expect((await desk.type(["teardown", "tractor", "--from", "none.txt"])).exit).toBe(3);
});

test("a day to come in a line is said aloud, and saved all the same", async () => {
  const desk = await deskWithSix();
  const { exit, err } = await desk.type(["teardown", "tractor"], {
    input: "date 2062-03-02\npin 1: 2.2482in\n",
  });
  expect(exit).toBe(0);
  expect(err.replace(/\s+/g, " ")).toContain(
    "dated after today (2026-11-25): 2062-03-02; if that is a slip: sealtrend undo",
  );
});

test("hostile text in a line steers no terminal, whether it is saved or given back", async () => {
  const desk = await deskWithSix();
  const lines = ["in", "by \u001b[31mred", "pin 1: 2.2482 ; \u202ebackwards"];
  const given = await desk.type(["teardown", "tractor"], { answers: lines });
  const saved = await desk.type(["teardown", "tractor", "--why"], { input: `${lines.join("\n")}\n` });
  for (const { out, err } of [given, saved])
    // eslint-disable-next-line no-control-regex -- controls are looked for
    expect(out + err).not.toMatch(/[\x00-\x09\x0b-\x1f\u202e]/);
});

test("rows go into a file of the owner's own dialect, with the columns it lacks", async () => {
  const desk = await deskWithSix();
  desk.put(
    "logbook/tractor/measurements.csv",
    "teardown;date;part;label;at;quantity;value;unit;own\r\n1;2026-11-20;pin;1;front/0;diameter;57,10;mm;yes\r\n",
  );
  const { exit, err } = await desk.type(["teardown", "tractor"], {
    input: "mm\nwith micrometer 0.01\npin 2: 57.11\n",
  });
  expect(exit).toBe(0);
  expect(err).toContain("measurements.csv got columns it lacked");
  expect(desk.text("logbook/tractor/measurements.csv")).toBe(
    "teardown;date;part;label;at;quantity;value;unit;own;instrument;resolution;state\r\n" +
      "1;2026-11-20;pin;1;front/0;diameter;57,10;mm;yes;;;\r\n" +
      "1;2026-11-25;pin;2;front/0;diameter;57,11;mm;;micrometer;0,01;as found\r\n",
  );
});

test("a fault of an older row loses no new one: saved, and said that nothing can be told yet", async () => {
  const desk = await deskWithSix();
  desk.put(
    "logbook/tractor/measurements.csv",
    "teardown,date,part,label,at,quantity,value,unit\n1,2026-11-20,pin,1,front/0,diameter,57.1O,mm\n",
  );
  const { exit, out, err } = await desk.type(["teardown", "tractor"], { input: "pin 2: 57.11mm\n" });
  expect(exit).toBe(1);
  expect(out).toMatch(/^saved {2}tractor teardown 1, one figure/);
  expect(out).toContain("It is saved, but other rows have faults");
  expect(err).toContain("measurements.csv:2:");
  expect(measurements(desk)).toHaveLength(2);
});

test("nothing is written into the demo, whatever is typed", async () => {
  const desk = await deskWithSix();
  await desk.type(["demo", "book"]);
  const { exit, err } = await desk.type(["teardown", "tractor", "--logbook", "book"], { input: rods });
  expect(exit).toBe(2);
  expect(err).toContain("is the demo");
  expect(
    desk.has("book/tractor/measurements.csv") ? desk.text("book/tractor/measurements.csv") : "",
  ).not.toContain("2026-11-25");
});
