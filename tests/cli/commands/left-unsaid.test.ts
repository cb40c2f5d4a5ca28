// What screens used to leave unsaid, or said of something that nobody asked. Readings invented.

import { expect, test } from "vitest";
import { newDesk } from "./desk.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const engine = async (...more: readonly string[]) => {
  const desk = newDesk();
  await desk.type(["engine", "add", "mixer", "--ignition", "spark", ...more]);
  return { desk, say: async (...line: readonly string[]) => flat((await desk.type(line)).out) };
};

test("a cylinder that was never read is named by show, decide and yard", async () => {
  const { say } = await engine("--cylinders", "4");
  const shown = await say("enter", "mixer", "--dry", "128 127 128 x", "--unit", "psi");
  expect(shown).toContain("next read 4, which was never read");
  const decided = await say("decide", "mixer");
  expect(decided).toContain("Cylinder 4 was never read. What the others read says nothing of it.");
  expect(decided).toContain("not seen cylinder 4, which was never read");
  expect(await say("yard")).toContain("4 not read within the year");
});

test("a reading below the maker's minimum is told though the chance is not known", async () => {
  const { say } = await engine("--cylinders", "4");
  await say("engine", "set", "mixer", "limits.compression.minimum", "120psi");
  await say("enter", "mixer", "--dry", "128 127 128 100", "--unit", "psi");
  expect(await say("decide", "mixer")).toContain("Cylinder 4 reads below the maker's minimum already.");
});

test("work on valves is kept where there are none, and said", async () => {
  const { say } = await engine("--cylinders", "1", "--cycle", "two-stroke");
  const done = await say("service", "mixer", "--what", "valve job");
  expect(done).toContain("saved mixer");
  expect(done).toContain("This engine has ports and no valves: the valve job is kept as you said it");
  expect(await say("service", "mixer", "--what", "re-ring")).not.toContain("no valves");
  const { say: other } = await engine("--cylinders", "1");
  expect(await other("service", "mixer", "--what", "valve job")).not.toContain("no valves");
});

test("a large leak nobody heard is no valve's where there are ports", async () => {
  const { say } = await engine("--cylinders", "2", "--cycle", "two-stroke");
  const shown = await say("enter", "mixer", "--leak-down", "8% 40%", "--heard", "1: none; 2: none");
  expect(shown).not.toContain("valve had not seated");
});
