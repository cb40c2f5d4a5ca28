// What help says, and where it is asked.

import { run } from "sealtrend";
import { expect, test } from "vitest";
import { fakeIo } from "../fake-io.ts";
import { sampleCommands, type } from "./sample.ts";

const help = async (width: number, ...words: readonly string[]): Promise<string> => {
  const io = fakeIo({ width });
  expect(await run(words, io, sampleCommands)).toBe(0);
  expect(io.stderr()).toBe("");
  return io.stdout();
};

test("a command's page at 80 columns shows examples first", async () => {
  await expect(await help(80, "enter", "--help")).toMatchFileSnapshot("golden/help-enter-80.txt");
});

test("a command's page at 60 columns", async () => {
  await expect(await help(60, "enter", "--help")).toMatchFileSnapshot("golden/help-enter-60.txt");
});

test("the page of all commands", async () => {
  await expect(await help(80, "help")).toMatchFileSnapshot("golden/help-80.txt");
});

test("no words at all: a short page with two examples", async () => {
  await expect(await help(80)).toMatchFileSnapshot("golden/welcome-80.txt");
});

test("help keeps to the width of the terminal, 40 columns and up", async () => {
  for (const width of [40, 50, 60, 72, 80, 120])
    for (const line of [[], ["help"], ["help", "engine"], ["help", "page"]])
      for (const text of (await help(width, ...line)).split("\n"))
        expect(text.length).toBeLessThanOrEqual(width);
});

test("help is asked before the command, after it, and by -h, and wins over other faults", async () => {
  const page = await help(80, "help", "show");
  for (const line of [
    "show --help",
    "show -h",
    "--help show",
    "-h show",
    "show --unknown -h",
    "show --units --help",
    "show --units -h",
  ])
    expect(await help(80, ...line.split(" "))).toBe(page);
  const add = await help(80, "help", "engine", "add");
  expect(await help(80, "engine", "add", "--help")).toBe(add);
});

test("the first word of several commands has a page of its own", async () => {
  const page = await help(80, "help", "engine");
  expect(page).toContain("  engine add   define an engine\n  engine list  every engine\n");
  expect(await help(80, "engine", "--help")).toBe(page);
});

test("--help alone is the page of all commands", async () => {
  expect(await help(80, "--help")).toBe(await help(80, "help"));
});

test("help on a command that is not there suggests a near one", async () => {
  const typed = await type("help", "shwo");
  expect(typed.exit).toBe(2);
  expect(typed.err).toContain("no command `shwo`; did you mean `show`?");
  expect(typed.err).toContain("    sealtrend help show\n");
});
