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

test("what show says is not met is no chance that is not known", async () => {
  const { say } = await engine("--cylinders", "4");
  for (const [date, row] of [
    ["2022-05-10", "120 121 119 120"],
    ["2024-05-10", "120 121 86 119"],
    ["2026-05-10", "120 121 86 119"],
  ] as const)
    await say("enter", "mixer", "--date", date, "--dry", row, "--unit", "psi", "--engine-temp", "warm");
  const asked = ["mixer", "--as-of", "2026-05-20"];
  expect(await say("show", "mixer")).toContain("usual rule 0.75: not met");
  const text = await say("decide", ...asked);
  expect(text).toContain("Cylinder 3 reads below three quarters of the highest already.");
  expect(text).not.toContain("not known");
  expect(await say("decide", ...asked, "--why")).toContain(
    "A limit is passed already, so no chance of passing one is told",
  );
});

test("a cylinder that holds nothing again is named by the word that asks for it", async () => {
  const { say } = await engine("--cylinders", "4");
  for (const [date, row] of [
    ["2022-05-10", "120 121 119 120"],
    ["2024-05-10", "120 121 0 119"],
    ["2026-05-10", "120 121 0 119"],
  ] as const)
    await say("enter", "mixer", "--date", date, "--dry", row, "--unit", "psi", "--engine-temp", "warm");
  const text = await say("decide", "mixer", "--as-of", "2026-05-20");
  expect(text).toMatch(
    /^Test again before you decide\. Cylinder 3 holds nothing\. The readings of 2026-05-10a/,
  );
});

test("the last test that counts is not called the last where a later one does not", async () => {
  const { say } = await engine("--cylinders", "4");
  for (const [date, by] of [
    ["2025-04-10", "me"],
    ["2026-05-10", "seller"],
  ] as const)
    await say("enter", "mixer", "--date", date, "--by", by, "--dry", "120 121 119 120", "--unit", "psi");
  const text = await say("decide", "mixer", "--as-of", "2026-05-20");
  expect(text).toContain(
    "The last test that counts, 2025-04-10a, is 13 months old, and 2026-05-10a does not count.",
  );
  expect(text).toContain("the last test that counts is of 2025-04-10");
  expect(await say("decide", "mixer", "--as-of", "2026-05-20", "--test", "2025-04-10a")).toContain(
    "The last test is 13 months old.",
  );
});

test("a sign of the engine that made a cause likely is named for it", async () => {
  const { say } = await engine("--cylinders", "4", "--meter", "h");
  for (const [year, row] of [
    [2019, "122 123 120 122"],
    [2020, "122 122 120 119"],
    [2022, "120 122 120 116"],
    [2023, "119 120 119 112"],
    [2026, "118 121 117 105"],
  ] as const)
    await say("enter", "mixer", "--date", `${String(year)}-05-10`, "--dry", row, "--unit", "psi");
  await say("note", "mixer", "--what", "smoke", "--value", "blue", "--date", "2026-05-10");
  const shown = await say("show", "mixer");
  expect(shown).toMatch(/Most likely worn rings or bore .*the engine uses oil or smokes blue/);
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
