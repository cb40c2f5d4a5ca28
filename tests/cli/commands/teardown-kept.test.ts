// `teardown` on a terminal: lines kept and gone on with, slips asked once, pastes with empty lines. Figures invented.

import { run } from "sealtrend";
import { expect, test } from "vitest";
import { fakeIo } from "../fake-io.ts";
import { deskWithSix, measurements } from "./teardown-desk.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const line = (...words: readonly string[]) => ["teardown", "tractor", ...words];

test("q keeps the lines with what they have set; the next teardown goes on behind them", async () => {
  const desk = await deskWithSix();
  const left = await desk.type(line("--by", "shop"), { answers: ["in", "pin 1: 2.2483", "q"] });
  expect(left.exit).toBe(2);
  expect(left.err).toContain("sealtrend teardown tractor");
  const { exit, out } = await desk.type(line(), { answers: ["", "pin 2: 2.2482", "done"] });
  expect(exit).toBe(0);
  expect(flat(out)).toContain("was left after two lines, the last: pin 1: 2.2483");
  expect(measurements(desk)).toEqual([
    "1,2026-11-25,pin,1,front/0,diameter,2.2483,in,,,shop,as found,",
    "1,2026-11-25,pin,2,front/0,diameter,2.2482,in,,,shop,as found,",
  ]);
  expect((await desk.type(line(), { answers: ["done"] })).asked).toEqual(["> "]);
});

test("what was taken back is not kept, and done without a line drops all", async () => {
  const desk = await deskWithSix();
  await desk.type(line(), { answers: ["in", "pin 1: 2.2483", "b"] });
  const { out } = await desk.type(line(), { answers: ["", "b", "done"] });
  expect(flat(out)).toContain("was left after one line, the last: in");
  expect((await desk.type(line(), { answers: ["done"] })).asked).toEqual(["> "]);
});

test("a decimal place astray is asked once: the right line stands in for it", async () => {
  const desk = await deskWithSix();
  const { asked, out } = await desk.type(line("--unit", "in"), {
    answers: ["pin 1: 22.483", "pin 1: 2.2483", "done"],
  });
  expect(flat(out)).toContain("(a decimal place) meant?");
  expect(asked[1]).toBe("that line again, right or as it was: ");
  expect(measurements(desk)).toEqual(["1,2026-11-25,pin,1,front/0,diameter,2.2483,in,,,,as found,"]);
});

test("a unit astray is asked once, and typed again the line is taken, once", async () => {
  const desk = await deskWithSix();
  const { asked, out } = await desk.type(line(), {
    answers: ["pin 1: 2.2483mm", "", "pin 1:  2.2483mm", "done"],
  });
  expect(flat(out)).toContain("(written in inches)");
  expect(asked.at(-1)).toBe("> ");
  expect(measurements(desk)).toHaveLength(1);
});

test("b takes a doubtful line back; a line of another place comes behind it", async () => {
  const desk = await deskWithSix();
  await desk.type(line("--unit", "in"), {
    answers: ["pin 1: 22.483", "b", "pin 2: 22.483", "pin 3: 2.2483", "pin 2: 22.483", "done"],
  });
  expect(measurements(desk).map((row) => row.split(",")[3])).toEqual(["2", "3"]);
});

test("an empty line in the middle of a paste ends nothing", async () => {
  const desk = await deskWithSix();
  const lines = ["in", "pin 1: 2.2483", "", "pin 2: 2.2482", ""];
  const io = fakeIo({
    ...{ cwd: desk.folder, env: { XDG_STATE_HOME: `${desk.folder}/state` } },
    ...{ interactive: true, terminal: true, answers: lines },
  });
  const waits = () => Promise.resolve(io.asked().length < lines.length);
  expect(await run(line(), { ...io, waits })).toBe(0);
  expect(measurements(desk)).toHaveLength(2);
});

test("lines from a file are never asked about, and an unfinished entry is mentioned", async () => {
  const desk = await deskWithSix();
  await desk.type(line(), { answers: ["in", "pin 1: 2.2483"] });
  const { err, exit } = await desk.type(line(), { input: "pin 2: 22.483in\n" });
  expect(exit).toBe(0);
  expect(flat(err)).toContain("waits unfinished; on a terminal it goes on: sealtrend teardown tractor");
});

test("the talk fits 40 columns", async () => {
  const desk = await deskWithSix();
  const { out, err, asked } = await desk.type(line(), {
    answers: ["in", "pin 1: 22.483", "pin 1: 2.2483", "pin 2: 2.248O", "q"],
    width: 40,
  });
  const long = [out, err, ...asked]
    .join("\n")
    .split("\n")
    .filter((text) => text.length > 40);
  expect(long.filter((text) => !text.includes("sealtrend "))).toEqual([]);
});
