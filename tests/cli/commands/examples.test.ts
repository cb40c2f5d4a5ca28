// The examples of commands that only read work on the demo, as they stand in the help; those of teardown with lines to read.

import { commands } from "sealtrend";
import { expect, test } from "vitest";
import { wordsTyped } from "../words-typed.ts";
import { newDesk } from "./desk.ts";
import { readOnDemo } from "./examples-read.ts";
import { deskWithSix, rods } from "./teardown-desk.ts";

test("every example that only reads answers on the demo", async () => {
  const desk = newDesk();
  await desk.type(["demo"]);
  const lines = commands
    .filter(({ name }) => readOnDemo.includes(name))
    .flatMap(({ examples }) => examples)
    .filter((line) => !line.includes("my-"));
  expect(lines.length).toBeGreaterThanOrEqual(readOnDemo.length);
  for (const line of lines) {
    const { exit, err } = await desk.type(wordsTyped(line));
    expect([
      line,
      exit,
      err.replace(/^no logbook of yours[^.]*\.\/sealtrend-demo, with invented\nengines\n/, ""),
    ]).toEqual([line, 0, ""]);
  }
});

test("the examples of teardown answer in their order, given the lines they want", async () => {
  const desk = await deskWithSix();
  desk.put("rods.txt", rods);
  const answers = ["with micrometer 0.0001in", "pin 6: 2.2462 2.2441 2.2482 2.2480 in", "done"];
  const lines = commands.filter(({ name }) => name === "teardown").flatMap(({ examples }) => examples);
  expect(lines).toHaveLength(3);
  for (const line of lines) {
    const isAsked = !/--from|--no-input/.test(line);
    const { exit, out, err } = await desk.type(wordsTyped(line), isAsked ? { answers } : {});
    expect([line, exit, err.includes("error")]).toEqual([line, 0, false]);
    expect(out).toContain(line.includes("--from") ? "saved  tractor teardown 1" : "Pin 6 is outside");
  }
});

test("under --ascii nothing leaves the program but ASCII, on either stream, and a document loses no letter", async () => {
  const desk = newDesk();
  await desk.type(["demo"]);
  const plain = /^[\x20-\x7e\n]*$/;
  for (const words of [
    ...readOnDemo.map((name) => name.split(" ")),
    ["show", "tractor"],
    ["history", "tractor", "--cylinder", "3"],
    ["how", "wet", "tractor"],
    ["show", "tractör"],
    ["show", "tractor", "--wöt"],
    ["help", "amend"],
  ]) {
    const { out, err } = await desk.type([...words, "--ascii"]);
    expect([words, plain.test(out), plain.test(err)]).toEqual([words, true, true]);
  }
  const { out } = await desk.type(["show", "tractör", "--json", "--ascii"]);
  expect(out).toMatch(plain);
  expect(JSON.stringify(JSON.parse(out))).toContain("tractör");
});
