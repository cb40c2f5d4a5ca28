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
