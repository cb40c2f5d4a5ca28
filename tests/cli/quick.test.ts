// The bundle of the two commands asked most says what the whole program says.

import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { commands, run as runWhole } from "sealtrend";
import { expect, test } from "vitest";
import { commandNames } from "../../packages/cli/src/commands/names.ts";
import { quickCommands, run as runQuick } from "../../packages/cli/src/quick.ts";
import { fakeIo } from "./fake-io.ts";

const demo = join(fileURLToPath(new URL("../..", import.meta.url)), "data", "demo");

test("the names of the commands are all that there are, in their order", () => {
  expect(commandNames).toEqual(commands.map(({ name }) => name));
});

test("main.ts asks for it by the names of its commands", () => {
  expect(quickCommands.map(({ name }) => name)).toEqual(["show", "history"]);
});

test.each([
  ["show", "tractor"],
  ["show", "tractor", "--why"],
  ["show", "tractor", "--json"],
  ["show", "--help"],
  ["show", "help"],
  ["show", "enter"],
  ["show", "tractor", "--tset", "3"],
  ["show", "tractor", "--unit", "psi"],
  ["show", "tractor", "--rules"],
  ["show", "nobody"],
  ["show"],
  ["history", "van", "--cylinder", "3"],
  ["history", "van", "--json", "--logbook", demo],
  ["history", "-h"],
  ["history", "--", "--help"],
  ["history", "van", "boat"],
])("%s %s %s %s", async (...words) => {
  const told = async (run: typeof runQuick) => {
    const io = fakeIo({ cwd: demo, env: { HOME: demo } });
    const line = words.includes("--logbook") ? words : [...words, "--logbook", "."];
    return { exit: await run(line, io), out: io.stdout(), err: io.stderr() };
  };
  const whole = await told(runWhole);
  expect(whole.out + whole.err).not.toBe("");
  expect(await told(runQuick)).toEqual(whole);
});
