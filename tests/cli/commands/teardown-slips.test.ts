// `teardown` on a terminal: a slip is not saved unasked, one cause is told once, and what could be read two ways is asked. Figures
// invented.

import { expect, test } from "vitest";
import { deskWithSix, measurements } from "./teardown-desk.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const type = async (answers: readonly string[], words: readonly string[] = [], width = 80) => {
  const desk = await deskWithSix();
  await desk.type(["engine", "set", "tractor", "geometry.bore", "86mm"]);
  return { desk, ...(await desk.type(["teardown", "tractor", ...words], { answers, width })) };
};

test("done does not save a line that looks like a slip until it is typed again or taken back", async () => {
  const { desk, asked, err } = await type(["in", "pin 1: 22.483", "done", "end"]);
  expect(asked.slice(2)).toEqual(Array(3).fill("that line again, right or as it was: "));
  expect(err).toContain("nothing was saved");
  expect(measurements(desk)).toEqual([]);
  const again = await type(["in", "pin 1: 22.483", "done", "pin 1: 2.2483", "done"]);
  expect(measurements(again.desk)).toEqual(["1,2026-11-25,pin,1,front/0,diameter,2.2483,in,,,,as found,"]);
});

test.each([
  ["end play: 15mm", "crank end play 15.00 mm cannot be", "end play: 0.15mm", "crank,,,end play,0.15"],
  ["piston 1: 3.4mm", "piston 1 diameter 3.40 mm cannot be", "piston 1: 85.94mm", "piston,1,,diameter,85.94"],
])("%s is asked for once more, and the line that mends it stands", async (line, said, mended, row) => {
  const { desk, out, asked } = await type([line, "done", mended, "done"]);
  expect(flat(out)).toContain(said);
  expect(asked[1]).toBe("that line again, right or as it was: ");
  expect(measurements(desk)).toEqual([expect.stringContaining(row)]);
});

test("out of a file the figure is kept, no taper is made of it, and the mend can be typed as it stands", async () => {
  const desk = await deskWithSix({});
  desk.put("bores.txt", "bore 1: 1000mm 100.01mm 100mm 100mm 100mm 100mm\n");
  const { exit, out } = await desk.type(["teardown", "tractor", "--from", "bores.txt"]);
  expect(exit).toBe(0);
  expect(out).not.toContain("900");
  const [, mend = ""] = /type `([^`]*)`/.exec(flat(out)) ?? [];
  desk.put("mend.txt", `${mend}\n`);
  const mended = await desk.type(["teardown", "tractor", "--from", "mend.txt"]);
  expect(mended.out).not.toContain("cannot be");
  expect(flat(mended.out)).toContain("left out: bore 1 top/thrust 1000.00 mm: 100.00 stands instead");
});

test("two readings that cannot both be right are shown as they were read, in the JSON too", async () => {
  const desk = await deskWithSix({});
  desk.put("rods.txt", "th\nwith thread\nrod bearing 2: 15\nrod bearing 2 instead: 1.5\nrod bearing 2: 15\n");
  const { out } = await desk.type(["teardown", "tractor", "--from", "rods.txt"]);
  expect(out).toContain("1.5/15.0");
  expect(out).not.toContain("8.3");
  const document = await desk.json("teardown", "tractor");
  expect(JSON.stringify(document)).toMatch(/"apart_mm":\[0\.038\d*,0\.38/);
});

test("the first lines say that the unit comes first, unless it is known", async () => {
  expect(flat((await type(["done"])).out)).toContain("mm the unit first, mm or in");
  expect((await type(["done"], ["--unit", "mm"])).out).not.toContain("the unit first");
});

test("a line without a unit is told once, however many figures it has", async () => {
  const { out } = await type(["bore 3: 86.62 86.58 86.56 86.55 86.53 86.52", "q"]);
  expect(out.match(/no unit for/g)).toHaveLength(1);
  expect(out).toContain("so five more figures of this line");
});

test("a bore that cannot be is questioned once, however many figures say so", async () => {
  const { out } = await type(["mm", "bore 3: 866.2 865.8 865.6 865.5 865.3 865.2", "q"]);
  expect(out.match(/\bcheck\b/g)).toHaveLength(1);
  expect(flat(out)).toContain("so five more figures of this part");
});

test("who leaves without a good line is not told to look below", async () => {
  const { err } = await type(["bore 3: 86.62", "q"]);
  expect(err).toBe("nothing was saved\n    run the command again when you have it\n");
});

test.each(["rod 1 clearance 0.0015in", "rod 1 clearance: 0.0015in"])(
  "%s may be meant of bearing or side",
  async (line) => {
    const { out } = await type([line, "q"]);
    expect(flat(out)).toContain(
      "write rod bearing 1: for the bearing, or rod 1 side clearance: for the side, and the figures",
    );
  },
);

test("a command is never broken, on a narrow screen neither", async () => {
  const { out } = await type(["mm", "main 1: 60 60 60 60", "done"], [], 40);
  expect(out).toContain("sealtrend engine set tractor limits.offered.main)");
});

const again = "that line again, right or as it was: ";

test("a line of another place does not pass the question by: it is asked again until it is answered", async () => {
  const { desk, asked, out } = await type([
    ...["in", "pin 1: 22.483", "pin 2: 2.2482", "done", "pin 1: 2.2483", "done"],
  ]);
  expect(asked.slice(2)).toEqual([again, again, again, "> "]);
  expect(out).toContain("still open: pin 1: 22.483");
  expect(measurements(desk).map((row) => row.split(",").slice(3, 7).join(" "))).toEqual([
    "2 front/0 diameter 2.2482",
    "1 front/0 diameter 2.2483",
  ]);
});

test("two open questions are both answered, in any order, and back takes one away with its line", async () => {
  const lines = ["in", "pin 1: 22.483", "pin 2: 22.482"];
  const both = await type([...lines, "pin 1: 2.2483", "pin 2: 2.2482", "done"]);
  expect(both.exit).toBe(0);
  expect(measurements(both.desk).map((row) => row.split(",")[6])).toEqual(["2.2483", "2.2482"]);
  const back = await type([...lines, "b", "pin 1: 22.483", "done"]);
  expect(measurements(back.desk).map((row) => row.split(",")[6])).toEqual(["22.483"]);
});

test("an entry that is gone on with is asked again what was open when it was left", async () => {
  const desk = await deskWithSix();
  await desk.type(["engine", "set", "tractor", "geometry.bore", "86mm"]);
  await desk.type(["teardown", "tractor"], { answers: ["in", "pin 1: 22.483", "pin 2: 2.2482", "q"] });
  const { asked, exit } = await desk.type(["teardown", "tractor"], {
    answers: ["", "done", "pin 1: 22.483", ""],
  });
  expect([exit, asked.slice(1)]).toEqual([0, [again, again, "> "]]);
});
